using System.Globalization;
using PlantWatch.Core.Chemistry;

namespace PlantWatch.Core.Tests.Chemistry.Hydraulics;

/// <summary>The check values of hydraulics_values.csv, row by row, with the source and provenance that stand there.</summary>
public class HydraulicsCheckValues
{
    private const double LitresPerUsGallon = 3.785411784;

    [Theory]
    [InlineData("HY-01", 1, 1)]
    [InlineData("HY-02", 2, 1)]
    [InlineData("HY-03", 3, 1)]
    [InlineData("HY-04", 6, 1)]
    [InlineData("HY-05", 6, 0.25)]
    public void Part_of_the_water_that_has_passed(string id, double turnovers, double efficiency) =>
        Meets(id, 100 * Turnover.PartPassed(turnovers, efficiency).Value);

    [Fact]
    public void Turnover_of_a_main_pool() => Meets("HY-06", Turnover.Hours(450, 150).Value);

    [Fact]
    public void Rate_of_three_filters_of_two_metres_forty()
    {
        var rate = FilterRate.Of(150, FilterRate.AreaOf(3, 2.4).Value).Value;
        Meets("HY-07", rate);
        Assert.Equal(FilterRateKind.Medium, FilterRate.Kind(rate));
    }

    [Fact]
    public void Days_between_emptyings_of_a_spa() => Meets("HY-09", FreshWater.SpaDrainDays(600 * LitresPerUsGallon / 1000, 50).Value);

    [Fact]
    public void Half_the_water_halves_the_cyanurate() => Meets("DOSE-16", 100 * WaterReplacement.BatchPart(120, 60, 0).Value);

    [Fact]
    public void Part_to_drain_with_fill_water_that_holds_some_itself() => Meets("DOSE-17", WaterReplacement.BatchPart(2600, 1500, 300).Value);

    [Fact]
    public void Pool_volumes_of_an_overflow() => Meets("DOSE-18", WaterReplacement.OverflowVolumes(2600, 1500, 300).Value);

    [Fact]
    public void Every_row_has_its_test() =>
        Assert.Equal(["DOSE-16", "DOSE-17", "DOSE-18", "HY-01", "HY-02", "HY-03", "HY-04", "HY-05", "HY-06", "HY-07", "HY-09"],
            ReferenceRows.Of("Chemistry", "hydraulics_values.csv").Select(row => row["id"]).Order());

    private static void Meets(string id, double value)
    {
        var row = ReferenceRows.Of("Chemistry", "hydraulics_values.csv").Single(row => row["id"] == id);
        Assert.Equal(Number(row["expected"]), value, row["tolerance"] == "exact" ? 1e-9 : Number(row["tolerance"]));
    }

    // "63 %", "replace 50 %", "fraction 0.4783", "0.01": the number in the cell.
    private static double Number(string cell) =>
        double.Parse(cell.Split(' ').First(word => char.IsAsciiDigit(word[0])), CultureInfo.InvariantCulture);
}
