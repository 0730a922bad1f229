using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>Follows how a signal wanders, a block of some minutes at a time.</summary>
internal static class WanderWatch
{
    /// <summary>A block has closed.</summary>
    /// <param name="before">What was known.</param>
    /// <param name="at">Time of its end.</param>
    /// <param name="mean">Its mean; NaN when the signal could not be watched for most of it.</param>
    /// <param name="holes">Blocks that passed unseen after it.</param>
    /// <param name="paced">Whether the readings come fast enough to see how fast the probe follows.</param>
    /// <param name="atSeven">Whether the glass is thought broken: what it shows then tells nothing of its pace.</param>
    public static SignalWander Next(SignalWander before, Instant at, double mean, int holes, bool paced, bool atSeven)
    {
        var ring = before.Ring.Push(mean, holes);
        var now = before with { Ring = ring, Blocks = before.Blocks + 1 + holes, Pace = paced ? PaceWatch.Next(before.Pace, ring, holes, before.IsStill || atSeven) : before.Pace };
        var whole = now.Blocks >= SignalLimits.Window;
        if (whole) now = now with { Blocks = 0 };
        if (Liveliness(ring, out var scatters) is not { } lively) return now;
        // Broken glass must not become its own measure.
        if (atSeven) return now with { Lively = lively };
        now = now with { Lively = lively, Hours = now.Hours.Next(lively, scatters ? SignalLimits.ScatterCalm : SignalLimits.HoursCalm, whole) };
        if (now.Days.IsStill && lively > now.Hours.Usual * SignalLimits.LivelyAgain) now = now with { Days = now.Days with { IsStill = false, Trough = now.Days.Usual } };
        if (whole) now = Day(now, lively);
        return now.IsStill == now.StillSince.IsSet ? now : now with { StillSince = now.IsStill ? at : Instant.Never };
    }

    private static SignalWander Day(SignalWander now, double lively)
    {
        now = now with { DaySum = now.DaySum + lively, DayWindows = now.DayWindows + 1 };
        if (now.DayWindows < SignalLimits.WindowsADay) return now;
        return now with { Days = now.Days.Next(now.DaySum / now.DayWindows, SignalLimits.DaysCalm, whole: true), DaySum = 0, DayWindows = 0 };
    }

    /// <summary>Mean square of the block means about their own mean, over two hours; null when too many blocks are missing. White noise can only add to it: it never makes a signal look still.</summary>
    /// <param name="ring">The block means.</param>
    /// <param name="scatters">True when they scatter about one value as independent numbers would: von Neumann's ratio, 2 for white noise and about 0.2 for a random walk.</param>
    public static double? Liveliness(BlockRing ring, out bool scatters)
    {
        double sum = 0, squares = 0, steps = 0, first = double.NaN, last = double.NaN;
        int n = 0, pairs = 0;
        for (var i = 0; i < SignalLimits.Window; i++)
        {
            var mean = ring[i];
            if (!double.IsNaN(mean))
            {
                if (n++ == 0) first = mean;
                sum += mean - first;
                squares += (mean - first) * (mean - first);
                if (!double.IsNaN(last))
                {
                    steps += (mean - last) * (mean - last);
                    pairs++;
                }
            }

            last = mean;
        }

        scatters = false;
        if (n < SignalLimits.WindowSeen) return null;
        var lively = Math.Max(0, (squares - (sum * sum / n)) / n);
        scatters = steps > SignalLimits.Scatter * pairs * lively;
        return lively;
    }
}
