using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>The range within which a method gives a number; at its ends and beyond, the result is only a bound.</summary>
public static class MethodRange
{
    /// <summary>True when the result lies where its method gives a number.</summary>
    public static bool Holds(TestResult result) => result.Measurand switch
    {
        Measurand.Ph when UsesPhenolRed(result.Method) => result.Value > PhenolRed.Range.Low && result.Value < PhenolRed.Range.High,
        Measurand.FreeChlorine or Measurand.TotalChlorine when UsesDpd(result.Method) => InCell(result) <= Dpd.Bleaches,
        Measurand.Bromine when UsesDpd(result.Method) => InCell(result) <= Bromine.OfChlorineReading(Dpd.Bleaches),
        _ => true,
    };

    /// <summary>What the instrument showed before the dilution was multiplied in.</summary>
    public static double InCell(TestResult result) => result.Value / Math.Max(1, result.Dilution);

    internal static bool UsesPhenolRed(TestMethod method) => method is TestMethod.Photometer or TestMethod.Comparator or TestMethod.Unknown;

    internal static bool UsesDpd(TestMethod method) => method is TestMethod.Photometer or TestMethod.Comparator or TestMethod.Unknown;
}
