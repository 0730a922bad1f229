using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>Standard uncertainty of a manual test in two parts. The default makes no claim.</summary>
/// <param name="Random">What differs from one test to the next: reading, cell, timing.</param>
/// <param name="Shared">What all tests of one instrument and one lot of reagent have in common, so that averaging many does not shrink it.</param>
public readonly record struct TestUncertainty(double Random, double Shared)
{
    /// <summary>Both parts together (GUM: the root of the sum of squares).</summary>
    public double Total => Math.Sqrt((Random * Random) + (Shared * Shared));
}

/// <summary>How far a manual test may be off, by what was tested, how, and how far the sample was diluted.</summary>
public static class MethodUncertainty
{
    /// <summary>The result with its standard uncertainty; unknown for a bound, which is no number.</summary>
    public static Estimate Of(TestResult result) =>
        result.Censoring == Censoring.None && double.IsFinite(result.Value) && MethodPrecision.Has(result.Measurand)
            ? new(result.Value, Parts(result).Total)
            : default;

    /// <summary>The two parts of the uncertainty. A diluted sample is read low on the scale and the reading error is multiplied with the factor.</summary>
    public static TestUncertainty Parts(TestResult result)
    {
        var dilution = double.IsFinite(result.Dilution) && result.Dilution > 1 ? result.Dilution : 1;
        var inCell = Math.Abs(result.Value) / dilution;
        var read = WithStep(MethodPrecision.Of(result.Measurand, result.Method, inCell), result);
        var (shared, instrument) = (dilution * read.Shared, result.InstrumentDoubt ?? 0);
        return new(SampleDilution.Uncertainty(inCell, read.Random, dilution), instrument > 0 ? Math.Sqrt((shared * shared) + (instrument * instrument)) : shared);
    }

    // A step that is stated takes the place of the usual one; an instrument's is beside its noise.
    private static TestUncertainty WithStep(TestUncertainty usual, TestResult result) => (result.Step, result.Method) switch
    {
        (not > 0, _) => usual,
        ({ } step, TestMethod.TabletCount) => usual with { Random = TabletCount.Uncertainty(step) },
        ({ } step, TestMethod.Comparator) => usual with { Random = Comparator.Uncertainty(step) },
        ({ } step, _) => usual with { Random = Math.Sqrt((usual.Random * usual.Random) + (Rectangular.OfStep(step) * Rectangular.OfStep(step))) },
    };
}
