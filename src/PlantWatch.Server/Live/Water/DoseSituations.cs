using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Server.Live;

/// <summary>What a dose into a pool is judged by, taken from the live state.</summary>
internal static class DoseSituations
{
    public static DoseSituation Of(CircuitState state, string poolId, PlantPlan? plan, Instant now)
    {
        var index = state.Plan.Pools.Select(p => p.Id).ToList().IndexOf(poolId);
        var (pool, known) = (state.Plan.Pools[index], state.Pools[index]);
        var live = PresentWater.Live(state, pool, Measurand.Temperature);
        return new()
        {
            Circuit = state.Plan,
            Pool = pool,
            Tests = known.Manual,
            LiveTemperature = live is { Suspect: false } ? live.Value : null,
            Bathers = known.Bathers,
            // There are no roles yet; whoever builds them asks here.
            Entitlement = Entitlement.Granted,
            PhStop = StricterOf(state, Measurand.Ph, Stops.Ph),
            ChlorineStop = StricterOf(state, Measurand.FreeChlorine, Stops.FreeChlorine),
            Products = plan?.Products ?? [],
            Hold = IncidentHold.Of(state.Plan, state.Pools, state.Incidents.Values, poolId),
            Now = now,
        };
    }

    // A stop that the plant has loosened says when bathers must be out, and not how far anybody may dose.
    private static ValueRange StricterOf(CircuitState state, Measurand measurand, ValueRange usual) => Stops.TryOf(state.Plan, measurand, out var edited, out _)
        ? new(Math.Max(edited.Low, usual.Low), Math.Min(edited.High, usual.High)) : usual;

    /// <summary>Today on the site's calendar.</summary>
    public static DateOnly Today(CircuitPlan circuit, Instant now) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now.ToDateTimeOffset(), TimeZoneInfo.FindSystemTimeZoneById(circuit.TimeZone)).DateTime);
}
