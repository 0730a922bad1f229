using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>The range within which a method gives a number; at its ends and beyond, the result is only a bound.</summary>
public static class MethodRange
{
    /// <summary>Phenol red changes colour between these pH (published, photometer manuals).</summary>
    public static ValueRange PhenolRed { get; } = new(6.8, 8.4);

    /// <summary>DPD in the cell, mg/L: ISO 7393-2:2017 has 0.03 to 5 (published, scope); above it the sample is to be diluted.</summary>
    public const double DpdHighest = 5;

    /// <summary>From here on the dye may bleach and the reading may be anything, down to nil: 10 mg/L for tablets (published, photometer manuals).</summary>
    public const double DpdBleaches = 10;

    /// <summary>True when the result lies where its method gives a number.</summary>
    public static bool Holds(TestResult result) => result.Measurand switch
    {
        Measurand.Ph when UsesPhenolRed(result.Method) => result.Value > PhenolRed.Low && result.Value < PhenolRed.High,
        Measurand.FreeChlorine or Measurand.TotalChlorine when UsesDpd(result.Method) => InCell(result) <= DpdBleaches,
        _ => true,
    };

    /// <summary>What the instrument showed before the dilution was multiplied in.</summary>
    public static double InCell(TestResult result) => result.Value / Math.Max(1, result.Dilution);

    internal static bool UsesPhenolRed(TestMethod method) => method is TestMethod.Photometer or TestMethod.Comparator or TestMethod.Unknown;

    internal static bool UsesDpd(TestMethod method) => method is TestMethod.Photometer or TestMethod.Comparator or TestMethod.Unknown;
}
