using System.Text.Json;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Telling;

/// <summary>What stands in a circuit, for whoever begins to listen: the retained message of the alarm topic.</summary>
/// <param name="Site">The site.</param>
/// <param name="Circuit">Id of the circuit.</param>
/// <param name="At">When this was so. It is said anew every minute: an older one speaks of a server that is gone, and of nothing else.</param>
/// <param name="Highest">Highest priority among them; null when none stands.</param>
/// <param name="Unacknowledged">How many nobody has seen yet.</param>
/// <param name="Alarms">The alarms in the order in which they came.</param>
internal sealed record StandingState(string Site, string Circuit, Instant At, Priority? Highest, int Unacknowledged, IReadOnlyList<StandingAlarm> Alarms)
{
    /// <summary>How often it is said although nothing has changed.</summary>
    public static readonly TimeSpan SaidEvery = TimeSpan.FromMinutes(1);

    /// <summary>What stands now, at and above a priority.</summary>
    public static StandingState Of(string site, CircuitState state, Priority from, Instant at, Wording words)
    {
        var alarms = state.Alarms.Values.Where(alarm => IsShown(alarm) && alarm.Priority >= from).OrderBy(alarm => alarm.Order).ToList();
        return new(
            site, state.Plan.Id, at, alarms.Count == 0 ? null : alarms.Max(alarm => alarm.Priority), alarms.Count(alarm => !alarm.IsAcknowledged),
            [.. alarms.Select(alarm => StandingAlarm.Of(state, alarm, words))]);
    }

    /// <summary>As bytes.</summary>
    public byte[] Write() => JsonSerializer.SerializeToUtf8Bytes(this, PlantJson.Options);

    // What is put away by a person or by design does not stand for whoever listens.
    private static bool IsShown(AlarmRecord alarm) =>
        alarm.State is AlarmState.Unacknowledged or AlarmState.Acknowledged or AlarmState.ReturnedUnacknowledged or AlarmState.LatchedUnacknowledged or AlarmState.LatchedAcknowledged;
}

/// <summary>An alarm that stands.</summary>
internal sealed record StandingAlarm(Guid Id, string Rule, string Subject, Priority Priority, AlarmState State, string Title, string Cause, Instant Since)
{
    public static StandingAlarm Of(CircuitState state, AlarmRecord alarm, Wording words) =>
        new(alarm.Id, alarm.Rule, alarm.Subject, alarm.Priority, alarm.State, words.OfRule(alarm.Rule, "title"), AlarmViews.Cause(state, alarm, words), alarm.RaisedAt);
}
