using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry;

/// <summary>How a water answers when one thing is moved and the rest is left alone.</summary>
public sealed class SweepTests
{
    private static readonly Gen<ImaginedWater> AnyWater =
        from ph in Gen.Double[6.5, 8.5]
        from celsius in Gen.Double[5, 35] // hypochlorous acid is worked out so far
        from alkalinity in Gen.Double[60, 300]
        from calcium in Gen.Double[50, 800]
        from solids in Gen.Double[1500, 6000]
        from cyanurate in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 80])
        from chlorine in Gen.Double[0.1, 10]
        select Water(ph, celsius, alkalinity, calcium, solids) with { Cyanurate = CyanuricAcid.From(cyanurate), FreeChlorine = FreeChlorine.From(chlorine) };

    /// <summary>Reference pack, section 4, worked with PHREEQC (generated): pH 7.8, 27 degC, TA 100, CH 250, TDS 1000.</summary>
    [Theory]
    [InlineData(0.2, 7.153, 89.99)] // HCl, mmol/kg
    public void A_dose_of_acid_meets_the_worked_example(double millimoles, double ph, double alkalinity)
    {
        var water = Water(7.8, 27, 100, 250, 1000);
        var points = Sweep.OverDose(water, water.Speciate().Value, new Composition(Chloride: 1e-3), millimoles, 5);
        Assert.Equal(millimoles, points[^1].At);
        Assert.Equal(ph, points[^1].Figures.Ph, 0.005);
        Assert.Equal(alkalinity, points[^1].Figures.TotalAlkalinity, 0.02);
    }

    /// <summary>Same place: 0.1 mmol/kg of soda gives pH 8.334 and a saturation index of +0.90.</summary>
    [Fact]
    public void A_dose_of_soda_clouds_as_the_worked_example_says()
    {
        var water = Water(7.8, 27, 100, 250, 1000);
        var end = Sweep.OverDose(water, water.Speciate().Value, new Composition(Sodium: 2e-3, Carbon: 1e-3), 0.1, 2)[^1].Figures;
        Assert.Equal(8.334, end.Ph, 0.005);
        Assert.Equal(0.90, end.SaturationIndex!.Value, 0.01);
    }

    [Fact]
    public void With_rising_pH_the_index_rises_and_hypochlorous_acid_falls() => AnyWater.Sample(
        water =>
        {
            var points = Sweep.OverPh(water, 6.5, 8.5, 9);
            for (var i = 1; i < points.Length; i++)
            {
                Assert.True(points[i].Figures.SaturationIndex > points[i - 1].Figures.SaturationIndex);
                Assert.True(points[i].Figures.HypochlorousAcid < points[i - 1].Figures.HypochlorousAcid);
                Assert.InRange(points[i].Figures.HypochlorousShare!.Value, 0, 1);
            }
        },
        iter: 500);

    [Fact]
    public void A_curve_begins_at_the_water_itself_and_what_is_measured_again_is_what_was_set() => AnyWater.Sample(
        water =>
        {
            if (water.Speciate() is not { IsKnown: true } known) return;
            var start = Sweep.OverDose(water, known.Value, new Composition(Chloride: 1e-3), 0.1, 2)[0].Figures;
            Assert.Equal(water.Ph.Value, start.Ph, 1e-6);
            Assert.Equal(water.Alkalinity.MilligramsPerLitre, start.TotalAlkalinity, 1e-6);
            Assert.Equal(water.FreeChlorine!.Value.MilligramsPerLitre, start.FreeChlorine!.Value, 1e-6);
            var became = water.Became(known.Value)!;
            Assert.Equal(known.Value.SaturationIndex, became.Speciate().Value.SaturationIndex, 1e-3);
        },
        iter: 500);

    [Fact]
    public void A_curve_of_one_point_is_a_mistake() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Sweep.OverPh(Water(7.4, 27, 100, 250, 1000), 7, 8, 1));

    internal static ImaginedWater Water(double ph, double celsius, double alkalinity, double calcium, double solids) =>
        new(Ph.From(ph), Celsius.From(celsius), Alkalinity.From(alkalinity)) { Calcium = CalciumHardness.From(calcium), Solids = DissolvedSolids.From(solids) };
}
