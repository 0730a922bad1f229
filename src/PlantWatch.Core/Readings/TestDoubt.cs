using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>A test of a pool that is in doubt, and until when a repeat has to settle it.</summary>
/// <param name="Measurand">What was tested.</param>
/// <param name="SampledAt">Sample time of the newest doubted test: only a later sample settles it.</param>
/// <param name="By">Until when. A repeat that is doubted too does not move it.</param>
public readonly record struct TestDoubt(Measurand Measurand, Instant SampledAt, Instant By);
