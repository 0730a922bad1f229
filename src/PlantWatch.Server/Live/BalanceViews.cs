using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>The balance of a pool's water: from live probes where they may be believed and the newest tests otherwise, each with its age and its doubt.</summary>
internal static class BalanceViews
{
    private static readonly Measurand[] Needed =
        [Measurand.Ph, Measurand.Temperature, Measurand.TotalAlkalinity, Measurand.CalciumHardness, Measurand.DissolvedSolids];

    private static readonly Measurand[] Beside = [Measurand.CyanuricAcid, Measurand.FreeChlorine];

    public static BalanceView Of(CircuitState state, PoolPlan plan, PoolState pool, Wording words)
    {
        BalanceInput[] inputs = [.. Needed.Concat(Beside).Select(m => PresentWater.Of(state, plan, pool, m)).OfType<BalanceInput>()];
        var missing = Needed.Where(m => !inputs.Any(i => i.Measurand == m)).Select(m => words.Say(Missing(pool, m))).ToList();
        IReadOnlyList<IndexView> indices = missing.Count == 0 ? BalanceIndices.Of(Water(inputs), words) : [];
        var main = indices.FirstOrDefault(i => i.Acted);
        if (missing.Count == 0 && main?.Value is null) missing.AddRange(indices.Where(i => i.Value is null).SelectMany(i => i.Sayings).DistinctBy(s => s.Text));
        Said[] remarks = PhInDoubt(state, plan) is { } doubt ? [words.Say(doubt)] : [];
        return new BalanceView(
            main?.Value, Together(main?.Claim, main?.U), main?.Word, inputs, missing, indices, ChlorineViews.Of(inputs, plan, words), remarks);
    }

    // Independent of each other: their squares add up.
    private static double Together(double? claim, double? u) => Math.Sqrt(((claim ?? 0) * (claim ?? 0)) + ((u ?? 0) * (u ?? 0)));

    private static Reason Missing(PoolState pool, Measurand measurand) => pool.Manual.ContainsKey(measurand)
        ? Reason.Of("balance.only_a_bound", Wording.Key(measurand))
        : Reason.Of("balance.missing", Wording.Key(measurand));

    /// <summary>Share of free chlorine that disinfects; null where it does not hold: cyanurate, bromine, too cold or warm, no live pH.</summary>
    public static double? HoclShare(CircuitState state, PoolPlan plan, PoolState pool)
    {
        if (plan.Disinfectant is not (Disinfectant.Chlorine or Disinfectant.SaltElectrolysis)) return null;
        if (pool.Manual.TryGetValue(Measurand.CyanuricAcid, out var cyanurate) && cyanurate.Result.Value > 0) return null;
        if (PresentWater.Live(state, plan, Measurand.Ph) is not { } ph || PresentWater.Live(state, plan, Measurand.Temperature) is not { } water) return null;
        return Core.Chemistry.HoclShare.TryOf(Ph.From(ph.Value), Celsius.From(water.Value), out var share) ? share : null;
    }

    private static Reason? PhInDoubt(CircuitState state, PoolPlan plan)
    {
        if (PresentWater.Source(state, plan, Measurand.Ph) is not { } probe) return null;
        if (PresentWater.IsFlagged(probe))
        {
            var bias = probe.Trust.Bias;
            return Reason.Of("balance.ph_believed", Math.Abs(bias.Value), bias.Expanded, PresentWater.Supported(probe, Measurand.Ph), Measurand.Ph.Unit(), bias.Value > 0 ? "high" : "low");
        }

        return PresentWater.IsDoubted(probe) ? Reason.Of("balance.ph_doubted") : null;
    }

    private static Water Water(IReadOnlyList<BalanceInput> inputs)
    {
        double? Known(Measurand measurand) => inputs.FirstOrDefault(i => i.Measurand == measurand)?.Value;
        return new Water(
            Ph.From(Known(Measurand.Ph)!.Value), Celsius.From(Known(Measurand.Temperature)!.Value), Alkalinity.From(Known(Measurand.TotalAlkalinity)!.Value),
            CalciumHardness.From(Known(Measurand.CalciumHardness)!.Value), DissolvedSolids.From(Known(Measurand.DissolvedSolids)!.Value))
        {
            Cyanurate = Known(Measurand.CyanuricAcid) is { } cyanurate ? CyanuricAcid.From(cyanurate) : null,
            FreeChlorine = Known(Measurand.FreeChlorine) is { } free ? FreeChlorine.From(free) : null,
        };
    }
}
