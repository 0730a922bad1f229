namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>What a pool usually asks of a pump, hour by hour of the day, in strokes a minute; and how far a day may be from it. Before anything was learned it asks for nothing.</summary>
internal sealed class DemandPattern
{
    private const int Hours = 24;

    // Of what was learned so much stays each day: water and habits change over weeks (common practice).
    private static readonly double Keeps = Math.Exp(-1 / 14.0);

    // Base demand repeats from night to night; what bathers and sun add differs from day to day by more than half, and opening hours move (common practice).
    private const double OfBase = 0.12, OfHump = 0.6, OfSlope = 0.4;

    // Little is known of a pattern that few days made.
    private const double OfFewDays = 0.5;

    private readonly double[] _weight = new double[Hours], _sum = new double[Hours], _usual = new double[Hours];
    private double _lowest;

    /// <summary>Days of every hour that were learned, old ones counting less.</summary>
    public double Days { get; private set; }

    /// <summary>Demand of a whole day, in strokes a minute.</summary>
    public double Mean { get; private set; }

    /// <summary>Usual demand of an hour, in strokes a minute.</summary>
    public double Usual(int hour) => _usual[hour];

    /// <summary>Standard deviation of that from day to day.</summary>
    public double Spread(int hour) =>
        (OfBase * Mean) + (OfHump * (_usual[hour] - _lowest)) + (OfSlope * Math.Abs(_usual[Around(hour + 1)] - _usual[Around(hour - 1)])) + (OfFewDays * Mean / Math.Max(1, Days * 3));

    /// <summary>Learns an hour.</summary>
    /// <param name="hour">Which.</param>
    /// <param name="demand">Its demand in strokes a minute.</param>
    /// <param name="noise">Variance of that by what wanders.</param>
    public void Learn(int hour, double demand, double noise)
    {
        _weight[hour] = (_weight[hour] * Keeps) + 1;
        _sum[hour] = (_sum[hour] * Keeps) + demand;
        Days = _weight.Min();
        Shape(noise);
    }

    public void Keep(Tape tape)
    {
        tape.All(_weight);
        tape.All(_sum);
        tape.All(_usual);
        (_lowest, Days, Mean) = (tape.Next(_lowest), tape.Next(Days), tape.Next(Mean));
    }

    // Hours lean on their neighbours, and are drawn to the mean by as much as their differences could be chance.
    private void Shape(double noise)
    {
        var weight = _weight.Sum();
        Mean = Math.Max(0.02, _sum.Sum() / weight);
        var smooth = new double[Hours];
        for (var i = 0; i < Hours; i++) smooth[i] = (0.25 * Learned(i - 1)) + (0.5 * Learned(i)) + (0.25 * Learned(i + 1));
        var variance = smooth.Sum(s => (s - Mean) * (s - Mean)) / (Hours - 1);
        var chance = 2 * noise * 3 / 8 / Math.Max(1, weight / Hours);
        var keep = variance <= 0 ? 0 : Math.Max(0, 1 - (chance / variance));
        for (var i = 0; i < Hours; i++) _usual[i] = Math.Max(0.2 * Mean, Mean + (keep * (smooth[i] - Mean)));
        _lowest = _usual.Min();
    }

    private double Learned(int hour) => _weight[Around(hour)] > 0 ? _sum[Around(hour)] / _weight[Around(hour)] : Mean;

    private static int Around(int hour) => (hour + Hours) % Hours;
}
