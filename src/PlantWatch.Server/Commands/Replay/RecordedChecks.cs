using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>Rows of tests of one sample as the check that a person would have typed in.</summary>
internal static class RecordedChecks
{
    /// <summary>The check.</summary>
    /// <exception cref="FormatException">A quantity is not known.</exception>
    public static ManualCheck Of(BenchFiles.Test[] tests) => new()
    {
        Id = TimeOrderedId.Derive(tests[0].EnteredAt, $"{tests[0].Pool}/{tests[0].SampledAt}"), PoolId = tests[0].Pool, SampledAt = tests[0].SampledAt, EnteredAt = tests[0].EnteredAt, Who = "replay",
        Point = SamplePoint.Pool, Results = [.. tests.Select(Result)],
    };

    private static TestResult Result(BenchFiles.Test test) => new(
        test.Quantity switch
        {
            "ph" => Measurand.Ph, "free_chlorine" => Measurand.FreeChlorine, "total_chlorine" => Measurand.TotalChlorine, "temperature" => Measurand.Temperature,
            _ => throw new FormatException($"{test.Quantity} is no quantity"),
        },
        test.Value,
        test.Method switch { "photometer" => TestMethod.Photometer, "comparator" => TestMethod.Comparator, "meter" => TestMethod.Meter, _ => TestMethod.Unknown });
}
