using System.Numerics;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Probes;

/// <summary>Numbers beyond all reason come from slips of a finger and broken transmitters: the estimate stays an estimate, and none of them counts as agreement.</summary>
public class AbsurdInputTests
{
    // An account is kept as its weight, its days of drift, its kind, and the numbers that the bits of the kind from here on name.
    private const int FirstOfMask = 12;

    [Theory]
    [InlineData(Measurand.FreeChlorine, 1.5, 100)]
    [InlineData(Measurand.FreeChlorine, 1.5, 200)]
    [InlineData(Measurand.Temperature, 28, 110)]
    public void A_probe_that_nothing_explains_does_not_agree_with_the_test(Measurand measurand, double test, double shows)
    {
        var pool = new TestPool(measurand);
        for (var day = 1; day <= 4; day++) Assert.Equal(Verdict.Agrees, pool.Check(24 * day, test, test).Verdict);
        Assert.NotEqual(Verdict.Agrees, pool.Check(120, test, shows).Verdict);
        Assert.NotEqual(Verdict.Agrees, pool.Check(121, test, shows).Verdict);
    }

    [Fact]
    public void A_ph_typed_wrong_by_seven_leaves_the_line_of_an_orp_probe_a_line()
    {
        var pool = new TestPool(Measurand.Orp);
        for (var i = 0; i < 12; i++) pool.CheckOrp(8 * i, 1.4 + (0.05 * (i % 5)), 7.3, 720 + (i % 3));
        var slip = pool.CheckOf(100, new(Measurand.FreeChlorine, 1.5, TestMethod.Photometer), new(Measurand.Ph, 14, TestMethod.Meter), new(Measurand.Temperature, 28, TestMethod.Meter));
        Assert.Equal(Verdict.CheckSuspect, pool.Judge(pool.InputOf(slip, 721)).Verdict);
        IsSound(pool.Trust);
        Assert.Equal(Verdict.Agrees, pool.CheckOrp(108, 1.5, 7.3, 721).Verdict);
    }

    [Theory]
    [InlineData(Measurand.Ph)]
    [InlineData(Measurand.Orp)]
    [InlineData(Measurand.FreeChlorine)]
    [InlineData(Measurand.Temperature)]
    public void Whatever_comes_in_the_probabilities_add_up_and_every_number_is_one(Measurand measurand)
    {
        var random = new Random(4);
        for (var pool = 0; pool < 25; pool++) Live(new TestPool(measurand), random);
    }

    private static void Live(TestPool pool, Random random)
    {
        var hour = 0.0;
        for (var i = 0; i < 40; i++)
        {
            hour += random.Next(6) switch { 0 => 0, 1 => -100 * random.NextDouble(), 2 => 1000 * random.NextDouble(), _ => 12 * random.NextDouble() };
            if (random.Next(10) == 0) pool.Leap(hour, Within(random, -2000, 2000));
            else if (random.Next(10) == 0) pool.Calibrate(hour - (1e6 * random.Next(2)), 0.51 + (1.4 * random.NextDouble()), Within(random, -14, 14));
            else pool.Judge(pool.InputOf(Check(pool, hour, random), Within(random, pool.Probe.Range.Low, pool.Probe.Range.High)));
            IsSound(pool.Trust);
            Assert.True(!pool.Trust.Bias.IsKnown || Reconciliation.BiasAt(pool.Probe, pool.Trust, Instant.FromUtc(9999, 12, 31, 0)).IsKnown);
        }
    }

    private static ManualCheck Check(TestPool pool, double hour, Random random) => pool.CheckOf(hour,
        pool.Probe.Measurand == Measurand.Orp
            ? [Result(Measurand.FreeChlorine, random), Result(Measurand.Ph, random), new(Measurand.Temperature, 28, TestMethod.Meter)]
            : [Result(pool.Probe.Measurand, random)]);

    private static TestResult Result(Measurand measurand, Random random) =>
        new(measurand, Within(random, measurand.Possible().Low, measurand == Measurand.FreeChlorine ? 5 : measurand.Possible().High), (TestMethod)random.Next(5));

    private static double Within(Random random, double low, double high) => random.Next(6) switch { 0 => low, 1 => high, 2 => (low + high) / 2, _ => low + ((high - low) * random.NextDouble()) };

    private static void IsSound(ProbeTrust trust)
    {
        if (trust.Head is not { } head) return;
        Assert.All(head.Accounts, number => Assert.True(double.IsFinite(number)));
        var weights = 0.0;
        for (var i = 0; i < head.Accounts.Length; i += 3 + BitOperations.PopCount((ulong)head.Accounts[i + 2] >> FirstOfMask)) weights += head.Accounts[i];
        Assert.Equal(1, weights, 1e-9);
    }
}
