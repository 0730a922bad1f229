using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>The mass balance of each hour: what was dosed, less what the value fell. Held back until it is sure that no trouble had begun in it, so that a slow trouble does not become the custom.</summary>
internal sealed class HourBalance
{
    private static readonly TimeSpan HeldBack = TimeSpan.FromHours(48);

    // Days in which everything is news.
    private const double FirstDays = 3;

    // Of the twelve bins of an hour so many must be there, and so few unseen.
    private const int LeastBins = 10, MostBlind = 3;

    private readonly Queue<Done> _pending = new();
    private Open _open = new() { Hour = -1 };
    private bool _isWhole;

    /// <summary>Five minutes pass.</summary>
    public void Add(WatchedPump pump, Instant now, int hour, bool seen)
    {
        if (hour != _open.Hour) Close(pump.Loop, now, hour);
        var (loop, cell) = (pump.Loop, pump.Loop.Likeliest);
        var lag = loop.Setting.Lag(cell);
        _open.Strokes += pump.Strokes[lag] - pump.Extra[lag];
        _open.Share += loop.Share(loop.Belief(cell), cell);
        _open.Bins++;
        if (!seen) _open.Blind++;
        _open.Value = loop.Value;
    }

    /// <summary>Gives what is old enough to the pattern.</summary>
    public void Release(DemandPattern pattern, Instant now, bool isWell, bool isQuiet)
    {
        if (!isWell) _pending.Clear();
        if (!isQuiet && pattern.Days >= FirstDays) return;
        while (_pending.TryPeek(out var oldest) && (pattern.Days < FirstDays || now - oldest.At > HeldBack))
        {
            _pending.Dequeue();
            pattern.Learn(oldest.Hour, oldest.Demand, oldest.Noise);
        }
    }

    public void Keep(Tape tape)
    {
        foreach (var done in tape.Sized(_pending))
        {
            var same = new Done(tape.Next(done.At), tape.Next(done.Hour), tape.Next(done.Demand), tape.Next(done.Noise));
            if (tape.Reads) _pending.Enqueue(same);
        }

        (_open.Hour, _open.Bins, _open.Blind) = (tape.Next(_open.Hour), tape.Next(_open.Bins), tape.Next(_open.Blind));
        (_open.Strokes, _open.Share, _open.From, _open.Value) = (tape.Next(_open.Strokes), tape.Next(_open.Share), tape.Next(_open.From), tape.Next(_open.Value));
        _isWhole = tape.Next(_isWhole);
    }

    private void Close(DosingLoop loop, Instant now, int hour)
    {
        // The first hour began somewhere in its midst.
        if (_isWhole && _open.Bins >= LeastBins && _open.Blind <= MostBlind) _pending.Enqueue(Balanced(loop, now));
        _isWhole = _open.Hour >= 0;
        _open = new() { Hour = hour, From = _open.Value, Value = _open.Value };
    }

    private Done Balanced(DosingLoop loop, Instant now)
    {
        var (fall, wander) = (loop.Setting.Fall(loop.Likeliest), loop.Setting.Wander(loop.Likeliest));
        var minutes = _open.Bins * DosingLoop.Minutes;
        var demand = (_open.Strokes + ((_open.Value - _open.From) / fall)) / minutes / Math.Max(0.2, _open.Share / _open.Bins);
        return new(now, _open.Hour, demand, wander * wander / (fall * fall * minutes));
    }

    private struct Open
    {
        public int Hour, Bins, Blind;
        public double Strokes, Share, From, Value;
    }

    private readonly record struct Done(Instant At, int Hour, double Demand, double Noise);
}
