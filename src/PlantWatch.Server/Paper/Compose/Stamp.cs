using PlantWatch.Core.Quantities;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>What every sheet says of itself: at its head what it is about, at its end which record it was made of.</summary>
internal static class Stamp
{
    /// <summary>Site, pools, days and the clock.</summary>
    public static Section Head(SheetSpan span, string site, IReadOnlyList<string> pools, string by, Instant now, Wording words) => new(words.Paper("this_sheet"),
    [
        new Facts(
        [
            new(words.Paper("site"), site), new(words.Paper("pools"), string.Join(", ", pools)), new(words.Paper("span"), Days(span, words)),
            new(words.Paper("clock"), words.Paper("clock_of", span.Zone.Id)), new(words.Paper("printed"), words.Paper("printed_by", span.Iso(now), by)),
        ]),
        new Remark(words.Paper("key")),
    ]);

    /// <summary>The digest, how far the record went, and lines to sign on.</summary>
    public static Section Foot(SheetStamp stamp, SheetSpan span, Wording words) => new(words.Paper("the_record"),
    [
        new Facts([new(words.Paper("digest"), stamp.Digest.Hash), .. stamp.Digest.Heads.Select(h => new FactLine(words.Paper("record_of_circuit", h.Circuit),
            h.Newest.IsSet ? words.Paper("head", h.Seq, h.Rows, span.Iso(h.Newest)) : words.Paper("head_empty", h.Seq)))]),
        new Remark(words.Paper("digest_says")),
    ]);

    // A day that is not of 24 hours says how many it has.
    private static string Days(SheetSpan span, Wording words)
    {
        var day = Iso(span.First);
        var usual = Math.Abs(span.Hours - (24 * span.Days)) < 0.01;
        var text = span.IsOneDay ? words.Paper("one_day", words.Find($"weekday.{(int)span.First.DayOfWeek}"), day) : words.Paper("several_days", day, Iso(span.Last), span.Days);
        return usual ? text : words.Paper("of_hours", text, span.Hours);
    }

    private static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
