namespace PlantWatch.Core.Chemistry;

/// <summary>Where a figure of the water is to lie. An end that is null is open.</summary>
/// <param name="Figure">Which.</param>
/// <param name="Low">Lowest.</param>
/// <param name="High">Highest.</param>
public sealed record Band(PlannedFigure Figure, double? Low, double? High)
{
    /// <summary>Document the lower end is from; null when it is a handbook aim (common practice).</summary>
    public string? LowSource { get; init; }

    /// <summary>Document the upper end is from; null when it is a handbook aim (common practice).</summary>
    public string? HighSource { get; init; }

    /// <summary>True when the ends cross: nothing lies inside.</summary>
    public bool IsContradictory => Low > High;
}
