using System.Text.RegularExpressions;
using System.Xml.Linq;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Charts;
using SkiaSharp;

namespace PlantWatch.Server.Tests.Charts;

public sealed partial class PairChartTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 1, 8);

    [Theory]
    [InlineData(390, false)]
    [InlineData(390, true)]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    public void Both_pictures_have_the_width_asked_for_and_a_height_to_read_them_by(int width, bool dark)
    {
        var input = Tests(40) with { Width = width, Theme = dark ? ChartTheme.Dark : ChartTheme.Light };
        foreach (var chart in (PairChart[])[PairChart.Agreement(input), PairChart.Regression(input)])
        {
            using var picture = SKBitmap.Decode(chart.Png());
            Assert.Equal(width, picture.Width);
            Assert.InRange(picture.Height, 300, 800);
        }
    }

    [Fact]
    public void The_agreement_picture_says_bias_and_limits_in_figures()
    {
        // Differences of +0.10 and -0.02 in turn: mean +0.04, standard deviation 0.0616 over 20 pairs, limits -0.08 and +0.16.
        var texts = Texts(PairChart.Agreement(Tests(20)).Svg());
        Assert.Contains(texts, t => t.StartsWith("mean difference +0.04 (+0.01 to +0.07)", StringComparison.Ordinal));
        Assert.Contains("95 % of differences: \u22120.08 to +0.16", texts);
        Assert.Contains("probe less test", texts);
        Assert.Contains("mean of probe and test", texts);
    }

    [Fact]
    public void The_regression_picture_names_both_lines_and_that_of_equality()
    {
        // The tests move by a quarter more than the probe: both lines must find the same slope of 1.25.
        var input = Tests(0) with { Pairs = [.. Tests(40).Pairs.Select(p => p with { Probe = new(7.2 + ((p.Test.Value - 7.2) / 1.25), 0.01) })] };
        var texts = Texts(PairChart.Regression(input).Svg());
        Assert.Contains("line by both errors, slope 1.25 (1.25 to 1.25)", texts);
        Assert.Contains("line by medians, slope 1.25 (1.25 to 1.25)", texts);
        Assert.Contains("probe and test equal", texts);
    }

    [Fact]
    public void A_doubted_test_is_shown_and_moves_no_figure()
    {
        var sound = Tests(20);
        var spoiled = sound with { Pairs = [.. sound.Pairs, new(Start, new(7.4, 0.01), new(6.2, 0.08), true)] };
        var (without, with) = (Texts(PairChart.Agreement(sound).Svg()), Texts(PairChart.Agreement(spoiled).Svg()));
        Assert.Equal(without.Single(t => t.StartsWith("mean difference", StringComparison.Ordinal)), with.Single(t => t.StartsWith("mean difference", StringComparison.Ordinal)));
        Assert.Contains("doubted test", with);
        Assert.DoesNotContain("doubted test", without);
        Assert.Contains(with, t => t.StartsWith("Tests compared: 21. Doubted, in no figure: 1", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0, "nothing to compare yet", "nothing to compare yet")]
    [InlineData(1, "limits need three tests that can be compared", "a line needs three tests that can be compared")]
    [InlineData(2, "limits need three tests that can be compared", "a line needs three tests that can be compared")]
    public void What_cannot_be_said_yet_is_said(int pairs, string ofAgreement, string ofRegression)
    {
        Assert.Contains(ofAgreement, Texts(PairChart.Agreement(Tests(pairs)).Svg()));
        Assert.Contains(ofRegression, Texts(PairChart.Regression(Tests(pairs)).Svg()));
    }

    [Fact]
    public void Tests_that_all_say_the_same_have_no_line_and_differences_that_all_are_the_same_no_limits()
    {
        var alike = Tests(0) with { Pairs = [.. Enumerable.Range(0, 6).Select(i => new ComparedPair(Start + TimeSpan.FromDays(i), new(7.3, 0.01), new(7.2, 0.06), false))] };
        Assert.Contains("the differences do not differ: no limits", Texts(PairChart.Agreement(alike).Svg()));
        Assert.Contains("the tests lie too close together for a line", Texts(PairChart.Regression(alike).Svg()));
    }

    [Fact]
    public void The_unit_stands_beside_the_axes_where_there_is_one()
    {
        var texts = Texts(PairChart.Agreement(Tests(5) with { Measurand = Measurand.FreeChlorine }).Svg());
        Assert.Contains("probe less test, mg/L", texts);
    }

    // Probe and test in turn 0.10 and -0.02 apart, over half a unit of pH.
    private static PairChartInput Tests(int count) => new()
    {
        Title = "pH, large pool", Measurand = Measurand.Ph, TimeZone = "Europe/London",
        Pairs = [.. Enumerable.Range(0, count).Select(i => Pair(i))],
    };

    private static ComparedPair Pair(int i)
    {
        var test = 7.2 + (0.5 * (i * 7 % 20) / 20.0);
        return new(Start + TimeSpan.FromDays(i), new(test + (i % 2 == 0 ? 0.10 : -0.02), 0.01), new(test, 0.06), false);
    }

    private static List<string> Texts(string svg) =>
        [.. XDocument.Parse(svg).Descendants().Where(e => e.Name.LocalName == "text").Select(e => Spaces().Replace(e.Value, " ").Trim())];

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
