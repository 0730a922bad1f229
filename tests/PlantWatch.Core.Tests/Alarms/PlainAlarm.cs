namespace PlantWatch.Core.Tests.Alarms;

/// <summary>
/// One limit alarm as a person would tell it from the state table of IEC 62682 / ISA-18.2 (A normal, B unacknowledged, C acknowledged, D returned unacknowledged,
/// G shelved, H suppressed by design): letters and arrows, nothing of how PlantWatch keeps it. Times are seconds.
/// </summary>
internal sealed class PlainAlarm(double onDelay, double offDelay)
{
    private char letter = 'A';
    private double? differsSince;
    private double? shelvedUntil;
    private bool hidden;

    /// <summary>What is shown: suppression hides the shelf, the shelf hides the rest.</summary>
    public char Shown => hidden ? 'H' : shelvedUntil is not null ? 'G' : letter;

    public bool InAlarm => letter is 'B' or 'C';

    public bool IsShelved => shelvedUntil is not null;

    /// <summary>Nobody can act on an alarm that is simply normal.</summary>
    public bool Exists => letter != 'A' || IsShelved || hidden;

    public void Reading(double now, bool condition)
    {
        if (condition == InAlarm)
        {
            differsSince = null;
            return;
        }

        differsSince ??= now;
        if (now - differsSince >= (condition ? onDelay : offDelay)) Turn();
    }

    /// <summary>Time alone ends a shelf and raises; a measured value clears by a reading only.</summary>
    public void Time(double now)
    {
        if (shelvedUntil <= now) Unshelve();
        if (!InAlarm && now - differsSince >= onDelay) Turn();
    }

    public void Acknowledge() => letter = letter switch { 'B' => 'C', 'D' => 'A', _ => letter };

    public void Shelve(double until) => shelvedUntil = until;

    /// <summary>Off the shelf, what is still in alarm annunciates as new.</summary>
    public void Unshelve()
    {
        shelvedUntil = null;
        if (letter == 'C') letter = 'B';
    }

    public void FlowLost()
    {
        differsSince = null;
        hidden = Exists;
    }

    public void FlowBack() => hidden = false;

    private void Turn()
    {
        differsSince = null;
        letter = letter switch { 'A' or 'D' => 'B', 'B' => 'D', 'C' => 'A', _ => letter };
    }
}
