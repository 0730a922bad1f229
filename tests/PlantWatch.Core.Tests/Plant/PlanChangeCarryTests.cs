using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Plant;

public sealed class PlanChangeCarryTests
{
    private static readonly CircuitPlan Plan = PlanChangeExample.Plan;
    private static readonly CircuitState State = PlanChangeExample.State;

    [Fact]
    public void A_circuit_that_was_never_loaded_gets_a_place_for_everything_in_its_plan()
    {
        var carried = PlanChange.Carry(CircuitState.Of(Plan), Plan);

        Assert.Equal(["ph", "orp", "flow"], carried.Probes.Select(p => p.Id));
        Assert.Equal(["hypo-pump", "acid-pump"], carried.Pumps.Select(p => p.Id));
        Assert.Equal(["pool", "learner"], carried.Pools.Select(p => p.Id));
        Assert.All(carried.Probes, p => Assert.Equal(Quality.NotReceived, p.Last.Quality));
    }

    [Fact]
    public void What_is_removed_leaves_with_its_alarms_notes_and_calibrations()
    {
        var next = Plan with { Probes = [.. Plan.Probes.Where(p => p.Id != "orp")], Pumps = [Plan.Pumps[1]], Pools = [Plan.Pools[0]] };

        var carried = PlanChange.Carry(State, next);

        Assert.Equal(["ph", "flow"], carried.Probes.Select(p => p.Id));
        Assert.Equal(State.Probes[2], carried.Probes[1]);
        Assert.Equal(["R-001/main", "R-010/flow", "R-010/ph", "R-020/pool"], carried.Alarms.Keys);
        Assert.Equal(["acid-pump"], carried.Jobs.Values.Select(job => job.Job.Asset));
        Assert.Equal(["ph", "flow"], carried.Calibrations.Select(c => c.ProbeId));
    }

    [Fact]
    public void A_renamed_probe_keeps_all_that_is_known_of_it_under_its_new_id()
    {
        var carried = PlanChange.Carry(State, Plan.WithProbe("ph", p => p with { Id = "ph-1", Was = "ph" }));

        Assert.Equal(State.Probes[0] with { Id = "ph-1" }, carried.Probes[0]);
        Assert.Equal("ph-1", carried.Alarms["R-010/ph-1"].Subject);
        Assert.Equal(State.Alarms["R-010/ph"].Id, carried.Alarms["R-010/ph-1"].Id);
        Assert.Equal("ph-1", carried.Calibrations[0].ProbeId);
    }

    [Fact]
    public void Other_numbers_forget_value_trust_and_calibration_but_not_the_times()
    {
        var carried = PlanChange.Carry(State, Plan.WithProbe("ph", p => p with { Origin = SignalOrigin.PanelScaled }));

        Assert.Equal(ProbeTrust.New, carried.Probes[0].Trust);
        Assert.Equal(SignalHealth.New, carried.Probes[0].Signal);
        Assert.Equal(new LastReading(PlanChangeExample.Noon, PlanChangeExample.Noon, 0, 0, Quality.NotReceived), carried.Probes[0].Last);
        Assert.Equal(["orp", "flow"], carried.Calibrations.Select(c => c.ProbeId));
        Assert.Contains("R-010/ph", carried.Alarms.Keys);
    }

    [Fact]
    public void Another_measurand_ends_the_alarms_too() =>
        Assert.DoesNotContain("R-010/ph", PlanChange.Carry(State, Plan.WithProbe("ph", p => p with { Measurand = Measurand.Temperature })).Alarms.Keys);

    [Fact]
    public void Other_water_forgets_trust_and_keeps_the_calibration()
    {
        var carried = PlanChange.Carry(State, Plan.WithProbe("ph", p => p with { PoolId = "learner" }));

        Assert.Equal(State.Probes[0] with { Trust = ProbeTrust.New }, carried.Probes[0]);
        Assert.Equal(3, carried.Calibrations.Length);
    }

    [Fact]
    public void A_duty_at_other_times_is_still_the_one_last_done_and_a_new_one_never_was()
    {
        var duties = Plan.Pools[1].Duties;
        var next = Plan.WithPool("learner", p => p with { Duties = [new([Measurand.CyanuricAcid], [new(9, 0)]), new([Measurand.TotalAlkalinity], [new(20, 0)]), duties[0]] });

        var done = State.Pools[1].DutyDoneAt;
        Assert.Equal([Instant.Never, done[1], done[0]], PlanChange.Carry(State, next).Pools[1].DutyDoneAt.AsEnumerable());
    }

    [Fact]
    public void Sums_watermark_and_packets_stay_whatever_the_plan()
    {
        var carried = PlanChange.Carry(State, new CircuitPlan { Id = "main", Name = "Bare", TimeZone = "UTC" });

        Assert.Equal((State.Ledger, State.Watermark, State.Packets), (carried.Ledger, carried.Watermark, carried.Packets));
        Assert.Empty(carried.Probes);
        Assert.Equal(["R-001/main"], carried.Alarms.Keys);
    }
}
