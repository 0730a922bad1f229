using CsCheck;
using PlantWatch.Core.Statistics;

namespace PlantWatch.Core.Tests.Statistics;

public sealed class LineTests
{
    [Fact]
    public void Least_squares_meets_the_certified_norris_values_to_ten_digits()
    {
        var line = LeastSquares.Of(Figures.Points("norris.csv", "x", "y")).Figures;
        Same(Figures.Expected("ST-01")[0], line.Slope);
        Same(Figures.Expected("ST-02")[0], line.Intercept);
        var errors = Figures.Expected("ST-03");
        Same(errors[0], line.SlopeError);
        Same(errors[1], line.InterceptError);
        var rest = Figures.Expected("ST-04");
        Same(rest[0], line.RSquared);
        Same(rest[1], line.ResidualSd);
        Assert.Equal(36, line.Count);

        static void Same(double certified, double ours) => Assert.Equal(certified, ours, Math.Abs(certified) * 1e-10);
    }

    [Fact]
    public void Passing_bablok_meets_the_published_slope_and_intercept_with_their_intervals_to_the_printed_digits()
    {
        var line = PassingBablok.Of(Figures.Points("passing_bablok.csv", "x", "y")).Figures;
        // Printed with four decimals, as point and [interval].
        Printed(Figures.Expected("ST-16"), line.Slope, line.SlopeWithin.Low, line.SlopeWithin.High);
        Printed(Figures.Expected("ST-17"), line.Intercept, line.InterceptWithin.Low, line.InterceptWithin.High);

        static void Printed(double[] expected, params double[] ours) =>
            Assert.Equal(expected, ours.Select(v => Math.Round(v, 4)));
    }

    [Fact]
    public void Deming_meets_its_closed_form_on_two_data_sets()
    {
        var first = Deming.Of(Figures.Points("passing_bablok.csv", "x", "y")).Figures;
        var expected = Figures.Expected("ST-18");
        Assert.Equal(expected[0], first.Intercept, 1e-7);
        Assert.Equal(expected[1], first.Slope, 1e-7);
        var second = Deming.Of(Figures.Points("bland_altman_1986.csv", "wright1", "mini1")).Figures;
        expected = Figures.Expected("ST-19");
        Assert.Equal(expected[0], second.Intercept, 1e-5);
        Assert.Equal(expected[1], second.Slope, 1e-5);
    }

    [Fact]
    public void The_errors_of_deming_are_those_of_leaving_each_point_onein_turn()
    {
        var points = Figures.Points("bland_altman_1986.csv", "wright1", "mini1");
        double[] slopes = [.. Enumerable.Range(0, points.Length).Select(one => Deming.Of([.. points.Where((_, j) => j != one)]).Figures.Slope)];
        var mean = slopes.Average();
        var expected = Math.Sqrt(slopes.Sum(s => (s - mean) * (s - mean)) * (slopes.Length - 1) / slopes.Length);
        Assert.Equal(expected, Deming.Of(points).Figures.SlopeError, 1e-9);
    }

    [Fact]
    public void Exchanging_x_and_y_turns_deming_and_passing_bablok_over_where_least_squares_cannot() =>
        (from slope in Gen.Double[0.3, 3]
         from noise in Gen.Double[-0.2, 0.2].Array[12]
         select (slope, noise)).Sample(made =>
         {
             XyPoint[] points = [.. made.noise.Select((e, i) => new XyPoint(i + e, (made.slope * i) + made.noise[^(i + 1)]))];
             XyPoint[] turned = [.. points.Select(p => new XyPoint(p.Y, p.X))];
             Assert.Equal(1, Deming.Of(points, 2).Figures.Slope * Deming.Of(turned, 0.5).Figures.Slope, 1e-9);
             Assert.InRange(LeastSquares.Of(points).Figures.Slope * LeastSquares.Of(turned).Figures.Slope, 0, 1 + 1e-12);
         });

    [Fact]
    public void One_wild_point_moves_deming_and_leaves_passing_bablok_where_it_was()
    {
        var points = Figures.Points("passing_bablok.csv", "x", "y");
        XyPoint[] spoiled = [.. points[..^1], points[^1] with { Y = 60 }];
        Assert.Equal(PassingBablok.Of(points).Figures.Slope, PassingBablok.Of(spoiled).Figures.Slope, 0.02);
        Assert.True(Deming.Of(spoiled).Figures.Slope > 1.3);
    }

    [Fact]
    public void Too_few_points_no_spread_and_no_common_movement_are_answers_with_a_name()
    {
        XyPoint[] flat = [.. Enumerable.Range(0, 8).Select(i => new XyPoint(7.2, i))];
        XyPoint[] falling = [.. Enumerable.Range(0, 8).Select(i => new XyPoint(i, -i * 0.5))];
        Assert.Equal(Lack.TooFew, LeastSquares.Of([new(1, 2), new(2, 3)]).Lack);
        Assert.Equal(Lack.TooFew, Deming.Of([]).Lack);
        Assert.Equal(Lack.TooFew, PassingBablok.Of([.. falling[..4]]).Lack);
        Assert.Equal(Lack.NoSpread, LeastSquares.Of(flat).Lack);
        Assert.Equal(Lack.NoSpread, PassingBablok.Of(flat).Lack);
        Assert.Equal(Lack.NoTrend, Deming.Of(falling).Lack);
        Assert.Equal(Lack.NoTrend, PassingBablok.Of(falling).Lack);
        Assert.Equal(Lack.NotFinite, LeastSquares.Of([.. falling, new(double.NaN, 1)]).Lack);
        Assert.Equal(Lack.NeverAsked, default(Finding<Deming>).Lack);
        Assert.Throws<InvalidOperationException>(() => Deming.Of(falling).Figures);
    }

    [Fact]
    public void A_slope_that_hangs_on_one_point_is_no_slope()
    {
        XyPoint[] leaning = [.. Enumerable.Repeat(new XyPoint(7.2, 7.3), 9), new XyPoint(7.8, 7.9)];
        Assert.Equal(Lack.NoTrend, Deming.Of(leaning).Lack);
    }

    [Fact]
    public void The_deming_interval_holds_the_true_slope_as_often_as_it_says()
    {
        // 95 % asked; 400 sets of 30 pairs with equal errors, standard error of the share 1.1 %.
        var random = new Random(20260301);
        var held = 0;
        for (var set = 0; set < 400; set++)
        {
            var points = new XyPoint[30];
            for (var i = 0; i < points.Length; i++) points[i] = new(i + Normal(random), (1.1 * i) + Normal(random));
            if (Deming.Of(points).Figures.SlopeWithin(0.95).Contains(1.1)) held++;
        }

        Assert.InRange(held / 400.0, 0.91, 0.985);
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
