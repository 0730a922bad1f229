namespace PlantWatch.Core.Tests.Alarms;

/// <summary>
/// One alarm as the figure of state transitions in IEC 62682 / ISA-18.2 tells it: letters A to I and arrows, nothing of how PlantWatch keeps them. Times are seconds.
/// A normal, B unacknowledged, C acknowledged, D returned unacknowledged, E latched unacknowledged, F latched acknowledged; G shelved, H suppressed by design and I out of service lie over them.
/// The arrows are from memory; shelving, one-shot and re-alarm after OPC 10000-9 v1.05.03, 5.8.17 and annex B.1.5.
/// </summary>
internal sealed class StandardAlarm(double onDelay, double offDelay, bool latches, double reAlarm, double longestShelf)
{
    private char _under = 'A';
    private double? _against, _shelf, _quietSince, _outUntil;
    private bool _oneShot, _suppressed, _out;

    public int ReAlarms { get; private set; }

    /// <summary>I hides H, which hides G, which hides the rest. What is normal and under suppression leaves nothing to remember.</summary>
    public char Letter => _out ? 'I' : _suppressed && !IsForgotten ? 'H' : _shelf is not null ? 'G' : _under;

    public bool InAlarm => _under is 'B' or 'C';

    public bool IsShelved => _shelf is not null;

    public bool IsOut => _out;

    /// <summary>Normal, unshelved, in service and with nothing pending: whatever is kept of it may be thrown away.</summary>
    public bool IsForgotten => _under == 'A' && _shelf is null && !_out && _against is null;

    public void Condition(double now, bool holds)
    {
        if (holds == InAlarm)
        {
            _against = null;
            return;
        }

        _against ??= now;
        if (now - _against >= (holds ? onDelay : offDelay)) Turn(now);
    }

    /// <summary>One thing at a time: a time out of service or a shelf ends, what is pending towards alarm is due, or what stands long speaks again. A measured value clears by a reading only.</summary>
    public void Time(double now)
    {
        if (_outUntil <= now) Return(now);
        else if (_shelf <= now) Unshelve(now);
        else if (!InAlarm && now - _against >= onDelay) Turn(now);
        else if (Letter is 'B' or 'C' && now - _quietSince >= reAlarm)
        {
            ReAlarms++;
            Speak(now);
        }
    }

    public void Acknowledge(double now)
    {
        if (_under is 'B') _quietSince = now;
        _under = _under switch { 'B' => 'C', 'D' => 'A', 'E' => 'F', _ => _under };
    }

    /// <summary>F -> A; from every other letter there is no such arrow.</summary>
    public bool Reset()
    {
        if (_under != 'F') return false;
        _under = 'A';
        return true;
    }

    public bool Shelve(double now, double until, bool oneShot)
    {
        if (until <= now || until - now > longestShelf) return false;
        (_shelf, _oneShot) = (until, oneShot);
        return true;
    }

    public void Unshelve(double now)
    {
        (_shelf, _oneShot) = (null, false);
        Back(now);
    }

    /// <summary>What was pending rests on what is not the pool's water.</summary>
    public void Suppress()
    {
        if (!_suppressed) _against = null;
        _suppressed = true;
    }

    public void Release(double now)
    {
        if (!_suppressed) return;
        (_suppressed, _against) = (false, null);
        Back(now);
    }

    public void TakeOut(double? until) => (_out, _outUntil) = (true, until);

    public void Return(double now)
    {
        if (!_out) return;
        (_out, _outUntil) = (false, null);
        Back(now);
    }

    // Re-entry annunciates as new; what cleared unseen is still to be seen.
    private void Back(double now)
    {
        if (InAlarm) Speak(now);
    }

    private void Speak(double now) => (_under, _quietSince) = ('B', now);

    private void Turn(double now)
    {
        _against = null;
        if (!InAlarm)
        {
            ReAlarms = 0;
            Speak(now);
            return;
        }

        _under = (_under, latches) switch { ('B', false) => 'D', ('C', false) => 'A', ('B', true) => 'E', _ => 'F' };
        if (_oneShot) (_shelf, _oneShot) = (null, false);
    }
}
