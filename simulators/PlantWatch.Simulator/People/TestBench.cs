using PlantWatch.Simulator.Water;

namespace PlantWatch.Simulator.People;

/// <summary>What a person with a test kit finds: the truth with the method's error, its steps and its limits.</summary>
/// <remarks>Errors are common practice for field work: photometer 3 % and 0.02 mg/L, pH 0.04, tablet counts in steps of 40 mg/L (50 mL sample), meters 2 %.</remarks>
internal static class TestBench
{
    /// <summary>Tests one quantity.</summary>
    public static SheetResult Test(string measurand, in WaterView water, Chance chance) => measurand switch
    {
        "free_chlorine" => Photometer(measurand, water.Free, chance),
        "total_chlorine" => Photometer(measurand, water.Free + water.Combined, chance),
        "ph" => PhenolRed(water.Ph + (0.04 * chance.Normal())),
        "temperature" => new(measurand, Math.Round(water.Celsius + (0.1 * chance.Normal()), 1), "meter"),
        "total_alkalinity" => new(measurand, TabletCount(water.Alkalinity, chance), "tablet_count"),
        "calcium_hardness" => new(measurand, TabletCount(water.Hardness, chance), "tablet_count"),
        "dissolved_solids" => new(measurand, Math.Round(water.Solids * (1 + (0.02 * chance.Normal())) / 10) * 10, "meter"),
        _ => throw new ArgumentException($"no test for {measurand}", nameof(measurand)),
    };

    private static SheetResult Photometer(string measurand, double truth, Chance chance)
    {
        var read = Math.Max(0, Math.Round((truth * (1 + (0.02 * chance.Normal()))) + (0.02 * chance.Normal()), 2));
        return read > 5 ? new(measurand, 5, "photometer", "above") : new(measurand, read, "photometer");
    }

    // The dye turns between 6.8 and 8.4; outside there is only a bound.
    private static SheetResult PhenolRed(double ph) => ph switch
    {
        < 6.8 => new("ph", 6.8, "photometer", "below"),
        > 8.4 => new("ph", 8.4, "photometer", "above"),
        _ => new("ph", Math.Round(ph, 2), "photometer"),
    };

    // Tablets are added until the colour turns, so the count is rounded up; 40 a tablet less 20 is the middle of the last step.
    private static double TabletCount(double truth, Chance chance)
    {
        var tablets = Math.Max(1, Math.Ceiling((truth * (1 + (0.03 * chance.Normal()))) / 40));
        return (tablets * 40) - 20;
    }
}
