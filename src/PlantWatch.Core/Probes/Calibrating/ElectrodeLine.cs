using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes.Calibrating;

/// <summary>What two buffers, or one, say of a pH electrode: E = E0 - slope x s(T) x (pH - 7), s(T) the Nernst slope and 7 the isopotential pH.</summary>
/// <param name="SlopeShare">Slope as a share of the ideal, 1 = 100 %; null from one buffer, which tells no slope.</param>
/// <param name="OffsetMillivolts">What the electrode gives in a buffer of pH 7, mV at the temperature of the first point; ideal is 0.</param>
public readonly record struct ElectrodeLine(double? SlopeShare, double OffsetMillivolts)
{
    /// <summary>Two buffers tell a slope when they are at least this far apart (common practice).</summary>
    public const double LeastSpan = 2;

    private const double Isopotential = 7;

    // Beyond these the electrode, or the hand that moved it, is at fault, and a number would mislead.
    private const double LeastShare = 0.51, MostShare = 1.5, SameShare = 0.1;

    /// <summary>Slope of the electrode as a share, when two readings of it are possible at all; else why not.</summary>
    /// <param name="a">First point: buffer and reading in pH, by the ideal electrode where it was read in mV.</param>
    /// <param name="b">Second point.</param>
    /// <param name="line">The line.</param>
    /// <param name="why">Why there is none.</param>
    public static bool TryOf((double Known, double Reading, double Celsius) a, (double Known, double Reading, double Celsius) b, out ElectrodeLine line, out Reason? why)
    {
        line = default;
        var share = (b.Reading - a.Reading) / (b.Known - a.Known);
        why = Math.Abs(b.Known - a.Known) < LeastSpan ? Reason.Of("bench.buffers_too_close", Math.Abs(b.Known - a.Known), LeastSpan)
            : Math.Abs(share) < SameShare ? Reason.Of("bench.reads_the_same", a.Reading, b.Reading)
            : share is > -MostShare and < -LeastShare ? Reason.Of("bench.swapped")
            : share is < LeastShare or > MostShare ? Reason.Of("bench.no_electrode", 100 * share)
            : null;
        if (why is not null) return false;
        line = new(share, OffsetOf(a, share));
        return true;
    }

    /// <summary>The offset from one buffer, as if the slope were ideal.</summary>
    public static ElectrodeLine OfOne((double Known, double Reading, double Celsius) point) => new(null, OffsetOf(point, 1));

    /// <summary>The pH that an ideal electrode would have for these mV.</summary>
    public static double PhOf(double millivolts, double celsius) => Isopotential - (millivolts / Nernst.Slope(celsius));

    // A reading above the buffer is a potential below the ideal one.
    private static double OffsetOf((double Known, double Reading, double Celsius) point, double share) =>
        Nernst.Slope(point.Celsius) * (Isopotential + (share * (point.Known - Isopotential)) - point.Reading);
}
