using System.Globalization;
using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry.Chlorine;

public class OrpTests
{
    private static readonly Celsius Reference = Celsius.From(25);

    [Fact]
    public void Slope_of_a_decade_is_met_at_every_temperature_of_the_table()
    {
        foreach (var row in ReferenceRows.Of("Chemistry", "nernst_slope.csv"))
            Assert.Equal(row.Number("slope_mV_per_pH"), Nernst.Slope(row.Number("T_C")), 0.00006);
    }

    [Fact]
    public void Check_values_of_theory_are_met()
    {
        Meets("CL-40", OrpTheory.Potential(1.0, 250, Ph.From(7.5), Reference).Value);
        Meets("CL-41", OrpTheory.PerPh(Reference));
        Meets("CL-42", OrpTheory.PerDoubling(Reference));
    }

    [Fact]
    public void Theory_lies_far_above_what_platinum_reads_and_says_so()
    {
        // CL-43: 973 mV against Ag/AgCl by theory, 650 to 800 in pools (common practice).
        var theory = ReferencePotential.Convert(
            Millivolts.From(OrpTheory.Potential(1.0, 250, Ph.From(7.5), Reference).Value), ReferenceElectrode.StandardHydrogen, ReferenceElectrode.SilverChloride3M, Reference);
        Assert.Equal(973, theory.Reading.Value, 1.0);
        Assert.Equal("orp.theory_is_no_reading", OrpTheory.Caution.Code);
        Assert.InRange(theory.Reading.Value - OrpTheory.RealElectrodeReadsLowerBy.High, 600, 800);
    }

    [Fact]
    public void Theory_rises_with_acid_and_falls_with_ph_and_chloride() =>
        Gen.Select(Gen.Double[0.001, 50], Gen.Double[1, 10_000], Gen.Double[6, 9], Gen.Double[5, 40]).Sample((acid, chloride, ph, celsius) =>
        {
            var here = At(acid, chloride, ph, celsius);
            Assert.True(At(2 * acid, chloride, ph, celsius) > here);
            Assert.True(At(acid, 2 * chloride, ph, celsius) < here);
            Assert.True(At(acid, chloride, ph + 0.5, celsius) < here);
            Assert.Equal(OrpTheory.PerDoubling(Celsius.From(celsius)), At(2 * acid, chloride, ph, celsius) - here, 1e-9);
        });

    [Fact]
    public void Nothing_is_said_of_water_without_chlorine_or_chloride()
    {
        Assert.Equal("input_hypochlorous_acid", OrpTheory.Potential(0, 250, Ph.From(7.5), Reference).Why!.Facts[0].Text);
        Assert.Equal("input_chloride", OrpTheory.Potential(1, double.NaN, Ph.From(7.5), Reference).Why!.Facts[0].Text);
    }

    [Fact]
    public void Potentials_of_reference_electrodes_are_those_of_the_table()
    {
        var columns = new[]
        {
            (ReferenceElectrode.SilverChloride3M, "AgAgCl_3M_mV_SHE"), (ReferenceElectrode.SilverChloride3M5, "AgAgCl_3.5M_mV_SHE(from memory)"),
            (ReferenceElectrode.SilverChlorideSaturated, "AgAgCl_satKCl_mV_SHE(from memory)"), (ReferenceElectrode.Calomel, "SCE_mV_SHE(from memory)"),
        };
        foreach (var row in ReferenceRows.Of("Chemistry", "orp_reference.csv"))
            foreach (var (electrode, column) in columns)
            {
                var potential = ReferencePotential.Of(electrode, Celsius.From(row.Number("T_C")));
                Assert.Equal(row[column] is "" ? null : double.Parse(row[column], CultureInfo.InvariantCulture), potential.OrNull);
            }
    }

    [Theory]
    [InlineData("PR-23", ReferenceElectrode.SilverChloride3M, 207)]
    [InlineData("PR-24", ReferenceElectrode.SilverChloride3M5, 205)]
    [InlineData("PR-25", ReferenceElectrode.Calomel, 244)]
    [InlineData("PR-26", ReferenceElectrode.SilverChlorideSaturated, 199)]
    public void Published_potentials_at_25_degrees_are_met(string id, ReferenceElectrode electrode, double millivolts)
    {
        var row = Row(id);
        Assert.Contains(millivolts.ToString(CultureInfo.InvariantCulture), row["expected"], StringComparison.Ordinal);
        Assert.Equal(millivolts, ReferencePotential.Of(electrode, Reference).Value, row.Number("tolerance"));
        Assert.False(ReferencePotential.IsFromMemory(electrode, Reference));
    }

    [Fact]
    public void A_reading_is_turned_from_one_electrode_to_another()
    {
        // PR-27 (computed): 650 mV against Ag/AgCl 3 M at 25 degC is 857 against SHE and 613 against calomel (244).
        Assert.Equal(857, Turned(650, ReferenceElectrode.SilverChloride3M, ReferenceElectrode.StandardHydrogen), 1.0);
        Assert.Equal(613, Turned(650, ReferenceElectrode.SilverChloride3M, ReferenceElectrode.Calomel), 1.0);
    }

    [Fact]
    public void The_check_solution_of_iron_agrees_with_itself_against_three_electrodes()
    {
        // PR-29 (from memory): +675 SHE, +476 Ag/AgCl sat., +430 calomel.
        Assert.Equal(476, Turned(675, ReferenceElectrode.StandardHydrogen, ReferenceElectrode.SilverChlorideSaturated), First(Row("PR-29")["tolerance"]));
        Assert.Equal(430, Turned(675, ReferenceElectrode.StandardHydrogen, ReferenceElectrode.Calomel), First(Row("PR-29")["tolerance"]));
    }

