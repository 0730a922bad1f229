namespace PlantWatch.Core.Rules;

/// <summary>One numbered rule of docs/rules.md, as far as a machine needs it. Its sentences stand in the server's words under its number.</summary>
/// <param name="Number">Number, such as R-010.</param>
/// <param name="Priority">By severity and time to respond.</param>
/// <param name="OnDelay">How long the condition must hold before it is an alarm.</param>
/// <param name="OffDelay">How long it must be gone before the alarm clears.</param>
/// <param name="NeedsFlow">Suppressed by design while the sample cell of its probe has no flow.</param>
/// <param name="ClearsByReading">Only a reading clears it, not time alone: it watches a measured value.</param>
public sealed record Rule(string Number, Priority Priority, TimeSpan OnDelay, TimeSpan OffDelay, bool NeedsFlow = false, bool ClearsByReading = false)
{
    /// <summary>A person may shelve it. What always holds cannot be shelved.</summary>
    public bool Shelvable => Priority != Priority.Critical;

    /// <summary>The alarm key for a subject: one live alarm each.</summary>
    public string KeyFor(string subject) => $"{Number}/{subject}";
}
