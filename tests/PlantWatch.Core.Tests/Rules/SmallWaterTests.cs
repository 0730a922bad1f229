using PlantWatch.Core.Plans;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Limits on little water: what a dose moves faster is told sooner.</summary>
public sealed class SmallWaterTests
{
    [Theory]
    [InlineData(420, 120)]
    [InlineData(60, 120)]
    [InlineData(45, 90)]
    [InlineData(30, 60)]
    [InlineData(5, 30)]
    [InlineData(0, 120)]
    [InlineData(double.NaN, 120)]
    public void A_delay_shrinks_with_the_volume_and_not_to_nothing(double cubicMetres, double seconds) =>
        Assert.Equal(seconds, SmallWater.Delay(TimeSpan.FromSeconds(120), cubicMetres).TotalSeconds);

    [Fact]
    public void What_is_short_already_stays() => Assert.Equal(20, SmallWater.Delay(TimeSpan.FromSeconds(20), 5).TotalSeconds);

    [Theory, Evidence("R-011")]
    [InlineData(420.0, false)]
    [InlineData(5.0, true)]
    public void In_a_spa_a_limit_is_told_within_the_minute_and_in_a_pool_after_two(double cubicMetres, bool isUp)
    {
        var bench = new Bench(With(cubicMetres));
        bench.Hold(TimeSpan.FromSeconds(50), (Hall.Ph, 7.8));
        Assert.Equal(isUp, bench.IsUp(RuleBook.AboveLimit, "main-ph"));
        bench.Hold(TimeSpan.FromSeconds(90), (Hall.Ph, 7.8));
        Assert.True(bench.IsUp(RuleBook.AboveLimit, "main-ph"));
    }

    [Fact, Evidence("R-011")]
    public void What_the_plant_has_set_itself_is_not_shortened()
    {
        var plan = With(5);
        var main = plan.Pools[0];
        var bench = new Bench(plan with { Pools = [main with { Limits = [.. main.Limits.Select(l => l with { OnDelay = TimeSpan.FromSeconds(100) })] }, .. plan.Pools.Skip(1)] });
        bench.Hold(TimeSpan.FromSeconds(80), (Hall.Ph, 7.8));
        Assert.False(bench.IsUp(RuleBook.AboveLimit, "main-ph"));
    }

    private static CircuitPlan With(double cubicMetres) => Hall.Plan with { Pools = [Hall.Plan.Pools[0] with { VolumeCubicMetres = cubicMetres }, .. Hall.Plan.Pools.Skip(1)] };
}
