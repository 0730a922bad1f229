using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The balance of the newest full set of tests: water that eats its pool, or coats it.</summary>
internal static class BalanceFold
{
    // pH moves within hours; alkalinity and hardness are tested weekly to monthly and move as slowly (common practice).
    private static readonly TimeSpan OfNow = TimeSpan.FromHours(12);
    private static readonly TimeSpan OfLate = TimeSpan.FromDays(35);

    /// <summary>A check told something of the pool.</summary>
    public static void Learn(Draft draft, int index, ManualCheck check, Instant now)
    {
        if (!check.Results.Any(r => r.Measurand is Measurand.Ph or Measurand.TotalAlkalinity or Measurand.CalciumHardness)) return;
        var (plan, key) = (draft.Plan.Pools[index], RuleBook.OutOfBalance.KeyFor(draft.Plan.Pools[index].Id));
        if (Balance.Of(Inputs(draft, index, now)).Speciated is not { IsKnown: true } found) return;
        var beyond = Math.Abs(found.Value) - IndexResult.Tolerance;
        // In between nothing is proven either way: what stands stands, and what does not is not raised.
        if (beyond > found.Expanded / 2 || (beyond <= 0 && draft.Alarms.Knows(key)))
            draft.Alarms.Look(RuleBook.OutOfBalance, key, plan.Id, beyond > 0, now, () => Reason.Of(
                found.Value < 0 ? "balance.aggressive" : "balance.scaling", plan.Name, found.Value, found.Expanded), renew: true);
    }

    private static BalanceInputs Inputs(Draft draft, int index, Instant now)
    {
        var pool = draft.Pools[index];
        Estimate Tested(Measurand measurand, TimeSpan within) => pool.Manual.TryGetValue(measurand, out var known) && !known.Suspect && now - known.SampledAt <= within
            ? MethodUncertainty.Of(known.Result) : default;
        return new()
        {
            Ph = Tested(Measurand.Ph, OfNow),
            Temperature = Tested(Measurand.Temperature, OfNow) is { IsKnown: true } tested ? tested : Shown(draft, pool.Id),
            Alkalinity = Tested(Measurand.TotalAlkalinity, OfLate),
            Calcium = Tested(Measurand.CalciumHardness, OfLate),
            Solids = Tested(Measurand.DissolvedSolids, OfLate),
            Cyanurate = Tested(Measurand.CyanuricAcid, OfLate),
        };
    }

    // A degree is worth 0.01 to 0.02 of the index: a thermometer on the line is good enough.
    private static Estimate Shown(Draft draft, string pool)
    {
        for (var i = 0; i < draft.Probes.Length; i++)
            if (draft.Plan.Probes[i] is { Measurand: Measurand.Temperature } plan && (plan.PoolId is null || plan.PoolId == pool) && draft.Probes[i].Last is var last && last.Quality.IsGood())
                return new(last.Value, 0.5);
        return default;
    }
}
