using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Plant;

public sealed class PlanChangePlantTests
{
    private static readonly CircuitPlan Main = PlanChangeExample.Plan;

    private static readonly CircuitPlan Spa = new()
    {
        Id = "spa-circuit",
        Name = "Spa circuit",
        TimeZone = "Europe/London",
        Pools = [PlanChangeExample.Pool("spa")],
        Probes = [PlanChangeExample.Probe("spa-ph", Measurand.Ph, "spa")],
    };

    [Fact]
    public void Two_circuits_that_become_one_are_joined()
    {
        var joined = Main with { Pools = [.. Main.Pools, .. Spa.Pools], Probes = [.. Main.Probes, .. Spa.Probes] };

        Assert.Equal(
        [
            Reason.Of("plan.circuits_joined", "main", "main", "spa-circuit"),
            Reason.Of("plan.pool_moved", "spa", "spa-circuit", "main"),
            Reason.Of("plan.probe_moved", "spa-ph", "spa-circuit", "main"),
            Reason.Of("plan.circuit_removed", "spa-circuit", "Spa circuit"),
        ], PlanChange.Between(Plant(Main, Spa), Plant(joined)).AsEnumerable());
    }

    [Fact]
    public void One_circuit_that_becomes_two_is_split()
    {
        var rest = Main with { Pools = [Main.Pools[0]] };
        var own = Spa with { Id = "learner-circuit", Name = "Learner circuit", Pools = [Main.Pools[1]], Probes = [] };

        Assert.Equal(
        [
            Reason.Of("plan.circuit_split", "main", "main", "learner-circuit"),
            Reason.Of("plan.pool_moved", "learner", "main", "learner-circuit"),
            Reason.Of("plan.circuit_added", "learner-circuit", "Learner circuit"),
        ], PlanChange.Between(Plant(Main), Plant(rest, own)).AsEnumerable());
    }

    [Fact]
    public void A_circuit_that_is_renamed_moves_nothing() => Assert.Equal(
        [Reason.Of("plan.circuit_renamed", "spa-circuit", "spa-water")],
        PlanChange.Between(Plant(Main, Spa), Plant(Main, Spa with { Id = "spa-water", Was = "spa-circuit" })).AsEnumerable());

    [Fact]
    public void Products_that_come_change_and_go_are_named()
    {
        var old = Plant(Main) with { Products = [new("hypo", "Hypochlorite", ProductKind.SodiumHypochlorite, 12), new("acid", "Acid", ProductKind.HydrochloricAcid, 10)] };
        var next = old with { Products = [new("hypo", "Hypochlorite", ProductKind.SodiumHypochlorite, 10), new("co2", "Carbon dioxide", ProductKind.CarbonDioxide, null)] };

        Assert.Equal(
        [
            Reason.Of("plan.product_changed", "hypo", "Hypochlorite"),
            Reason.Of("plan.product_added", "co2", "Carbon dioxide"),
            Reason.Of("plan.product_removed", "acid", "Acid"),
        ], PlanChange.Between(old, next).AsEnumerable());
    }

    private static PlantPlan Plant(params CircuitPlan[] circuits) => new(new("Hall", "Europe/London"), [], [.. circuits]);
}
