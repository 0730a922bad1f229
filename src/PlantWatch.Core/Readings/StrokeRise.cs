namespace PlantWatch.Core.Readings;

/// <summary>By how much a pump's running counter of strokes rose from one telling to the next.</summary>
public static class StrokeRise
{
    /// <summary>More strokes a minute than any dosing pump makes: some hundred, four at most (common practice), and room. A number beyond is a counter that was changed, and not strokes.</summary>
    public const double MostPerMinute = 1000;

    /// <summary>Strokes between two tellings; less than before means that it was set to nil since. Null where no pump strokes so fast: then only the new number is known.</summary>
    /// <param name="before">The counter before.</param>
    /// <param name="now">The counter now.</param>
    /// <param name="over">Time between them; under a minute it counts as one.</param>
    public static double? Of(double before, double now, TimeSpan over)
    {
        var rose = now >= before ? now - before : now;
        return rose <= MostPerMinute * Math.Max(1, over.TotalMinutes) ? rose : null;
    }
}
