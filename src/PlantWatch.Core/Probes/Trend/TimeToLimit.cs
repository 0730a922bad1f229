namespace PlantWatch.Core.Probes;

/// <summary>When a trend reaches a limit, if it goes on as it is: hours from the end of the window, with the ends of the interval that holds the true time in 95 of 100 cases.</summary>
/// <param name="Hours">Best value.</param>
/// <param name="Earliest">Early end; 0 when it may be there already.</param>
/// <param name="Latest">Late end.</param>
public readonly record struct TimeToLimit(double Hours, double Earliest, double Latest)
{
    /// <summary>The time at which the line reaches the limit; false when the sign of the slope is open or the line leads away.</summary>
    /// <remarks>
    /// Inverse prediction from a straight line: the times at which the limit lies within the 95 % band of the line are the roots of
    /// (d - b x)² = t² (u² + x² s²), with d the way from the middle to the limit, u and s the standard errors of mean and slope (Fieller's theorem).
    /// </remarks>
    public static bool TryOf(in Trend trend, double limit, out TimeToLimit time)
    {
        time = default;
        var way = limit - trend.Mean;
        var (t2, b2) = (Trend.T * Trend.T, trend.Slope * trend.Slope);
        var a = b2 - (t2 * trend.SlopeError * trend.SlopeError);
        if (!(a > 0) || Math.Sign(limit - trend.Now) != Math.Sign(trend.Slope)) return false;
        var u2 = t2 * trend.MeanError * trend.MeanError;
        var root = Math.Sqrt((b2 * way * way) - (a * ((way * way) - u2)));
        var (early, late) = (((trend.Slope * way) - root) / a, ((trend.Slope * way) + root) / a);
        time = new((way / trend.Slope) - trend.HalfWindow, Math.Max(0, early - trend.HalfWindow), late - trend.HalfWindow);
        return true;
    }
}
