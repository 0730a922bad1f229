using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests;

/// <summary>Checks as an invented operator makes them.</summary>
internal static class Checks
{
    public static readonly Instant Noon = Instant.FromUtc(2026, 5, 4, 12);

    public static ManualCheck Of(params TestResult[] results) => At(Noon, results);

    public static ManualCheck At(Instant sampledAt, params TestResult[] results) => new()
    {
        Id = TimeOrderedId.Derive(sampledAt, "check"),
        PoolId = "main",
        SampledAt = sampledAt,
        EnteredAt = sampledAt + TimeSpan.FromMinutes(3),
        Who = "R. Example",
        Point = SamplePoint.Pool,
        Results = [.. results],
    };
}
