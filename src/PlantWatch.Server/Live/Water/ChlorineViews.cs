using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>How much of the free chlorine disinfects in a pool's water, with the cyanurate there is and as it would be without.</summary>
internal static class ChlorineViews
{
    public static ChlorineView Of(IReadOnlyList<BalanceInput> inputs, PoolPlan plan, Wording words)
    {
        BalanceInput? Known(Measurand measurand) => inputs.FirstOrDefault(i => i.Measurand == measurand);
        var (ph, temperature, free, cyanurate) = (Known(Measurand.Ph), Known(Measurand.Temperature), Known(Measurand.FreeChlorine), Known(Measurand.CyanuricAcid));
        ChlorineView None(Reason why) => new(free?.Value, null, null, null, null, null, cyanurate?.Value, [words.Say(why)]);
        if (plan.Disinfectant == Disinfectant.Bromine) return None(Reason.Of("hocl.bromine"));
        if (ph is null) return None(Reason.Of("chlorine.needs", Wording.Key(Measurand.Ph)));
        if (temperature is null) return None(Reason.Of("chlorine.needs", Wording.Key(Measurand.Temperature)));
        // The part that cyanurate holds back is most of it: without the test any figure would flatter the water.
        if (plan.Disinfectant == Disinfectant.StabilisedChlorine && cyanurate is null) return None(Reason.Of("chlorine.cyanurate_not_tested"));
        if (free is null && cyanurate is { Value: > 0 }) return None(Reason.Of("chlorine.no_free_chlorine_to_share"));
        var water = new ChlorineWater(Ph.From(ph.Value), Celsius.From(temperature.Value), FreeChlorine.From(free?.Value ?? 0), cyanurate is null ? null : CyanuricAcid.From(cyanurate.Value))
        {
            Disinfectant = plan.Disinfectant,
            Doubt = ph.U is { } byPh && free?.U is { } byFree ? new ChlorineDoubt(byPh / 2, byFree / 2, (cyanurate?.U ?? 0) / 2) : null,
        };
        var there = ChlorineSplit.Of(water);
        if (!there.IsKnown) return None(there.Why!);
        var without = ChlorineSplit.Of(water with { Cyanurate = null }).Value;
        var sheet = there.Value;
        var says = free is null ? sheet.Says.Append(Reason.Of("chlorine.no_free_chlorine")) : sheet.Says;
        return new(
            free?.Value, sheet.Share, free is null ? null : sheet.MilligramsPerLitre, free is null ? null : 2 * sheet.StandardUncertainty,
            without.Share, free is null ? null : without.MilligramsPerLitre, cyanurate?.Value, words.Say(says));
    }
}
