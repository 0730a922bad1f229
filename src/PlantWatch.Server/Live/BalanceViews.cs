using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
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
            if (Live(state, plan, measurand) is { } live) inputs.Add(live);
            else if (pool.Manual.TryGetValue(measurand, out var value) && value.Result.Censoring == Censoring.None)
                inputs.Add(new BalanceInput(measurand, value.Result.Value, value.SampledAt, false));
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
        if (Live(state, plan, Measurand.Ph) is not { } ph || Live(state, plan, Measurand.Temperature) is not { } water) return null;
        return Core.Chemistry.HoclShare.TryOf(Ph.From(ph.Value), Celsius.From(water.Value), out var share) ? share : null;
    }

    private static BalanceInput? Live(CircuitState state, PoolPlan plan, Measurand measurand) =>
        Source(state, plan, measurand) is { } probe ? new BalanceInput(measurand, Supported(probe, measurand), probe.Last.MeasuredAt, true) : null;

    // What a silent probe said last is not live, and a corrected number may be one that no water can have.
    private static ProbeState? Source(CircuitState state, PoolPlan plan, Measurand measurand)
    {
        for (var i = 0; i < state.Probes.Length; i++)
        {
            var (probe, wiring) = (state.Probes[i], state.Plan.Probes[i]);
            if (wiring.Measurand == measurand && (wiring.PoolId is null || wiring.PoolId == plan.Id) && probe.Last.Quality.IsGood()
                && !ProbeViews.IsSilent(state, wiring) && measurand.Possible().Contains(probe.Last.Value)) return probe;
        }

        return null;
    }

    // A probe that the tests call wrong would carry its error into the index one to one; what the tests support is used, and said.
    private static double Supported(ProbeState probe, Measurand measurand)
    {
        var possible = measurand.Possible();
        return IsFlagged(probe) ? Math.Clamp(probe.Last.Value - probe.Trust.Bias.Value, possible.Low, possible.High) : probe.Last.Value;
    }

    private static bool IsFlagged(ProbeState probe) =>
        probe.Trust is { Standing: Standing.MaintenanceRequired or Standing.OutOfSpecification, Bias.IsKnown: true };

    private static Reason? PhInDoubt(CircuitState state, PoolPlan plan)
    {
        if (Source(state, plan, Measurand.Ph) is not { } probe) return null;
        if (IsFlagged(probe))
        {
            var bias = probe.Trust.Bias;
            return Reason.Of("balance.ph_believed", Math.Abs(bias.Value), bias.Expanded, Supported(probe, Measurand.Ph), Measurand.Ph.Unit(), bias.Value > 0 ? "high" : "low");
        }

        return Standings.IsWorse(Standings.Worse(probe.Signal.Standing, probe.Trust.Standing), Standing.Good) ? Reason.Of("balance.ph_doubted") : null;
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
