namespace PlantWatch.Core.Alarms;

/// <summary>Whether an alarm speaks up: sound, marker, message. All the others are shown and silent.</summary>
public static class Annunciation
{
    /// <summary>True while nobody has seen it, it is not put away, and no cause that is at least as severe speaks or has spoken for it.</summary>
    /// <param name="alarm">The alarm.</param>
    /// <param name="find">The live alarm of a key, or null.</param>
    public static bool Speaks(AlarmRecord alarm, Func<string, AlarmRecord?> find)
    {
        ArgumentNullException.ThrowIfNull(alarm);
        return alarm.State is AlarmState.Unacknowledged or AlarmState.LatchedUnacknowledged && !IsSpokenFor(alarm, find);
    }

    /// <summary>Its cause stands where people see it and is at least as severe. A cause on the shelf, suppressed or out of service speaks for nothing.</summary>
    public static bool IsSpokenFor(AlarmRecord alarm, Func<string, AlarmRecord?> find)
    {
        ArgumentNullException.ThrowIfNull(alarm);
        ArgumentNullException.ThrowIfNull(find);
        return alarm.ConsequenceOf is { } key && find(key) is { State: AlarmState.Unacknowledged or AlarmState.Acknowledged } cause && cause.Priority >= alarm.Priority;
    }
}
