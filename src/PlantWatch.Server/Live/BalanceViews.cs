using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>The balance from live pH and temperature with the newest manual alkalinity, hardness and dissolved solids, each with its age.</summary>
internal static class BalanceViews
{
    private static readonly Measurand[] Needed =
        [Measurand.Ph, Measurand.Temperature, Measurand.TotalAlkalinity, Measurand.CalciumHardness, Measurand.DissolvedSolids];

    public static BalanceView Of(CircuitState state, PoolPlan plan, PoolState pool, Wording words)
    {
        var inputs = new List<BalanceInput>();
        var missing = new List<Said>();
        foreach (var measurand in Needed)
        {
            if (PresentWater.Of(state, plan, pool, measurand) is { } input) inputs.Add(input);
            else missing.Add(words.Say(Reason.Of("balance.missing", Wording.Key(measurand))));
        }

        if (missing.Count > 0) return new BalanceView(null, HandbookIndex.Claim, null, inputs, missing);
        var index = HandbookIndex.Of(Water(inputs, pool));
        if (index.Saying() is { } saying) missing.Add(words.Say(saying));
        if (PhInDoubt(state, plan) is { } doubt) missing.Add(words.Say(doubt));
        return new BalanceView(
            index.IsKnown ? index.Value : null, index.Claim, index.IsKnown ? Wording.Key(index.Word) : null, inputs, missing);
    }

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

    private static BalanceWater Water(List<BalanceInput> inputs, PoolState pool)
    {
        double Of(Measurand measurand) => inputs.Find(i => i.Measurand == measurand)!.Value;
        return new BalanceWater(
            Ph.From(Of(Measurand.Ph)), Celsius.From(Of(Measurand.Temperature)), Alkalinity.From(Of(Measurand.TotalAlkalinity)),
            CalciumHardness.From(Of(Measurand.CalciumHardness)), DissolvedSolids.From(Of(Measurand.DissolvedSolids)),
            pool.Manual.TryGetValue(Measurand.CyanuricAcid, out var cyanurate) ? CyanuricAcid.From(cyanurate.Result.Value) : null);
    }
}
