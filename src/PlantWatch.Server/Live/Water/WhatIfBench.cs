using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Units;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>What lies ready to imagine with: the pool's present water, how much of it there is, and what can be put into it.</summary>
internal sealed record WhatIfBench(PoolPlan Pool, IReadOnlyList<BalanceInput> Inputs, double VolumeM3, bool IsVolumeConfirmed, IReadOnlyList<WhatIfBottle> Bottles, AmountWords Amounts)
{
    private static readonly Measurand[] Wanted =
    [
        Measurand.Ph, Measurand.Temperature, Measurand.TotalAlkalinity, Measurand.CalciumHardness, Measurand.DissolvedSolids, Measurand.CyanuricAcid,
        Measurand.FreeChlorine,
    ];

    /// <summary>The bench of a pool.</summary>
    public static WhatIfBench Of(CircuitState state, string poolId, PlantPlan? plan, DateTimeOffset now, Wording words)
    {
        var index = state.Plan.Pools.Select(p => p.Id).ToList().IndexOf(poolId);
        var (pool, known) = (state.Plan.Pools[index], state.Pools[index]);
        return new(pool, Present(state, pool, known), Volume(state.Plan), IsConfirmed(state.Plan),
            WhatIfBottles.Of(pool, plan?.Products ?? [], Today(state.Plan.TimeZone, now), words), new AmountWords(words.Units, words.Language));
    }

    /// <summary>The present water as people would type it.</summary>
    public WhatIfWater Present() => new(
        Now(Measurand.Ph), Now(Measurand.Temperature), Now(Measurand.TotalAlkalinity), Now(Measurand.CalciumHardness), Now(Measurand.DissolvedSolids),
        Now(Measurand.CyanuricAcid), Now(Measurand.FreeChlorine));

    /// <summary>What is called so; null when nothing is.</summary>
    public WhatIfBottle? Find(string? product) => Bottles.FirstOrDefault(b => b.Id == product);

    private double? Now(Measurand measurand) => Inputs.FirstOrDefault(i => i.Measurand == measurand)?.Value;

    private static BalanceInput[] Present(CircuitState state, PoolPlan plan, PoolState pool) =>
        [.. Wanted.Where(m => m != Measurand.FreeChlorine || plan.Disinfectant != Disinfectant.Bromine)
            .Select(m => PresentWater.Of(state, plan, pool, m)).OfType<BalanceInput>()];

    private static DateOnly Today(string zone, DateTimeOffset now) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, TimeZoneInfo.FindSystemTimeZoneById(zone)).DateTime);

    // What is put into one pool of a circuit is soon in all of it.
    private static double Volume(CircuitPlan circuit) => circuit.Pools.Sum(p => p.VolumeCubicMetres) + (circuit.BalanceTankCubicMetres ?? 0);

    private static bool IsConfirmed(CircuitPlan circuit) => circuit.BalanceTankConfirmed is not null && circuit.Pools.All(p => p.VolumeConfirmed is not null);
}

/// <summary>Something that can be put into the water.</summary>
/// <param name="Id">Key.</param>
/// <param name="Name">As on the drum, or of the trade.</param>
/// <param name="Kind">What it is.</param>
/// <param name="AtHand">The plant file lists it.</param>
/// <param name="Strength">In words.</param>
/// <param name="PerKilogram">mol that one kilogram brings.</param>
/// <param name="KilogramsPerLitre">Density of a liquid.</param>
/// <param name="Says">What has to be said of its strength.</param>
internal sealed record WhatIfBottle(
    string Id, string Name, ProductKind Kind, bool AtHand, string Strength, Composition PerKilogram, double? KilogramsPerLitre, ImmutableArray<Reason> Says);
