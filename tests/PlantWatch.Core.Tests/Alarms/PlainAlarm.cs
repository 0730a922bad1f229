namespace PlantWatch.Core.Tests.Alarms;

/// <summary>
/// One limit alarm as a person would tell it from the state table of IEC 62682 / ISA-18.2 (A normal, B unacknowledged, C acknowledged, D returned unacknowledged,
/// G shelved, H suppressed by design): letters and arrows, nothing of how PlantWatch keeps it. Times are seconds.
/// </summary>
internal sealed class PlainAlarm(double onDelay, double offDelay)
{
    private char _letter = 'A';
    private double? _differsSince;
    private double? _shelvedUntil;
    private bool _hidden;

    /// <summary>What is shown: suppression hides the shelf, the shelf hides the rest.</summary>
    public char Shown => _hidden && Exists ? 'H' : _shelvedUntil is not null ? 'G' : _letter;

    public bool InAlarm => _letter is 'B' or 'C';

    public bool IsShelved => _shelvedUntil is not null;

    /// <summary>Nobody can act on an alarm that is simply normal.</summary>
    public bool Exists => _letter != 'A' || IsShelved;

    public void Reading(double now, bool condition)
    {
        if (condition == InAlarm)
        {
            _differsSince = null;
            return;
        }

        _differsSince ??= now;
        if (now - _differsSince >= (condition ? onDelay : offDelay)) Turn();
    }

    /// <summary>Time alone ends a shelf and raises; a measured value clears by a reading only.</summary>
    public void Time(double now)
    {
        if (_shelvedUntil <= now) Unshelve();
        if (!InAlarm && now - _differsSince >= onDelay) Turn();
    }

    public void Acknowledge() => _letter = _letter switch { 'B' => 'C', 'D' => 'A', _ => _letter };

    public void Shelve(double until) => _shelvedUntil = until;

    /// <summary>Off the shelf, what is still in alarm annunciates as new.</summary>
    public void Unshelve()
    {
        _shelvedUntil = null;
        if (_letter == 'C') _letter = 'B';
    }

    public void FlowLost()
    {
        _differsSince = null;
        _hidden = true;
    }

    /// <summary>Released, what is still in alarm annunciates as new.</summary>
    public void FlowBack()
    {
        _hidden = false;
        if (_letter == 'C') _letter = 'B';
    }

    private void Turn()
    {
        _differsSince = null;
        _letter = _letter switch { 'A' or 'D' => 'B', 'B' => 'D', 'C' => 'A', _ => _letter };
    }
}
