using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>Standard uncertainty of a manual test in two parts. The default makes no claim.</summary>
/// <param name="Random">What differs from one test to the next: reading, cell, timing.</param>
/// <param name="Shared">What all tests of one instrument and one lot of reagent have in common, so that averaging many does not shrink it.</param>
public readonly record struct TestUncertainty(double Random, double Shared)
{
    /// <summary>Both parts together (GUM: the root of the sum of squares).</summary>
    public double Total => Math.Sqrt((Random * Random) + (Shared * Shared));

    internal TestUncertainty Times(double factor) => new(Random * factor, Shared * factor);
}

/// <summary>How far a manual test may be off, by what was tested, how, and how far the sample was diluted.</summary>
public static class MethodUncertainty
{
    /// <summary>Uncertainty of one dilution step relative to the value: pipette or syringe and mixing (common practice).</summary>
    private const double DilutionRelative = 0.02;

    /// <summary>The result with its standard uncertainty; unknown for a bound, which is no number.</summary>
    public static Estimate Of(TestResult result) =>
        result.Censoring == Censoring.None && double.IsFinite(result.Value) && MethodPrecision.Has(result.Measurand)
            ? new(result.Value, Parts(result).Total)
            : default;

    /// <summary>The two parts of the uncertainty. A diluted sample is read low on the scale and the reading error is multiplied with the factor.</summary>
    public static TestUncertainty Parts(TestResult result)
    {
        var dilution = double.IsFinite(result.Dilution) && result.Dilution > 1 ? result.Dilution : 1;
        var read = MethodPrecision.Of(result.Measurand, result.Method, Math.Abs(result.Value) / dilution).Times(dilution);
        if (dilution == 1) return read;
        var step = DilutionRelative * Math.Abs(result.Value);
        return read with { Random = Math.Sqrt((read.Random * read.Random) + (step * step)) };
    }
}
