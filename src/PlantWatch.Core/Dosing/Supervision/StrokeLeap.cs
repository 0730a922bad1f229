namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>A pump that leaps to a rate its controller cannot have come to: water changes slowly, and a pump that follows it does too. How far this pump leaps when all is well is learned in its first day.</summary>
internal sealed class StrokeLeap
{
    // Minutes that a leap lasts, minutes before it that it is compared with, and minutes of learning.
    private const int Lasts = 6, Before = 15, LearnsFor = 1440;

    // Where standing water moves on again, what it became meanwhile reaches the probe at once.
    private const int AfterStop = 90;

    // Strokes a minute under which a leap is small, and by how much it must end.
    private const double Least = 8, Ends = 3;

    private readonly double[] _ring = new double[Lasts + Before];
    private int _next, _heard, _minutes, _sinceStop = AfterStop;
    private double _largest;

    /// <summary>The rate it leapt to; null while it has not.</summary>
    public double? At { get; private set; }

    public void Take(double strokes, bool circulates)
    {
        (_minutes, _sinceStop, _heard) = (_minutes + 1, circulates ? _sinceStop + 1 : 0, circulates ? _heard + 1 : 0);
        _ring[_next] = strokes;
        _next = (_next + 1) % _ring.Length;
        if (At is { } rate)
        {
            if (strokes < rate - Ends) (At, _heard) = (null, 0);
        }
        else if (_heard >= _ring.Length && _sinceStop >= AfterStop) Look();
    }

    public void Keep(Tape tape)
    {
        tape.All(_ring);
        (_next, _heard, _minutes, _sinceStop) = (tape.Next(_next), tape.Next(_heard), tape.Next(_minutes), tape.Next(_sinceStop));
        (_largest, At) = (tape.Next(_largest), tape.Next(At));
    }

    private void Look()
    {
        var (before, least) = (0.0, double.MaxValue);
        for (var i = 0; i < _ring.Length; i++)
        {
            var strokes = _ring[(_next + i) % _ring.Length];
            if (i < Before) before += strokes / Before;
            else least = Math.Min(least, strokes);
        }

        if (_minutes > LearnsFor && least - before > Math.Max(Least, (2 * _largest) + 2)) At = least;
        else _largest = Math.Max(_largest, least - before);
    }
}
