using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Live;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>What the strips of a pool show as a table: a value, a test, a note or a mark a row, each with its time on the site's clock and in UTC.</summary>
internal sealed class PoolTable(string pool, TimeZoneInfo zone)
{
    /// <summary>The columns. A mean and its spread cover the seconds that they say; a single reading covers none.</summary>
    public static readonly IReadOnlyList<string> Header =
    [
        "kind", "pool", "subject", "name", "quantity", "unit", "local_time", "utc_time", "zone", "covers_s", "raw", "raw_min", "raw_max", "corrected", "readings", "good_readings", "quality", "uncertainty_k2", "by", "text",
    ];

    private const string Reading = "reading";

    /// <summary>Single readings, each with what speaks against it.</summary>
    public IEnumerable<string?[]> Single(ProbePlan probe, IEnumerable<StoredReading> readings, Func<Instant, double, double>? correct) => readings.Select(r => Row(
        Reading, probe, r.MeasuredAt, null, r.Raw, null, null, correct?.Invoke(r.MeasuredAt, r.Raw), null, null, Said(r.Quality)));

    /// <summary>Means with their spread; a silence is a row without a value.</summary>
    public IEnumerable<string?[]> Means(ProbePlan probe, IEnumerable<SeriesPoint> points, double seconds, Func<Instant, double, double>? correct) => points.Select(p => p.IsGap
        ? Row("gap", probe, p.At, null, null, null, null, null, null, null, "no_reading")
        : Row(Reading, probe, p.At, seconds, p.Mean, p.Min, p.Max, correct?.Invoke(p.At, p.Mean), p.Count, p.Good, p.Good == p.Count ? "good" : p.Good == 0 ? "not_good" : "partly_good"));

    /// <summary>The results of a test.</summary>
    public IEnumerable<string?[]> Of(ManualCheck check, CombinedView? combined)
    {
        foreach (var r in check.Results)
            yield return Test(check, r.Measurand, r.Value, MethodUncertainty.Of(r).OrNull()?.U, r.Censoring == Censoring.None ? Wording.Key(r.Method) : Wording.Key(r.Censoring));
        if (combined?.Value is { } value) yield return Test(check, Measurand.CombinedChlorine, value, combined.U, "worked_out");
    }

    /// <summary>A note, also one that was taken back: that it was stands in its quality.</summary>
    public string?[] Of(NoteView note) =>
        ["note", pool, note.PoolId, null, null, null, .. Times(note.From), CsvText.Number((note.To - note.From).TotalSeconds), null, null, null, null, null, null, note.Retracted ? "taken_back" : note.Before.Count > 0 ? "corrected" : null, null, note.By, note.Text];

    /// <summary>A mark that is no test and no note.</summary>
    public string?[] Of(MarkView mark) =>
        [Wording.Key(mark.Kind), pool, mark.Subject, mark.SubjectName, null, null, .. Times(mark.At), CsvText.Number((mark.Until - mark.At)?.TotalSeconds), null, null, null, null, null, null, null, null, mark.By, mark.Text];

    /// <summary>Says at the end that the file does not hold everything.</summary>
    public string?[] Cut(string says) => ["cut", pool, .. Enumerable.Repeat<string?>(null, Header.Count - 3), says];

    private string?[] Row(string kind, ProbePlan probe, Instant at, double? covers, double? raw, double? min, double? max, double? corrected, int? count, int? good, string quality) =>
    [
        kind, pool, probe.Id, probe.Name, Wording.Key(probe.Measurand), probe.Measurand.Unit(), .. Times(at), CsvText.Number(covers),
        CsvText.Number(raw), CsvText.Number(min), CsvText.Number(max), CsvText.Number(corrected), CsvText.Number(count), CsvText.Number(good), quality, null, null, null,
    ];

    private string?[] Test(ManualCheck check, Measurand measurand, double value, double? u, string quality) =>
        ["test", pool, check.PoolId, null, Wording.Key(measurand), measurand.Unit(), .. Times(check.SampledAt), null, CsvText.Number(value), null, null, null, null, null, quality, CsvText.Number(u), check.Who, check.Note];

    private string?[] Times(Instant at) => [CsvText.Local(at, zone, fine: true), CsvText.Local(at, TimeZoneInfo.Utc, fine: true)!.Replace("+00:00", "Z", StringComparison.Ordinal), zone.Id];

    // What speaks against it, joined; "good" where nothing does.
    private static string Said(Quality quality) => quality.IsGood()
        ? "good"
        : string.Join('+', Enum.GetValues<Quality>().Where(q => q is not (Quality.NotReceived or Quality.Received) && quality.HasFlag(q)).Select(q => Wording.Key(q)).DefaultIfEmpty("not_received"));
}
