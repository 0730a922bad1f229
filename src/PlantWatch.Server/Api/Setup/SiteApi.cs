using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>What the plant is, what it looks like now, and how the sums close.</summary>
internal static class SiteApi
{
    public static void MapSite(this RouteGroupBuilder api)
    {
        api.MapGet("/site", (PlantHost host) => Answers.Ok(Site(host.Plan))).Produces<SiteView>();
        api.MapGet("/circuits/{id}", (string id, PlantHost host, LivePublisher live) =>
            host.Find(id) is { } worker ? Answers.Ok(live.View(worker, Reader.Words)) : Answers.NotFound($"circuit {id}")).Produces<CircuitView>();
        api.MapGet("/health-view", (LivePublisher live) => Answers.Ok(live.Health(Reader.Words))).Produces<HealthView>();
    }

    private static SiteView Site(PlantPlan? plan) => plan is null
        ? new SiteView("", "UTC", UnitSystem.Metric, [], [])
        : new SiteView(plan.Site.Name, plan.Site.TimeZone, plan.Site.Units, [.. plan.Circuits.Select(c => Circuit(c, plan))], plan.Products);

    private static CircuitInfo Circuit(CircuitPlan circuit, PlantPlan plan) => new(
        circuit.Id, circuit.Name, circuit.BalanceTankCubicMetres, circuit.TurnoverHours,
        [.. circuit.Pools.Select(p => new PoolInfo(p.Id, p.Name, p.Kind, p.Setting, p.Disinfectant, p.Secondary, p.VolumeCubicMetres, p.Limits, p.Duties))],
        [.. circuit.Probes.Select(Probe)],
        [.. circuit.Pumps.Select(p => new PumpInfo(p.Id, p.Name, p.PoolId, p.ProductId,
            plan.Products.FirstOrDefault(x => x.Id == p.ProductId)?.Name ?? p.ProductId, p.TankLitres, p.TankLowPercent, p.StateSeries, p.TankTopic is null ? null : p.TankSeries))]);

    public static ProbeInfo Probe(ProbePlan p) => new(
        p.Id, p.Name, p.PoolId, p.Measurand, p.Measurand.Unit(), p.Measurand.Decimals(), p.Origin, p.Range.Low, p.Range.High, p.Every.TotalSeconds, p.ReferenceElectrode);
}
