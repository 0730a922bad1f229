using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Live;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Live;

/// <summary>A test that stands alone against its probe is in doubt on every page, not on that of the probe alone.</summary>
public sealed class DoubtedTestViewTests
{
    private static readonly Instant Sampled = Instant.FromUtc(2026, 3, 1, 9, 0);

    [Fact]
    public void It_is_marked_among_the_last_tests_and_the_pool_says_that_it_is_to_be_repeated()
    {
        var pool = Seen([new(Measurand.Ph, Sampled, Sampled + TimeSpan.FromHours(1))]);
        Assert.True(Assert.Single(pool.Manual).Suspect);
        Assert.Equal("Lane: the test of pH is in doubt and is to be repeated", Assert.Single(pool.Why).Text);
        Assert.NotEqual(PoolWord.Normal, pool.State);
    }

    [Fact]
    public void Settled_by_a_later_sample_it_is_not()
    {
        var pool = Seen([]);
        Assert.False(Assert.Single(pool.Manual).Suspect);
        Assert.Empty(pool.Why);
    }

    private static PoolView Seen(ImmutableArray<TestDoubt> doubts)
    {
        var plan = new CircuitPlan { Id = "hall", Name = "Hall", TimeZone = "UTC", Pools = [new() { Id = "lane", Name = "Lane", Disinfectant = Disinfectant.Chlorine, VolumeCubicMetres = 100 }] };
        var state = Step.Run(CircuitState.Of(plan with { Pools = [] }), [new PlanLoaded(Sampled, plan)]).Next;
        var tested = new ManualValue(new(Measurand.Ph, 7.9, TestMethod.Photometer), Sampled, false, TimeOrderedId.Derive(Sampled, "check"));
        var known = state.Pools[0] with { Doubts = doubts, Manual = state.Pools[0].Manual.SetItem(Measurand.Ph, tested) };
        return PoolViews.Of(state with { Pools = [known] }, plan.Pools[0], known, [], Sampled + TimeSpan.FromMinutes(5), Wording.English);
    }
}
