using CsCheck;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Plant;

public sealed class PlanChangeProperties
{
    private static readonly Gen<CircuitPlan> Plans = Gen.Select(Gen.Int[0, 4], Gen.Int[0, 6], Gen.Int[0, 4], Gen.Int[0, 1000], (pools, probes, pumps, seed) => new CircuitPlan
    {
        Id = "circuit",
        Name = "Circuit",
        TimeZone = "UTC",
        Pools = [.. Enumerable.Range(0, pools).Select(i => PlanChangeExample.Pool($"pool-{i}"))],
        Probes = [.. Enumerable.Range(0, probes).Select(i => PlanChangeExample.Probe($"probe-{i}", (Measurand)(1 + ((i + seed) % 4)), pools == 0 ? null : $"pool-{(i + seed) % pools}"))],
        Pumps = [.. Enumerable.Range(0, pumps).Select(i => PlanChangeExample.Pump($"pump-{i}", "hypo") with { PoolId = null })],
    });

    [Fact]
    public void Carrying_to_the_same_plan_changes_nothing() => Plans.Select(PlanChangeExample.Known).Sample(state =>
        PlantJson.HashOf(PlanChange.Carry(state, state.Plan)) == PlantJson.HashOf(state) && PlanChange.Between(state.Plan, state.Plan).Effects.IsEmpty);

    [Fact]
    public void Any_rename_keeps_every_state_and_renaming_back_restores_the_hash() => Plans.Select(PlanChangeExample.Known).Sample(state =>
    {
        var renamed = Renamed(state.Plan, id => "new-" + id);
        var carried = PlanChange.Carry(state, renamed);
        var back = PlanChange.Carry(carried, Renamed(renamed, id => id["new-".Length..]));

        return carried.Probes.Length == state.Probes.Length
            && carried.Probes.Zip(state.Probes).All(pair => pair.First == pair.Second with { Id = "new-" + pair.Second.Id })
            && carried.Alarms.Count == state.Alarms.Count && carried.Jobs.Count == state.Jobs.Count && carried.Calibrations.Length == state.Calibrations.Length
            && PlantJson.HashOf(back with { Plan = state.Plan }) == PlantJson.HashOf(state);
    });

    [Fact]
    public void The_order_in_the_file_only_reorders_the_states() => Plans.Select(PlanChangeExample.Known).Sample(state =>
    {
        var turned = state.Plan with { Pools = [.. state.Plan.Pools.Reverse()], Probes = [.. state.Plan.Probes.Reverse()], Pumps = [.. state.Plan.Pumps.Reverse()] };
        var carried = PlanChange.Carry(state, turned);

        return carried.Probes.Reverse().SequenceEqual(state.Probes) && carried.Pumps.Reverse().SequenceEqual(state.Pumps)
            && carried.Pools.Reverse().SequenceEqual(state.Pools) && PlanChange.Between(state.Plan, turned).Effects.IsEmpty
            && PlantJson.HashOf(PlanChange.Carry(carried, state.Plan)) == PlantJson.HashOf(state);
    });

    [Fact]
    public void A_carried_state_always_follows_the_order_of_its_plan() => Gen.Select(Plans, Plans).Sample((old, next) =>
    {
        var carried = PlanChange.Carry(PlanChangeExample.Known(old), next);
        return carried.Probes.Select(p => p.Id).SequenceEqual(next.Probes.Select(p => p.Id))
            && carried.Pumps.Select(p => p.Id).SequenceEqual(next.Pumps.Select(p => p.Id))
            && carried.Pools.Select(p => p.Id).SequenceEqual(next.Pools.Select(p => p.Id))
            && carried.Calibrations.All(c => next.Probes.Any(p => p.Id == c.ProbeId));
    });

    private static CircuitPlan Renamed(CircuitPlan plan, Func<string, string> name) => plan with
    {
        Pools = [.. plan.Pools.Select(pool => pool with { Id = name(pool.Id), Was = pool.Id })],
        Probes = [.. plan.Probes.Select(probe => probe with { Id = name(probe.Id), Was = probe.Id, PoolId = probe.PoolId is null ? null : name(probe.PoolId) })],
        Pumps = [.. plan.Pumps.Select(pump => pump with { Id = name(pump.Id), Was = pump.Id })],
    };
}
