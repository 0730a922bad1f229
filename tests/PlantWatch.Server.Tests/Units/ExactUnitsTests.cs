using System.Globalization;
using PlantWatch.Core.Tests.Chemistry;
using PlantWatch.Server.Units;

namespace PlantWatch.Server.Tests.Units;

/// <summary>The definitions, row by row of unit_values.csv, which says source and provenance.</summary>
public sealed class ExactUnitsTests
{
    [Theory]
    [InlineData("DOSE-20", ExactUnits.LitresPerUsGallon)]
    [InlineData("DOSE-21", ExactUnits.LitresPerImperialGallon)]
    [InlineData("DOSE-22", ExactUnits.LitresPerUsFluidOunce * 1000)]
    [InlineData("DOSE-23", ExactUnits.KilogramsPerPound * 1000)]
    public void A_definition_is_met_to_its_last_digit(string id, double value) => Assert.Equal(First(Row(id)["expected"]), value, 1e-12);

    [Fact]
    public void The_imperial_fluid_ounce_is_the_second_figure_of_its_row() =>
        Assert.Equal(ExactUnits.LitresPerImperialFluidOunce * 1000, First(Row("DOSE-22")["expected"].Split('/')[1]), 1e-12);

    [Fact]
    public void Eighty_six_degrees_fahrenheit_are_thirty_celsius()
    {
        Assert.Equal(First(Row("DOSE-24")["expected"]), ExactUnits.Celsius(86), 1e-12);
        Assert.Equal(86, ExactUnits.Fahrenheit(30), 1e-12);
    }

    [Fact]
    public void A_filter_rate_of_25_metres_an_hour_is_that_many_gallons_a_minute_and_square_foot()
    {
        var row = Row("HY-08");
        Assert.Equal(First(row["expected"]), 25 / ExactUnits.MetresPerHour(ExactUnits.LitresPerUsGallon), row.Number("tolerance"));
    }

    [Fact]
    public void The_imperial_gallon_is_a_fifth_larger_and_its_fluid_ounce_smaller()
    {
        Assert.Equal(1.2, ExactUnits.LitresPerImperialGallon / ExactUnits.LitresPerUsGallon, 0.001);
        Assert.True(ExactUnits.LitresPerImperialFluidOunce < ExactUnits.LitresPerUsFluidOunce);
    }

    private static Dictionary<string, string> Row(string id) => ReferenceRows.Of("Units", "unit_values.csv").Single(row => row["id"] == id);

    private static double First(string text) => double.Parse(text.Trim().Split(' ')[0], CultureInfo.InvariantCulture);
}
