using System.Globalization;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Commands.Replay.Store;

/// <summary>How what would have been said differs from what was said.</summary>
internal enum Change
{
    /// <summary>It does not.</summary>
    Same = 0,
    /// <summary>Said now, not said live.</summary>
    New,
    /// <summary>Said live, not said now.</summary>
    Gone,
    /// <summary>Said before it was said live.</summary>
    Earlier,
    /// <summary>Said after it was said live.</summary>
    Later,
    /// <summary>Another verdict on the same check.</summary>
    Other,
}

/// <summary>One saying of both sides.</summary>
internal sealed record Difference(string Kind, string Subject, string What, Change Change, Instant LiveAt, Instant ReplayedAt, string Live, string Replayed)
{
    // The clock ticks more coarsely here than live, and a reading may have come a little after its sample.
    private static readonly TimeSpan Apart = TimeSpan.FromMinutes(2);

    /// <summary>By how many minutes it would have been said later; empty where only one side said it.</summary>
    public double? Minutes => LiveAt.IsSet && ReplayedAt.IsSet ? (ReplayedAt - LiveAt).TotalMinutes : null;

    /// <summary>The time it stands at in the table.</summary>
    public Instant At => LiveAt.IsSet ? LiveAt : ReplayedAt;

    /// <summary>Episodes of both sides that fall into a time: those of one subject that overlap are the same one.</summary>
    public static IEnumerable<Difference> Between(IReadOnlyList<Episode> live, IReadOnlyList<Episode> replayed, Instant from, Instant to)
    {
        var left = replayed.Select(e => Within(e, from, to)).OfType<Episode>().ToList();
        foreach (var was in live.Select(e => Within(e, from, to)).OfType<Episode>())
        {
            var same = left.FirstOrDefault(e => e.Kind == was.Kind && e.Subject == was.Subject && e.What == was.What && e.From < was.To + Apart && was.From < e.To + Apart);
            if (same is not null) left.Remove(same);
            yield return same is null ? new(was.Kind, was.Subject, was.What, Change.Gone, was.From, Instant.Never, was.Words, "")
                : new(was.Kind, was.Subject, was.What, Timed(same.From - was.From), was.From, same.From, was.Words, same.Words);
        }

        foreach (var now in left) yield return new(now.Kind, now.Subject, now.What, Change.New, Instant.Never, now.From, "", now.Words);
    }

    /// <summary>Verdicts of both sides on the checks that were entered in a time.</summary>
    public static IEnumerable<Difference> Verdicts(IEnumerable<RecordEntry> live, IEnumerable<RecordEntry> replayed, Instant from, Instant to)
    {
        var (before, after) = (ByCheck(live, from, to), ByCheck(replayed, from, to));
        foreach (var key in before.Keys.Union(after.Keys))
        {
            var (was, now) = (before.GetValueOrDefault(key), after.GetValueOrDefault(key));
            var change = now.Said is null ? Change.Gone : was.Said is null ? Change.New : was.Said.Verdict == now.Said.Verdict ? Change.Same : Change.Other;
            yield return new("verdict", key.Probe, (now.Said ?? was.Said)!.Measurand.Key(), change, was.At, now.At, Words(was.Said), Words(now.Said));
        }
    }

    private static Change Timed(TimeSpan by) => by > Apart ? Change.Later : by < -Apart ? Change.Earlier : Change.Same;

    // What stood before is as if it began with the time: when it really began is not the question.
    private static Episode? Within(Episode episode, Instant from, Instant to)
    {
        var end = episode.To.IsSet ? Instant.Earlier(episode.To, to) : to;
        return episode.From >= to || end <= from ? null : episode with { From = Instant.Later(episode.From, from), To = end };
    }

    private static Dictionary<(Guid Check, string Probe), (Instant At, Judgement? Said)> ByCheck(IEnumerable<RecordEntry> entries, Instant from, Instant to)
    {
        var all = new Dictionary<(Guid, string), (Instant, Judgement?)>();
        foreach (var entry in entries)
            if (entry.Body is JudgementEntry { Judgement: var said } && entry.At >= from && entry.At < to) all[(said.CheckId, said.ProbeId)] = (entry.At, said);
        return all;
    }

    private static string Words(Judgement? judgement) => judgement is null ? ""
        : string.Create(CultureInfo.InvariantCulture, $"{Wording.Key(judgement.Verdict)}: {(judgement.Reasons.IsDefaultOrEmpty ? "" : Wording.English.Say(judgement.Reasons[0]).Text)}");
}
