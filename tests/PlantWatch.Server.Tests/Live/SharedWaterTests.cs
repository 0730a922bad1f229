using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Live;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Live;

/// <summary>What a circuit shares concerns every pool of it, and what a probe said long ago is not live.</summary>
public sealed class SharedWaterTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 1, 9, 0);

    [Fact]
    public void A_stop_on_the_probe_in_the_mixed_return_stops_every_pool_and_only_its_own_pool_otherwise()
    {
        var shared = Pools(Fed("return-ph", 8.9));
        Assert.All(shared, pool => Assert.Equal(PoolWord.Stop, pool.State));
        Assert.All(shared, pool => Assert.NotEmpty(pool.Why));
        Assert.Equal([PoolWord.Stop, PoolWord.Normal], Pools(Fed("lane-ph", 8.9)).Select(p => p.State));
    }

    [Fact]
    public void A_silent_probe_gives_no_live_balance()
    {
        var fed = Fed("lane-ph", 7.4);
        Assert.Contains(Pools(fed)[0].Balance.Inputs, i => i is { Measurand: Measurand.Ph, Live: true });
        // Minute after minute: silence counts while the server listens, not while it was away.
        var later = Step.Run(fed, [.. Enumerable.Range(3, 178).Select(m => new ClockTicked(Start + TimeSpan.FromMinutes(m)))]).Next;
        Assert.DoesNotContain(Pools(later)[0].Balance.Inputs, i => i.Live);
    }

    [Fact]
    public void A_corrected_value_that_no_water_can_have_is_no_input()
    {
        var fed = Fed("lane-ph", 13.5);
        var offset = new Calibration { Id = Guid.CreateVersion7(), ProbeId = "lane-ph", Offset = 2, ProposedBy = "I. Brandvold" };
        var corrected = Step.Run(fed, [
            new CalibrationProposed(Start + TimeSpan.FromMinutes(3), offset),
            new CalibrationDecided(Start + TimeSpan.FromMinutes(4), offset.Id, CalibrationStatus.Approved, Start, "R. Castellan", "a wrong offset, typed on purpose")]).Next;
        Assert.Equal(15.5, corrected.Probes[1].Last.Value);
        // The probe in the return still stands for the pool.
        Assert.Equal(7.4, Assert.Single(Pools(corrected)[0].Balance.Inputs, i => i.Live).Value);
    }

    [Fact]
    public void A_pool_s_own_probe_speaks_before_the_one_in_the_mixed_return()
    {
        var pools = Pools(Fed("lane-ph", 7.2));
        Assert.Equal([7.2, 7.4], pools.Select(p => p.Balance.Inputs.Single(i => i.Live).Value));
        Assert.Equal(["lane-ph", "toddler-ph"], pools.Select(p => p.Balance.Inputs.Single(i => i.Live).ProbeId));
    }

    private static IReadOnlyList<PoolView> Pools(CircuitState state) =>
        CircuitViews.Of(state, 1, state.Watermark, new LedgerView(0, 0, 0, 0, 0, 0, 0, 0, 0), Wording.English).Pools;

    private static CircuitState Fed(string probe, double value)
    {
        var plan = new CircuitPlan
        {
            Id = "hall", Name = "Hall", TimeZone = "UTC",
            Pools = [Pool("lane"), Pool("toddler")],
            Probes = [Probe("return-ph", null), Probe("lane-ph", "lane"), Probe("toddler-ph", "toddler")],
        };
        List<PlantEvent> events = [new PlanLoaded(Start, plan)];
        for (var second = 1; second <= 60; second++)
            foreach (var p in plan.Probes)
            {
                var text = (p.Id == probe ? value : 7.4).ToString(System.Globalization.CultureInfo.InvariantCulture);
                events.Add(new MessageArrived(Start + TimeSpan.FromSeconds(second) + TimeSpan.FromMilliseconds(events.Count), p.Topic, System.Text.Encoding.UTF8.GetBytes(text), false, null));
            }

        events.Add(new ClockTicked(Start + TimeSpan.FromSeconds(62)));
        return Step.Run(CircuitState.Of(plan with { Pools = [], Probes = [] }), events).Next;
    }

    private static PoolPlan Pool(string id) => new() { Id = id, Name = id, Disinfectant = Disinfectant.Chlorine, VolumeCubicMetres = 100, Limits = [new LimitPlan(Measurand.Orp, 650, 800, "test")] };

    private static ProbePlan Probe(string id, string? pool) => new()
    {
        Id = id, Name = id, PoolId = pool, Measurand = Measurand.Ph, Topic = $"hall/{id}", Range = new ValueRange(0, 14), Every = TimeSpan.FromSeconds(1),
    };
}
