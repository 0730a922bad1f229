using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>The figures behind <see cref="MethodUncertainty"/>, one line a method. All are common practice unless a source is named.</summary>
/// <remarks>
/// A method that is not stated gets the coarsest line of its measurand. Where only one figure is known it is split: the random part is what two tests in a row differ by,
/// the shared part is what instrument and lot of reagent put on both.
/// </remarks>
internal static class MethodPrecision
{
    /// <summary>DPD: s 0.05 at 5.05 mg/L in ideal hands (published, colorimeter manual); in the field the larger of 0.05 mg/L and 5 % (common practice).</summary>
    private static readonly Line Dpd = new(0.05, 0.05, 0);

    private static readonly Line DpdComparator = new(0.15, 0.15, 0);

    /// <summary>One tablet is 40 mg/L of the usual sample of 50 mL.</summary>
    private static readonly Line Tablets = new(TabletCount.Uncertainty(TabletCount.Step(TabletCount.UsualMillilitres).Value), 0, 5);

    private static readonly Line Drops = new(10, 0.08, 5);

    /// <summary>True for what is tested by hand.</summary>
    public static bool Has(Measurand measurand) => measurand is not (Measurand.None or Measurand.CombinedChlorine) && !measurand.IsOfPlant();

    /// <summary>Uncertainty of a reading made in the test cell, before any factor.</summary>
    public static TestUncertainty Of(Measurand measurand, TestMethod method, double value) => LineOf(measurand, method).At(value);

    private static Line LineOf(Measurand measurand, TestMethod method) => measurand switch
    {
        Measurand.Ph => Ph(method),
        Measurand.FreeChlorine or Measurand.TotalChlorine or Measurand.CombinedChlorine =>
            method is TestMethod.Photometer or TestMethod.Meter ? Dpd : DpdComparator,
        // The same colour, read as bromine: 159.808 over 70.906 times the chlorine.
        Measurand.Bromine => (method is TestMethod.Photometer or TestMethod.Meter ? Dpd : DpdComparator).Times(Bromine.PerChlorine),
        Measurand.TotalAlkalinity or Measurand.CalciumHardness =>
            method is TestMethod.Photometer or TestMethod.Meter ? Drops : Tablets,
        // Turbidity against a mark or in a photometer: +-10 to 15 on a scale of 30 to 100 mg/L.
        Measurand.CyanuricAcid => new(10, 0.1, 5),
        // A hand meter turns conductivity into solids by a factor between 0.5 and 0.7.
        Measurand.DissolvedSolids => new(20, 0.05, 50),
        // A portable nephelometer: scratches and wetness of the cell count for more than the instrument.
        Measurand.Turbidity => new(0.05, 0.05, 0.05),
        Measurand.Conductivity => new(10, 0.03, 10),
        Measurand.Temperature => method == TestMethod.Meter ? new(0.1, 0, 0.15) : new(0.3, 0, 0.3),
        Measurand.Orp => new(5, 0, 10),
        _ => new(1, 0, 0),
    };

    // Phenol red by photometer: about 0.06 to 0.1 in all. Comparator steps of 0.2 are read to half a step. A field meter on fresh buffers: 0.05.
    private static Line Ph(TestMethod method) => method switch
    {
        TestMethod.Photometer => new(0.06, 0, 0.05),
        TestMethod.Meter => new(0.03, 0, 0.04),
        _ => new(0.10, 0, 0.06),
    };

    private readonly record struct Line(double Least, double Relative, double Shared)
    {
        public Line Times(double factor) => new(factor * Least, Relative, factor * Shared);

        public TestUncertainty At(double value) => new(Math.Max(Least, Relative * value), Shared);
    }
}
