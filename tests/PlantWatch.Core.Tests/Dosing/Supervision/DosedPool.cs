using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Dosing.Supervision;

/// <summary>
/// A pool of 100 m3 under proportional dosing, a minute at a time, with physics of its own: pH rises as carbon dioxide leaves and as hypochlorite comes, chlorine decays in proportion and faster by day.
/// Noise is a fixed sequence. What a pump really delivers can be changed.
/// </summary>
internal sealed class DosedPool(int seed)
{
    public static readonly Instant Start = Instant.FromUtc(2026, 1, 5);

    public static readonly PumpedPool Plan = new(100, 100, 3, new DosingPump(0.4, 7), new DosingPump(0.6, 120));

    // A carbonate buffer that carbon dioxide and plaster make stronger than that of closed water.
    private const double Buffer = 1.0;

    private readonly Random _random = new(seed);
    private readonly Queue<(double Ph, double Chlorine)> _pipe = new(Enumerable.Repeat((7.3, 1.5), 12));
    private double _ph = 7.3, _chlorine = 1.5, _wander;
    private int _minute;

    /// <summary>What enters the water of the strokes of each pump.</summary>
    public Func<double, double> AcidArrives { get; set; } = s => s;

    public Func<double, double> ChlorineArrives { get; set; } = s => s;

    /// <summary>What each pump is driven to instead of what its controller asks.</summary>
    public double? AcidDriven { get; set; }

    private double? ChlorineDriven { get; set; }

    public bool Circulates { get; set; } = true;

    /// <summary>The acid pump draws hypochlorite, and the chlorine pump nothing that counts.</summary>
    public bool Swapped { get; set; }

    /// <summary>The acid tank, in litres, as strokes draw it; null when there is no sensor.</summary>
    public double? AcidTank { get; set; }

    /// <summary>Drives a pump to so many strokes a minute, whatever its controller asks.</summary>
    public void Drive(DosedProduct pump, double strokes)
    {
        if (pump == DosedProduct.Acid) AcidDriven = strokes;
        else ChlorineDriven = strokes;
    }

    /// <summary>The next minute.</summary>
    public PlantMinute Next()
    {
        var (seenPh, seenChlorine) = _pipe.Peek();
        var acid = AcidDriven ?? (Circulates ? Math.Round(30 * Math.Clamp((seenPh - 7.3) / 0.15, 0, 1)) : 0);
        var chlorine = ChlorineDriven ?? (Circulates ? Math.Round(30 * Math.Clamp(((1.5 - seenChlorine) / 0.5) + 0.2, 0, 1)) : 0);
        var (acidIn, chlorineIn) = Swapped ? (0, acid * Plan.Acid.MillilitresPerStroke / Plan.Chlorine.MillilitresPerStroke) : (AcidArrives(acid), ChlorineArrives(chlorine));
        var hour = _minute / 60 % 24;
        var crowd = hour is >= 8 and < 20 ? 0.6 + (0.4 * (_minute / 1440 % 3)) : 0;
        var grams = chlorineIn * Plan.Chlorine.MillilitresPerStroke / 1000 * Plan.Chlorine.Strength / Plan.VolumeCubicMetres;
        _ph += (0.09 / 1440) + (grams * 0.012) - (acidIn * Plan.Acid.MillilitresPerStroke / 1000 * Plan.Acid.Strength / Plan.VolumeCubicMetres / Buffer) + (0.0005 * Normal());
        _chlorine = Math.Max(0.02, (_chlorine * (1 - 0.0004 - (0.0008 * crowd))) + grams + (0.0015 * Normal()));
        _wander += (-_wander / 1500) + (0.2 * Normal());
        if (Circulates)
        {
            _pipe.Dequeue();
            _pipe.Enqueue((_ph, _chlorine));
        }

        AcidTank -= acidIn * Plan.Acid.MillilitresPerStroke / 1000;
        var orp = 720 + (70 * Math.Log10(seenChlorine / (1 + Math.Pow(10, seenPh - 7.5)))) + _wander + (1.5 * Normal());
        var at = Start + TimeSpan.FromMinutes(_minute++);
        return new(at, Math.Round(seenPh + (0.008 * Normal()), 2), Math.Round(orp), acid, chlorine, Circulates, _minute % 10 == 1 ? AcidTank : null, null);
    }

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
