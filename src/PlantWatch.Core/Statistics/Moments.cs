namespace PlantWatch.Core.Statistics;

/// <summary>Sums of squares and products about the means, taken in two passes so that nothing cancels.</summary>
internal readonly record struct Moments(int Count, double MeanX, double MeanY, double Sxx, double Syy, double Sxy)
{
    public static Moments Of(ReadOnlySpan<XyPoint> points)
    {
        var (x, y) = (0.0, 0.0);
        foreach (var point in points) (x, y) = (x + point.X, y + point.Y);
        (x, y) = (x / points.Length, y / points.Length);
        var (sxx, syy, sxy) = (0.0, 0.0, 0.0);
        foreach (var point in points)
        {
            var (dx, dy) = (point.X - x, point.Y - y);
            (sxx, syy, sxy) = (sxx + (dx * dx), syy + (dy * dy), sxy + (dx * dy));
        }

        return new(points.Length, x, y, sxx, syy, sxy);
    }

    /// <summary>The moments without one of the points they were taken over.</summary>
    public Moments Without(XyPoint point)
    {
        var (dx, dy, grow) = (point.X - MeanX, point.Y - MeanY, Count / (Count - 1.0));
        return new(Count - 1, MeanX - (dx / (Count - 1)), MeanY - (dy / (Count - 1)), Sxx - (grow * dx * dx), Syy - (grow * dy * dy), Sxy - (grow * dx * dy));
    }

    /// <summary>What stands against any line through the points; <see cref="Lack.Nothing"/> when nothing does.</summary>
    public static Lack LackOf(ReadOnlySpan<XyPoint> points, int least)
    {
        if (points.Length < least) return Lack.TooFew;
        foreach (var point in points)
            if (!double.IsFinite(point.X) || !double.IsFinite(point.Y)) return Lack.NotFinite;
        foreach (var point in points)
            if (point.X != points[0].X) return Lack.Nothing;
        return Lack.NoSpread;
    }
}
