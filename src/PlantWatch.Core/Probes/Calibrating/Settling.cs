using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes.Calibrating;

/// <summary>Whether readings in a solution have settled, and on what.</summary>
/// <param name="IsSettled">True when the window is full and its span small enough.</param>
/// <param name="Mean">Mean over the window; null without any reading in it.</param>
/// <param name="Span">Highest less lowest in the window; null without any reading in it.</param>
/// <param name="MostSpan">The span at which it counts as settled.</param>
/// <param name="Readings">Readings in the window.</param>
/// <param name="Seconds">Time they cover, s.</param>
/// <param name="SecondsNeeded">Time they have to cover, s.</param>
public readonly record struct Settled(bool IsSettled, double? Mean, double? Span, double MostSpan, int Readings, double Seconds, double SecondsNeeded);

/// <summary>The criterion by which a reading in a buffer is taken: it moved by no more than 0.02 pH, or 1 mV, within a minute (common practice), over at least four readings.</summary>
public static class Settling
{
    private const int LeastReadings = 4;

    private static readonly TimeSpan LeastWindow = TimeSpan.FromMinutes(1);

    /// <summary>The span at which a probe counts as settled; null for one that is not put into solutions.</summary>
    public static double? MostSpan(Measurand measurand) => measurand switch
    {
        Measurand.Ph => 0.02,
        Measurand.Orp => 1,
        _ => null,
    };

    /// <summary>Time the readings have to cover: a minute, and longer for a probe that reports seldom.</summary>
    /// <param name="every">How often a reading is expected.</param>
    public static TimeSpan Window(TimeSpan every) => TimeSpan.FromTicks(Math.Max(LeastWindow.Ticks, every.Ticks * LeastReadings));

    /// <summary>Looks at the newest readings.</summary>
    /// <param name="measurand">What is measured.</param>
    /// <param name="every">How often a reading is expected.</param>
    /// <param name="readings">Raw readings since the probe was put in, oldest first.</param>
    public static Settled Of(Measurand measurand, TimeSpan every, ReadOnlySpan<(Instant At, double Raw)> readings)
    {
        var (needed, most) = (Window(every), MostSpan(measurand) ?? 0);
        var first = readings.Length;
        while (first > 0 && readings[^1].At - readings[first - 1].At <= needed) first--;
        var window = readings[first..];
        if (window.IsEmpty) return new(false, null, null, most, 0, 0, needed.TotalSeconds);
        var (low, high, sum) = (double.PositiveInfinity, double.NegativeInfinity, 0.0);
        foreach (var (_, raw) in window) (low, high, sum) = (Math.Min(low, raw), Math.Max(high, raw), sum + raw);
        var covered = window[^1].At - window[0].At;
        // The first reading of a full window is up to one interval younger than the window.
        var full = window.Length >= LeastReadings && covered > needed - every - every / 2;
        // A digit of 0.01 on either side rounds to 0.0200000001.
        var settled = full && high - low <= most * (1 + 1e-9);
        return new(settled, sum / window.Length, high - low, most, window.Length, covered.TotalSeconds, needed.TotalSeconds);
    }
}
