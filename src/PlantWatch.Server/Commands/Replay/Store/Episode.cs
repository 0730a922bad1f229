using PlantWatch.Core.Alarms.Compared;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Commands.Replay.Store;

/// <summary>A time in which something was said: an alarm that stood, a probe that was flagged.</summary>
/// <param name="Kind">alarm or flag.</param>
/// <param name="Subject">What it was about.</param>
/// <param name="What">The rule's number; for a flag nothing.</param>
/// <param name="From">Since when.</param>
/// <param name="To">Until when; never means to the end.</param>
/// <param name="Words">Why, in words.</param>
internal sealed record Episode(string Kind, string Subject, string What, Instant From, Instant To, string Words)
{
    /// <summary>Hangs on the way that a reading took, which a replay does not see.</summary>
    public static Rule NotCompared { get; } = RuleBook.ClockDoubted;

    /// <summary>The alarms of a record, from the time they were raised.</summary>
    public static IReadOnlyList<Episode> Alarms(IEnumerable<RecordEntry> entries)
    {
        var book = new EpisodeBook();
        foreach (var entry in entries)
            if (entry.Body is AlarmEntry said && said.Alarm.Rule != NotCompared.Number) book.Take(entry.At, said.Alarm, said.Change);
        return [.. book.All.Select(e => new Episode("alarm", e.Subject, e.Rule, e.From, e.To, Wording.English.Say(e.Cause).Text))];
    }

    /// <summary>The times in which a probe was flagged, by its signal or by its checks.</summary>
    public static IReadOnlyList<Episode> Flags(IEnumerable<RecordEntry> entries)
    {
        var (all, open, standings) = (new List<Episode>(), new Dictionary<string, int>(StringComparer.Ordinal), new Dictionary<(string, bool), Standing>());
        foreach (var entry in entries)
        {
            var (probe, standing, reasons) = entry.Body switch
            {
                StandingEntry said => (said.ProbeId, said.Standing, said.Reasons),
                JudgementEntry { Judgement: var said } => (said.ProbeId, said.Standing, said.Reasons),
                _ => ("", default, []),
            };
            if (probe.Length == 0) continue;
            standings[(probe, entry.Body is StandingEntry)] = standing;
            var flagged = IsFlag(standings.GetValueOrDefault((probe, true))) || IsFlag(standings.GetValueOrDefault((probe, false)));
            if (!flagged && open.Remove(probe, out var at)) all[at] = all[at] with { To = entry.At };
            if (!flagged || !open.TryAdd(probe, all.Count)) continue;
            all.Add(new Episode("flag", probe, "", entry.At, Instant.Never, reasons.IsDefaultOrEmpty ? Wording.Key(standing) : Wording.English.Say(reasons[0]).Text));
        }

        return all;
    }

    private static bool IsFlag(Standing standing) => standing is Standing.MaintenanceRequired or Standing.OutOfSpecification or Standing.Failure;
}
