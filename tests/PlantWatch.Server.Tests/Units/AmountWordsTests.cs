using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Units;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Units;

/// <summary>Amounts are said so that a person can measure them out.</summary>
public sealed partial class AmountWordsTests
{
    private static readonly AmountWords Metric = new(UnitSystem.Metric, Language.English);
    private static readonly AmountWords Us = new(UnitSystem.Us, Language.English);
    private static readonly AmountWords Imperial = new(UnitSystem.Imperial, Language.English);

    [Theory]
    [InlineData(1.25, "1.25 kg")]
    [InlineData(0.8504, "850 g")]
    [InlineData(0.9996, "1 kg")]
    [InlineData(12.345, "12.3 kg")]
    [InlineData(0.0004, "0.4 g")]
    [InlineData(0.000004, "under 0.01 g")]
    [InlineData(0, "0 kg")]
    [InlineData(1250, "1,250 kg")]
    public void A_mass_in_metric(double kilograms, string expected) => Assert.Equal(expected, Plain(Metric.Mass(kilograms).Text));

    [Theory]
    [InlineData(1.25, "2 lb 12 oz")]
    [InlineData(0.265, "9.35 oz")]
    [InlineData(0.4535, "1 lb")]
    [InlineData(0.907, "2 lb")]
    [InlineData(0.9, "1 lb 15.5 oz")]
    [InlineData(10, "22 lb 1 oz")]
    [InlineData(56.7, "125 lb")]
    [InlineData(0.0001, "under 0.01 oz")]
    [InlineData(0, "0 lb")]
    public void A_mass_in_pounds_and_ounces(double kilograms, string expected) => Assert.Equal(expected, Plain(Us.Mass(kilograms).Text));

    [Theory]
    [InlineData(0.850, "850 mL", "28.7 US fl oz", "29.9 imp fl oz")]
    [InlineData(0.8281, "828 mL", "28 US fl oz", "29.1 imp fl oz")]
    [InlineData(10.8, "10.8 L", "2.85 US gal", "2.38 imp gal")]
    [InlineData(3.79, "3.79 L", "1 US gal", "133 imp fl oz")]
    public void A_volume_names_its_kind_of_gallon_and_ounce(double litres, string metric, string us, string imperial) =>
        Assert.Equal((metric, us, imperial), (Plain(Metric.Volume(litres).Text), Plain(Us.Volume(litres).Text), Plain(Imperial.Volume(litres).Text)));

    [Theory]
    [InlineData(450, "450 m³", "118,900 US gal", "98,990 imp gal")]
    [InlineData(378.5411784, "378.5 m³", "100,000 US gal", "83,270 imp gal")]
    [InlineData(0.85, "850 L", "224.5 US gal", "187 imp gal")]
    public void A_body_of_water(double cubicMetres, string metric, string us, string imperial) =>
        Assert.Equal((metric, us, imperial), (Plain(Metric.Water(cubicMetres).Text), Plain(Us.Water(cubicMetres).Text), Plain(Imperial.Water(cubicMetres).Text)));

    [Fact]
    public void Temperature_concentration_flow_and_filter_rate_follow_the_plant_too()
    {
        Assert.Equal("86.0 °F (30.0 °C)", Plain(Us.Temperature(30).ToString()));
        Assert.Equal("2.50 ppm (2.50 mg/L)", Plain(Us.Concentration(2.5).ToString()));
        Assert.Equal("660 US gal/min (150 m³/h)", Plain(Us.Flow(150).ToString()));
        Assert.Equal("10.2 US gal/min per ft² (25 m/h)", Plain(Us.FilterRate(25).ToString()));
        Assert.Equal("30.0 °C", Plain(Metric.Temperature(30).ToString()));
    }

    [Fact]
    public void The_figure_in_SI_stands_beside_and_is_not_repeated_in_a_metric_plant()
    {
        Assert.Equal("2 lb 12 oz (1.25 kg)", Plain(Us.Mass(1.25).ToString()));
        Assert.Equal("1.25 kg", Plain(Metric.Mass(1.25).ToString()));
        Assert.Equal((1.25, "kg"), (Us.Mass(1.25).Value, Us.Mass(1.25).Unit));
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Nobody_measures_out_what_is_no_amount(double amount)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Us.Mass(amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => Metric.Volume(amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => Imperial.Water(amount));
    }

    [Fact]
    public void What_is_said_is_within_four_per_cent_of_what_was_meant_whatever_the_units() =>
        Gen.Select(Gen.Double[-3, 4], Gen.Enum<UnitSystem>()).Sample((logarithm, units) =>
        {
            var (amount, words) = (Math.Pow(10, logarithm), new AmountWords(units, Language.English));
            Assert.Equal(1, Read(words.Mass(amount).Text) / amount, 0.04);
            Assert.Equal(1, Read(words.Volume(amount).Text) / amount, 0.04);
            Assert.Equal(1, Read(words.Water(amount).Text) / (1000 * amount), 0.04);
        });

    [Fact]
    public void A_sentence_says_an_amount_in_the_units_of_the_plant()
    {
        Assert.Equal("at most 2 lb 12 oz (1.25 kg)", Plain(Wording.English.In(UnitSystem.Us).Fill("at most {0:mass}", Reason.Of("any", 1.25))));
        Assert.Equal("at most 850 mL", Plain(Wording.English.Fill("at most {0:volume}", Reason.Of("any", 0.85))));
        Assert.Equal("of 118,900 US gal (450 m³) at 86.0 °F (30.0 °C)", Plain(Wording.English.In(UnitSystem.Us).Fill("of {0:water} at {1:temperature}", Reason.Of("any", 450, 30))));
    }

    // Reads an amount back: kg for a mass, L for a volume.
    private static double Read(string text) => Part().Matches(Plain(text)).Sum(part =>
        double.Parse(part.Groups[1].Value, NumberStyles.Number, CultureInfo.InvariantCulture) * part.Groups[2].Value switch
        {
            "kg" or "L" => 1,
            "g" or "mL" => 0.001,
            "m³" => 1000,
            "lb" => 0.45359237,
            "oz" => 0.028349523125,
            "US gal" => 3.785411784,
            "US fl oz" => 0.0295735295625,
            "imp gal" => 4.54609,
            "imp fl oz" => 0.0284130625,
            var other => throw new ArgumentException(other),
        });

    private static string Plain(string text) => text.Replace('\u00a0', ' ');

    [GeneratedRegex(@"([\d.,]+) ((?:US |imp )?(?:fl oz|gal)|kg|g|lb|oz|mL|L|m³)")]
    private static partial Regex Part();
}
