namespace PlantWatch.Core.Statistics;

/// <summary>Two measurements of one thing, or a cause and its effect. The default is the origin.</summary>
/// <param name="X">The one that the other is held against.</param>
/// <param name="Y">The other.</param>
public readonly record struct XyPoint(double X, double Y);
