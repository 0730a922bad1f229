using System.Collections.Immutable;

namespace PlantWatch.Core.Probes;

/// <summary>Follows how fast a probe follows the water: sums over quarter days, judged over the last four, so that night and day are always in it.</summary>
internal static class PaceWatch
{
    private const int QuarterDay = 72;

    public static SignalPace Next(SignalPace before, BlockRing ring, int holes, bool still)
    {
        var now = before with { Quarter = before.Quarter.Take(ring, before.Quarters < 4 ? default : before.Usual, SignalLimits.MostOfUsual), Blocks = before.Blocks + 1 + holes };
        return now.Blocks < QuarterDay ? now : Close(now, still);
    }

    private static SignalPace Close(SignalPace pace, bool still)
    {
        var past = pace.Past.Insert(0, pace.Quarter);
        var oldest = past.Length > 4 ? past[4] : default;
        var now = pace with { Quarter = default, Blocks = 0, Past = past.Length > 4 ? past.RemoveAt(4) : past };
        var day = Sum(now.Past);
        if (day.L2.N < 2 * QuarterDay || day.L32.N < QuarterDay) return now;
        if (!still) now = Judge(now, day);
        // Learned from a day late, and not while something is wrong: a probe that slows down must not become its own measure.
        if (now.Brisk.IsStill || still || now.Brisk.Trough < now.Brisk.Usual * SignalLimits.PaceCalm.Again) return now;
        return oldest.L2.N == 0 ? now : now with
        {
            Usual = now.Usual.Towards(oldest, 1.0 / Math.Min(now.Quarters + 1, SignalLimits.PaceCalm.Most)), Quarters = Math.Min(now.Quarters + 1, SignalLimits.PaceCalm.Most),
        };
    }

    private static SignalPace Judge(SignalPace pace, in LagSums day)
    {
        var now = pace with { Brisk = pace.Brisk.Next(day.L2.Mean, SignalLimits.PaceCalm, whole: true) };
        if (!now.Brisk.IsStill || now.Quarters < SignalLimits.PaceCalm.Enough) return Swift(now);
        // The first day still holds hours from before; after a day only what came since it was found slow counts.
        var slow = now.IsSlow ? Forget(now.Slow).Plus(now.Past[0]) : now.Past[0];
        var fit = PaceFit.Of(now.Usual, now.SlowFor < 4 ? day : slow);
        if (!now.IsSlow && (fit.Gain < SignalLimits.PaceGain || fit.Minutes < SignalLimits.SlowFrom || LostAll(now, day))) return Swift(now);
        return now with { SlowFor = now.SlowFor + 1, Slow = slow, Response = new(fit.Minutes, fit.Minutes * fit.LogUncertainty) };
    }

    // A slow probe keeps the long changes; what lost them as well does not follow at all.
    private static bool LostAll(SignalPace pace, in LagSums day) => day.L32.Mean < SignalLimits.LongKept * pace.Usual.L32.Mean;

    private static SignalPace Swift(SignalPace pace) => pace with { SlowFor = 0, Slow = default, Response = default };

    // A probe that slows down further shall be followed: two weeks are remembered.
    private static LagSums Forget(in LagSums slow) => slow.L2.N > 56 * QuarterDay ? slow.Half() : slow;

    private static LagSums Sum(ImmutableArray<LagSums> past)
    {
        LagSums sum = default;
        foreach (var quarter in past) sum = sum.Plus(quarter);
        return sum;
    }
}
