using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Answering;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes.Answering;

/// <summary>Where the bias of a probe is heading.</summary>
public sealed class BiasAheadTests
{
    [Fact]
    public void Nothing_is_drawn_on_from_nothing()
    {
        var ahead = BiasAhead.Of(new TestPool(Measurand.Ph).Probe, ProbeTrust.New, default, TestPool.Start);
        Assert.Empty(ahead.Points);
        Assert.Equal("forecast.too_little_known", ahead.Outlook.Why.Code);
    }

    [Fact]
    public void What_is_drawn_begins_where_the_estimate_stands_and_is_less_sure_the_farther_it_goes()
    {
        var (pool, now) = (Checked(), TestPool.After(80));
        var ahead = BiasAhead.Of(pool.Probe, pool.Trust, default, now);
        Assert.Equal((now, Reconciliation.BiasAt(pool.Probe, pool.Trust, now)), ahead.Points[0]);
        Assert.True((ahead.Points[^1].At - now).TotalDays >= BiasAhead.DaysShown);
        Assert.All(ahead.Points.Zip(ahead.Points.Skip(1)), pair => Assert.True(pair.Second.Bias.StandardUncertainty >= pair.First.Bias.StandardUncertainty));
    }

    [Fact]
    public void The_earliest_day_is_the_one_on_which_the_drawn_interval_touches_the_limit()
    {
        var (pool, now) = (Checked(), TestPool.After(80));
        var ahead = BiasAhead.Of(pool.Probe, pool.Trust, default, now);
        var earliest = Assert.NotNull(ahead.Outlook.Earliest);
        var then = Reconciliation.BiasAt(pool.Probe, pool.Trust, earliest);
        Assert.Equal(TrustLimits.Of(Measurand.Ph)!.MaintenanceAt, Math.Abs(then.Value) + then.Expanded, 0.01);
    }

    private static TestPool Checked()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 10; i++) pool.Check(i * 8, test: 7.40 + (i % 3 * 0.02), probe: 7.42);
        return pool;
    }
}
