using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>A sample diluted before the test because it is over the range. Water without chlorine demand (deionised, or fill water boiled and tested) dilutes; pool water never.</summary>
public static class SampleDilution
{
    /// <summary>Uncertainty of one dilution step relative to the result: pipette or syringe, and mixing (common practice).</summary>
    public const double StepRelative = 0.02;

    /// <summary>Factors that a test by hand can take.</summary>
    public static ValueRange ValidFactor { get; } = new(1, 100);

    private static readonly ValueRange Parts = new(0.001, 10_000);
    private static readonly ValueRange WaterParts = new(0, 10_000);

    /// <summary>The factor of so many parts of sample with so many of water: one and four are five.</summary>
    /// <param name="sample">Parts of sample, above 0.</param>
    /// <param name="water">Parts of diluting water.</param>
    public static Figure Factor(double sample, double water)
    {
        var inputs = new InputCheck().Within("sample_parts", sample, Parts, "").Within("water_parts", water, WaterParts, "");
        if (inputs.Why is { } why) return Figure.Not(why);
        var factor = (sample + water) / sample;
        return new InputCheck().Within("dilution", factor, ValidFactor, "").Then(() => factor);
    }

    /// <summary>The result of a diluted sample; its uncertainty grows with the factor (GUM).</summary>
    /// <param name="reading">What the instrument showed, with its standard uncertainty.</param>
    /// <param name="factor">Dilution factor, 1 to 100.</param>
    /// <param name="stepRelative">Uncertainty of the dilution itself, relative to the result.</param>
    public static Estimate Undiluted(Estimate reading, double factor, double stepRelative = StepRelative)
    {
        if (!reading.IsKnown || !ValidFactor.Contains(factor)) return default;
        return new(factor * reading.Value, Uncertainty(reading.Value, reading.StandardUncertainty, factor, stepRelative));
    }

    /// <summary>Standard uncertainty of the result of a diluted sample. An undiluted one has no step to go wrong.</summary>
    public static double Uncertainty(double reading, double standardUncertainty, double factor, double stepRelative = StepRelative)
    {
        var (read, step) = (factor * standardUncertainty, factor > 1 ? stepRelative * factor * Math.Abs(reading) : 0);
        return Math.Sqrt((read * read) + (step * step));
    }
}
