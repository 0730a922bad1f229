using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Handover;

/// <summary>What a line of a handover is about.</summary>
public enum HandoverPart
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>How a pool is run.</summary>
    Pool,
    /// <summary>An alarm that stands.</summary>
    Alarm,
    /// <summary>An alarm that is put away: shelved, out of service, suppressed.</summary>
    PutAway,
    /// <summary>A job that is not finished, or did not help.</summary>
    Job,
    /// <summary>Planned work that is due within a day.</summary>
    Task,
    /// <summary>A check by hand that is due.</summary>
    Check,
}

/// <summary>One thing that whoever comes in must know.</summary>
/// <param name="Part">What it is about.</param>
/// <param name="Key">What tells it from the others of its part: a pool's id, an alarm's key, a job's id, a task's id.</param>
/// <param name="Subject">The thing of the plant.</param>
/// <param name="State">Where it stands, in the words of the interface.</param>
/// <param name="Text">What people wrote of it; null where nobody did.</param>
/// <param name="Cause">What the plant says of it; null where it says nothing.</param>
public sealed record HandoverLine(HandoverPart Part, string Key, string Subject, string State, string? Text, Reason? Cause);

/// <summary>What stood in a circuit when one shift handed over to the next, as it was shown.</summary>
/// <param name="Lines">The lines, pools first.</param>
public sealed record HandoverSheet(ImmutableArray<HandoverLine> Lines)
{
    /// <summary>Planned work that falls due within this time is handed over.</summary>
    public static TimeSpan Ahead { get; } = TimeSpan.FromDays(1);

    /// <summary>The sheet of a circuit at a time.</summary>
    public static HandoverSheet Of(CircuitState state, Instant now)
    {
        ArgumentNullException.ThrowIfNull(state);
        return new([.. Pools(state), .. Alarms(state), .. Jobs(state), .. Tasks(state, now), .. Checks(state, now)]);
    }

    /// <summary>SHA-256 of what stands and where, in lower-case hexadecimal: who signs has seen just this. Figures that move with every reading are not in it.</summary>
    public string Hash()
    {
        var text = new StringBuilder();
        foreach (var line in Lines) text.Append((int)line.Part).Append('|').Append(line.Key).Append('|').Append(line.State).Append('|').Append(line.Text).Append('\n');
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    private static IEnumerable<HandoverLine> Pools(CircuitState state) => state.Pools.Select(p => new HandoverLine(
        HandoverPart.Pool, p.Id, p.Id, state.Incidents.Values.Any(i => i.PoolId == p.Id) ? "incident" : Word(p.Operation.State), p.Operation.Why, null));

    private static IEnumerable<HandoverLine> Alarms(CircuitState state) => state.Alarms.Values.Where(a => a.State != AlarmState.Normal)
        .Select(a => (Alarm: a, Aside: a.State is AlarmState.Shelved or AlarmState.SuppressedByDesign or AlarmState.OutOfService))
        .OrderBy(a => a.Aside).ThenByDescending(a => a.Alarm.Priority).ThenBy(a => a.Alarm.Key, StringComparer.Ordinal)
        .Select(a => new HandoverLine(a.Aside ? HandoverPart.PutAway : HandoverPart.Alarm, a.Alarm.Key, a.Alarm.Subject, Word(a.Alarm.State), Said(a.Alarm), a.Alarm.Cause));

    private static string? Said(AlarmRecord alarm) => alarm.State switch
    {
        AlarmState.Shelved => $"{alarm.ShelvedBy}: {alarm.ShelvedWhy}",
        AlarmState.OutOfService => $"{alarm.OutOfServiceBy}: {alarm.OutOfServiceWhy}",
        _ when alarm.Comment is { } comment => $"{alarm.AcknowledgedBy}: {comment}",
        _ => null,
    };

    private static IEnumerable<HandoverLine> Jobs(CircuitState state) => state.Jobs.Values
        .Where(w => w.Job.State != JobState.Done || w.Effect == JobEffect.DidNotHelp)
        .Select(w => new HandoverLine(HandoverPart.Job, w.Job.Id.ToString(), w.Job.Asset, w.Effect == JobEffect.DidNotHelp ? Word(w.Effect) : Word(w.Job.State), w.Job.Seen, null));

    private static IEnumerable<HandoverLine> Tasks(CircuitState state, Instant now) => state.Plan.Tasks.Zip(state.Tasks)
        .Select(t => (Plan: t.First, Due: t.Second.DueAt(t.First))).Where(t => t.Due < now + Ahead).OrderBy(t => t.Due)
        .Select(t => new HandoverLine(HandoverPart.Task, t.Plan.Id, t.Plan.Asset, Due(t.Due < now), t.Plan.Name, null));

    private static IEnumerable<HandoverLine> Checks(CircuitState state, Instant now) => DueChecks.At(state.Plan, state.Pools, now)
        .Select(d => new HandoverLine(HandoverPart.Check, $"{d.PoolId}/{d.Duty}", d.PoolId, Due(d.Overdue), string.Join(", ", d.What.Select(m => m.Key())), null));

    private static string Due(bool overdue) => overdue ? "overdue" : "due";

    private static string Word<T>(T value) where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());
}
