using CsCheck;
using PlantWatch.Core.Statistics;

namespace PlantWatch.Core.Tests.Statistics;

public sealed class StudentTTests
{
    // One degree of freedom is the Cauchy distribution, two have a closed form: both give t exactly.
    [Fact]
    public void One_and_two_degrees_of_freedom_meet_their_closed_forms() => Gen.Double[0.51, 0.9999].Sample(share =>
    {
        Assert.Equal(1, StudentT.Quantile(share, 1) / Math.Tan(Math.PI * (share - 0.5)), 1e-11);
        var a = 4 * share * (1 - share);
        Assert.Equal(1, StudentT.Quantile(share, 2) / (2 * (share - 0.5) * Math.Sqrt(2 / a)), 1e-11);
    });

    // NIST/SEMATECH e-Handbook 1.3.6.7.2, printed with three decimals.
    [Theory]
    [InlineData(1, 12.706)]
    [InlineData(2, 4.303)]
    [InlineData(5, 2.571)]
    [InlineData(10, 2.228)]
    [InlineData(16, 2.120)]
    [InlineData(30, 2.042)]
    [InlineData(100, 1.984)]
    public void The_table_of_the_handbook_is_met_to_its_printed_digits(int degreesOfFreedom, double printed) =>
        Assert.Equal(printed, Math.Round(StudentT.TwoSided(0.95, degreesOfFreedom), 3));

    [Fact]
    public void Many_degrees_of_freedom_are_the_normal_distribution() => Assert.Equal(1.959964, StudentT.TwoSided(0.95, 1e7), 1e-5);

    [Fact]
    public void Quantile_and_distribution_undo_each_other_and_the_tails_mirror() =>
        (from share in Gen.Double[0.001, 0.999] from df in Gen.Double[0.5, 500] select (share, df)).Sample(asked =>
        {
            var t = StudentT.Quantile(asked.share, asked.df);
            Assert.Equal(asked.share, StudentT.Below(t, asked.df), 1e-10);
            Assert.Equal(t, -StudentT.Quantile(1 - asked.share, asked.df), 1e-8 * Math.Max(1, Math.Abs(t)));
        });

    [Theory]
    [InlineData(0, 5)]
    [InlineData(1, 5)]
    [InlineData(double.NaN, 5)]
    [InlineData(0.9, 0)]
    [InlineData(0.9, double.NaN)]
    public void What_no_distribution_has_is_refused_at_the_door(double share, double degreesOfFreedom) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Quantile(share, degreesOfFreedom));
}