    [Fact]
    public void A_probe_is_checked_in_quinhydrone_at_the_temperature_it_has()
    {
        Meets("PR-20", OrpCheckSolution.Expected(QuinhydroneBuffer.Phthalate, 25).Value, 0.05);
        Meets("PR-21", OrpCheckSolution.Expected(QuinhydroneBuffer.Phosphate, 25).Value, 0.05);
        Meets("PR-22", OrpCheckSolution.Expected(QuinhydroneBuffer.Phthalate, 25).Value - OrpCheckSolution.Expected(QuinhydroneBuffer.Phosphate, 25).Value, 0.05);
        Assert.StartsWith("15 mV", Row("PR-20")["tolerance"], StringComparison.Ordinal);
        Assert.Equal(15, OrpCheckSolution.Acceptance);
        foreach (var row in ReferenceRows.Of("Chemistry", "orp_reference.csv"))
            Assert.Equal(row.Number("quinhydrone_pH7_mV_vs_AgAgCl_3.33M"), OrpCheckSolution.Expected(QuinhydroneBuffer.Phosphate, row.Number("T_C")).Value);
        Assert.Equal("orp.check_solution_unknown", OrpCheckSolution.Expected(QuinhydroneBuffer.Unknown, 25).Why!.Code);
        Assert.Equal("input_temperature", OrpCheckSolution.Expected(QuinhydroneBuffer.Phthalate, 4).Why!.Facts[0].Text);
    }

    [Fact]
    public void What_is_from_memory_is_said_and_the_rest_is_not()
    {
        var warm = Celsius.From(30);
        Assert.Contains(ReferencePotential.Convert(Millivolts.From(700), ReferenceElectrode.SilverChloride3M, ReferenceElectrode.Calomel, warm).Says, r => r.Code == "orp.reference_from_memory");
        Assert.Empty(ReferencePotential.Convert(Millivolts.From(700), ReferenceElectrode.SilverChloride3M, ReferenceElectrode.StandardHydrogen, warm).Says);
    }

    [Fact]
    public void There_and_back_is_where_it_was() => Gen.Select(Gen.Double[-900, 1100], Gen.Double[10, 40], Gen.Int[1, 5], Gen.Int[1, 5]).Sample((reading, celsius, a, b) =>
    {
        var (from, to, water) = ((ReferenceElectrode)a, (ReferenceElectrode)b, Celsius.From(celsius));
        var there = ReferencePotential.Convert(Millivolts.From(reading), from, to, water).Reading.Value;
        if (there is < -1000 or > 1200) return;
        Assert.Equal(reading, ReferencePotential.Convert(Millivolts.From(there), to, from, water).Reading.Value, 1e-9);
    });

    [Fact]
    public void An_electrode_without_a_name_or_a_temperature_off_the_table_has_no_answer()
    {
        Assert.Equal("orp.electrode_unknown", ReferencePotential.Convert(Millivolts.From(700), ReferenceElectrode.Unknown, ReferenceElectrode.Unknown, Reference).Reading.Why!.Code);
        Assert.Equal("input_temperature", ReferencePotential.Convert(Millivolts.From(700), ReferenceElectrode.SilverChloride3M, ReferenceElectrode.Calomel, Celsius.From(5)).Reading.Why!.Facts[0].Text);
    }

    [Theory]
    [InlineData("Ag/AgCl 3 M", ReferenceElectrode.SilverChloride3M)]
    [InlineData("Ag/AgCl, 3 mol/L KCl", ReferenceElectrode.SilverChloride3M)]
    [InlineData("Ag/AgCl 3.5 M", ReferenceElectrode.SilverChloride3M5)]
    [InlineData("Ag/AgCl 3.33 M", ReferenceElectrode.Unknown)]
    [InlineData("silver/silver chloride, saturated", ReferenceElectrode.SilverChlorideSaturated)]
    [InlineData("Ag/AgCl", ReferenceElectrode.Unknown)]
    [InlineData("calomel", ReferenceElectrode.Calomel)]
    [InlineData("SCE", ReferenceElectrode.Calomel)]
    [InlineData("SHE", ReferenceElectrode.StandardHydrogen)]
    [InlineData("platinum", ReferenceElectrode.Unknown)]
    [InlineData(null, ReferenceElectrode.Unknown)]
    public void Electrodes_are_known_by_the_names_of_plant_files(string? name, ReferenceElectrode electrode) => Assert.Equal(electrode, ReferenceElectrodeNames.Read(name));

    private static double Turned(double reading, ReferenceElectrode from, ReferenceElectrode to) => ReferencePotential.Convert(Millivolts.From(reading), from, to, Reference).Reading.Value;

    private static double At(double acid, double chloride, double ph, double celsius) => OrpTheory.Potential(acid, chloride, Ph.From(ph), Celsius.From(celsius)).Value;

    private static Dictionary<string, string> Row(string id) => ReferenceRows.Of("Chemistry", "chlorine_values.csv").Single(row => row["id"] == id);

    private static void Meets(string id, double value, double tolerance) => Assert.Equal(First(Row(id)["expected"]), value, tolerance);

    private static void Meets(string id, double value) =>
        Assert.Equal(First(Row(id)["expected"]), value, First(Row(id)["tolerance"]));

    private static double First(string cell) => double.Parse(cell.Split(' ')[0], CultureInfo.InvariantCulture);
}
