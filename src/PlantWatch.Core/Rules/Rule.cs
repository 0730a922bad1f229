using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Rules;

/// <summary>One numbered rule of docs/rules.md, as far as a machine needs it. Its sentences stand in the server's words under its number.</summary>
/// <param name="Number">Number, such as R-010.</param>
/// <param name="Priority">By severity and time to respond.</param>
/// <param name="OnDelay">How long the condition must hold before it is an alarm.</param>
/// <param name="OffDelay">How long it must be gone before the alarm clears.</param>
/// <param name="SuppressedWhile">The states of the plant that suppress it by design.</param>
/// <param name="ClearsByReading">Only a reading clears it, not time alone: it watches a measured value.</param>
/// <param name="Latches">Once raised it stays until a person resets it, also when its condition is gone.</param>
public sealed record Rule(
    string Number, Priority Priority, TimeSpan OnDelay, TimeSpan OffDelay, SuppressedWhile SuppressedWhile = SuppressedWhile.Never, bool ClearsByReading = false, bool Latches = false)
{
    /// <summary>A person may shelve it. What always holds cannot be shelved.</summary>
    public bool Shelvable => Priority != Priority.Critical;

    /// <summary>A person may take it out of service; what cannot be shelved can even less be put away for days.</summary>
    public bool MayLeaveService { get; init; } = Priority != Priority.Critical;

    /// <summary>Its latch is reset only after a person has recorded what was done to make the plant safe.</summary>
    public bool MustBeMadeSafe { get; init; }

    /// <summary>It is about one tank: what is recorded of making safe holds for that one, and not for the pipes of the circuit.</summary>
    public bool OfOneTank { get; init; }

    /// <summary>How long an alarm may stand, unanswered or since it was acknowledged, until it annunciates as new; null when it never does.</summary>
    public TimeSpan? ReAlarmAfter { get; init; } = UsualReAlarm(Priority);

    /// <summary>The alarm key for a subject: one live alarm each.</summary>
    public string KeyFor(string subject) => $"{Number}/{subject}";

    // Twice and more the time there is to respond, so that who works on it is left in peace; a shift for what is within the hour (common practice).
    private static TimeSpan? UsualReAlarm(Priority priority) => priority switch
    {
        Priority.Critical => TimeSpan.FromHours(1),
        Priority.High => TimeSpan.FromHours(4),
        Priority.Medium => TimeSpan.FromHours(8),
        _ => null,
    };
}
