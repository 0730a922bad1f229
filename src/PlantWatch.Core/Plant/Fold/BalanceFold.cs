using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans.Packs;
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
        if (check.Results.Any(r => r.Measurand is Measurand.Ph or Measurand.TotalAlkalinity or Measurand.CalciumHardness)) Look(draft, index, now);
    }

    /// <summary>The index of the newest tests against the usual band and the rows of the pack that are in force.</summary>
    public static void Look(Draft draft, int index, Instant now)
    {
        var (plan, key) = (draft.Plan.Pools[index], RuleBook.OutOfBalance.KeyFor(draft.Plan.Pools[index].Id));
        if (Balance.Of(Inputs(draft, index, now)).Speciated is not { IsKnown: true } found) return;
        var (beyond, row) = Beyond(draft.Pools[index].Limits, found.Value);
        // In between nothing is proven either way: what stands stands, and what does not is not raised.
        if (beyond > found.Expanded / 2 || (beyond <= 0 && draft.Alarms.Knows(key)))
            draft.Alarms.Look(RuleBook.OutOfBalance, key, plan.Id, beyond > 0, now, () => Cause(plan.Name, found, row), renew: true);
    }

    private static Reason Cause(string pool, IndexResult found, (double Limit, bool IsLow, string From)? row) => row is { } broken
        ? Reason.Of(broken.IsLow ? "balance.under_limit" : "balance.over_limit", pool, found.Value, found.Expanded, broken.Limit, broken.From)
        : Reason.Of(found.Value < 0 ? "balance.aggressive" : "balance.scaling", pool, found.Value, found.Expanded);

    // How far it is outside what it is most outside of; null where that is the usual band.
    private static (double Beyond, (double Limit, bool IsLow, string From)? Row) Beyond(LimitsInForce limits, double index)
    {
        (double Beyond, (double, bool, string)? Row) worst = (Math.Abs(index) - IndexResult.Tolerance, null);
        foreach (var bound in limits.Bounds)
        {
            if (bound.Quantity != PackQuantity.SaturationIndex) continue;
            if (bound.Low is { } low && low - index > worst.Beyond) worst = (low - index, (low, true, bound.LowFrom));
            if (bound.High is { } high && index - high > worst.Beyond) worst = (index - high, (high, false, bound.HighFrom));
        }

        return worst;
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
