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
        [Measurand.Ph, Measurand.Temperature, Measurand.TotalAlkalinity, Measurand.CalciumHardness];

    // A figure whose uncertainty nobody knows adds none to the index; the view says so beside the input.
    private const double Unsaid = 1e-9;

    private static readonly Measurand[] Beside = [Measurand.DissolvedSolids, Measurand.CyanuricAcid, Measurand.FreeChlorine];

    public static BalanceView Of(CircuitState state, PoolPlan plan, PoolState pool, Wording words)
    {
        BalanceInput[] inputs = [.. Needed.Concat(Beside).Select(m => PresentWater.Of(state, plan, pool, m)).OfType<BalanceInput>()];
        var missing = Needed.Where(m => !inputs.Any(i => i.Measurand == m)).Select(m => words.Say(Missing(pool, m))).ToList();
        var sheet = Balance.Of(Sheet(inputs));
        var indices = BalanceIndices.Of(sheet, words);
        var main = sheet.Speciated;
        var remarks = words.Say(sheet.Sayings.Concat(PhInDoubt(state, plan) is { } doubt ? [doubt] : []));
        return new BalanceView(
            main.IsKnown ? main.Value : null, main.Expanded, main.IsKnown ? Wording.Key(main.Word) : null, inputs, missing, indices,
            ChlorineViews.Of(inputs, plan, words), remarks);
    }

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

    private static BalanceInputs Sheet(IReadOnlyList<BalanceInput> inputs)
    {
        Estimate Known(Measurand measurand) => inputs.FirstOrDefault(i => i.Measurand == measurand) is { } input
            ? new(input.Value, input.U is { } expanded and > 0 ? expanded / 2 : Unsaid) : default;
        return new()
        {
            Ph = Known(Measurand.Ph), Temperature = Known(Measurand.Temperature), Alkalinity = Known(Measurand.TotalAlkalinity), Calcium = Known(Measurand.CalciumHardness),
            Solids = Known(Measurand.DissolvedSolids), Cyanurate = Known(Measurand.CyanuricAcid), FreeChlorine = Known(Measurand.FreeChlorine),
        };
    }
}
