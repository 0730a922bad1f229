using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes;

/// <summary>Water that wanders as water does, a reading a minute: a random walk drawn back to its set point, calmer at night, strokes of the pump by day; and a probe with noise and a last digit.</summary>
internal sealed class SignalWater(int seed, Measurand measurand = Measurand.Ph)
{
    private readonly Random _random = new(seed);
    private readonly ProbePlan _probe = new() { Id = "p", Name = "p", Measurand = measurand, Topic = "t", Range = new(-1000, 2000), Every = TimeSpan.FromMinutes(1) };
    private readonly double _unit = measurand == Measurand.Orp ? 60 : 1;
    private double _water;
    private double _bathers;

    public Instant At { get; private set; } = Instant.FromUtc(2026, 5, 4, 0);

    public SignalHealth Health { get; set; } = SignalHealth.New;

    /// <summary>How much of its daytime movement is left at night.</summary>
    public double Nights { get; init; } = 0.5;

    public double Noise { get; set; } = 0.006;

    public double Level { get; init; } = 7.4;

    /// <summary>Lets time pass; what the probe makes of the water is given.</summary>
    public void Pass(TimeSpan span, Func<double, double> probe, bool? flow = true, Action<SignalHealth>? look = null)
    {
        for (var end = At + span; At < end; At += _probe.Every)
        {
            var shown = probe(Step()) + (Noise * _unit * Gauss());
            Health = SignalHealth.Next(_probe, Health, At, Math.Round(shown / (_unit * 0.01)) * _unit * 0.01, flow);
            look?.Invoke(Health);
        }
    }

    /// <summary>A probe of a first-order response.</summary>
    public static Func<double, double> Slow(double minutes)
    {
        double? shown = null;
        return water => (shown = shown is { } last ? last + ((water - last) * (1 - Math.Exp(-1 / minutes))) : water)!.Value;
    }

    private double Step()
    {
        var minute = (int)((At - Instant.FromUtc(2026, 5, 4, 0)).TotalMinutes % 1440);
        var day = minute is > 420 and < 1260;
        var lively = day ? 1 : Nights;
        _water += (-_water / 300) + (0.003 * lively * Gauss());
        _bathers += (-_bathers / 25) + (0.0025 * lively * Gauss());
        if (day && minute % 15 == 0 && _water > 0.02) _water -= 0.02;
        return Level + (_unit * (_water + _bathers));
    }

    private double Gauss() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
