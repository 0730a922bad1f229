using PlantWatch.Core.Statistics;

namespace PlantWatch.Core.Tests.Statistics;

public sealed class AgreementTests
{
    private static double[] Differences => [.. Figures.Points("bland_altman_1986.csv", "wright1", "mini1").Select(p => p.X - p.Y)];

    [Fact]
    public void Bias_and_limits_of_1986_are_met_to_the_printed_digits()
    {
        var found = Agreement.Of(Differences, width: 2).Figures;
        var printed = Figures.Expected("ST-05");
        Assert.Equal(printed[0], Math.Round(found.Bias, 1));
        Assert.Equal(printed[1], Math.Round(found.Sd, 1));
        // The paper works its limits out from the rounded figures: -2.1 -+ 2 x 38.8.
        var limits = Figures.Expected("ST-06");
        Assert.Equal(limits[0], found.Low, 0.1);
        Assert.Equal(limits[1], found.High, 0.1);
        Assert.Equal(17, found.Count);
    }

    [Fact]
    public void The_usual_limits_take_1_96_standard_deviations()
    {
        var found = Agreement.Of(Differences).Figures;
        var limits = Figures.Expected("ST-07");
        Assert.Equal(limits[0], found.Low, 0.001);
        Assert.Equal(limits[1], found.High, 0.001);
    }

    [Fact]
    public void Standard_errors_and_intervals_of_1986_are_met()
    {
        var found = Agreement.Of(Differences, width: 2).Figures;
        Assert.Equal(9.4, Math.Round(found.BiasError, 1));
        // From memory: the paper prints 16.3 for the standard error of a limit.
        Assert.Equal(16.3, Math.Round(found.LimitError, 1));
        var within = Figures.Expected("ST-08");
        Assert.Equal(within[0], found.BiasWithin(0.95).Low, 0.1);
        Assert.Equal(within[1], found.BiasWithin(0.95).High, 0.1);
        Assert.Equal(found.LowWithin(0.95).High - found.LowWithin(0.95).Low, found.HighWithin(0.95).High - found.HighWithin(0.95).Low, 1e-9);
        Assert.Equal(found.Low, (found.LowWithin(0.95).Low + found.LowWithin(0.95).High) / 2, 1e-9);
    }

    [Fact]
    public void Too_few_pairs_and_differences_that_do_not_differ_are_answers_with_a_name()
    {
        Assert.Equal(Lack.TooFew, Agreement.Of([0.1, 0.2]).Lack);
        Assert.Equal(Lack.NoSpread, Agreement.Of([0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1]).Lack);
        Assert.Equal(Lack.NotFinite, Agreement.Of([0.1, double.PositiveInfinity, 0.2]).Lack);
    }
}
