using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Api;

/// <summary>Finds the circuit that an id of the plant file belongs to.</summary>
internal static class CircuitFinder
{
    public static CircuitWorker? WithPool(this PlantHost host, string? poolId) => host.With(c => c.Pools.Any(p => p.Id == poolId));

    public static CircuitWorker? WithProbe(this PlantHost host, string? probeId) => host.With(c => c.Probes.Any(p => p.Id == probeId));

    public static CircuitWorker? WithAsset(this PlantHost host, string? id) => host.With(c => c.Find(id) != PlantThing.None);

    public static CircuitWorker? WithFilter(this PlantHost host, string? filterId, string? circuit) =>
        host.With(c => (circuit is null || c.Id == circuit) && c.Filters.Any(f => f.Id == filterId));

    public static CircuitWorker? WithSeries(this PlantHost host, string? series) =>
        host.With(c => c.Probes.Any(p => p.Id == series) || c.Pumps.Any(p => p.StateSeries == series || (p.TankTopic is not null && p.TankSeries == series) || (p.StrokesTopic is not null && p.StrokesSeries == series)));

    public static CircuitWorker? WithAlarm(this PlantHost host, Guid id) => host.Circuits.FirstOrDefault(w => w.State.Alarms.Values.Any(a => a.Id == id));

    public static CircuitWorker? WithIncident(this PlantHost host, Guid id) => host.Circuits.FirstOrDefault(w => w.State.Incidents.ContainsKey(id));

    public static CircuitWorker? WithCalibration(this PlantHost host, Guid id) => host.Circuits.FirstOrDefault(w => w.State.Calibrations.Any(c => c.Id == id));

    public static CircuitWorker? WithCorrection(this PlantHost host, Guid id) => host.Circuits.FirstOrDefault(w => w.State.Corrections.Any(c => c.Id == id));

    private static CircuitWorker? With(this PlantHost host, Func<CircuitPlan, bool> holds) => host.Circuits.FirstOrDefault(w => holds(w.State.Plan));
}
