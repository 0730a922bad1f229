using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plans;

/// <summary>A stop that the plant has edited. What may be edited, and how far, is decided where the stops stand; an end that is left out stays as it is.</summary>
/// <param name="Measurand">What the stop is on.</param>
/// <param name="Low">Lowest value; null leaves it.</param>
/// <param name="High">Highest value; null leaves it.</param>
/// <param name="Why">Why it was edited.</param>
/// <param name="By">Who stands for it where it is looser than usual; null when it only tightens.</param>
public sealed record StopPlan(Measurand Measurand, double? Low, double? High, string Why, string? By = null);
