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
    // What is not known is taken from the middle of pools: it moves the share by less than its uncertainty.
    private const double UsualAlkalinity = 100;

    public static ChlorineView? Of(IReadOnlyList<BalanceInput> inputs, PoolPlan plan, Wording words)
    {
        double? Known(Measurand measurand) => inputs.FirstOrDefault(i => i.Measurand == measurand)?.Value;
        if (plan.Disinfectant == Disinfectant.Bromine) return null;
        var (free, cyanurate) = (Known(Measurand.FreeChlorine), Known(Measurand.CyanuricAcid));
        if (Known(Measurand.Ph) is not { } ph || Known(Measurand.Temperature) is not { } temperature)
            return new(free, null, null, null, null, cyanurate, words.Say([Reason.Of("chlorine.needs_ph_and_temperature")]));
        // The part that cyanurate holds back is most of it: without the test any figure would flatter the water.
        if (plan.Disinfectant == Disinfectant.StabilisedChlorine && cyanurate is null)
            return new(free, null, null, null, null, null, words.Say([Reason.Of("chlorine.cyanurate_not_tested")]));
        var water = new ImaginedWater(Ph.From(ph), Celsius.From(temperature), Alkalinity.From(Known(Measurand.TotalAlkalinity) ?? UsualAlkalinity))
        {
            Calcium = Known(Measurand.CalciumHardness) is { } calcium ? CalciumHardness.From(calcium) : null,
            Solids = Known(Measurand.DissolvedSolids) is { } solids ? DissolvedSolids.From(solids) : null,
            Cyanurate = cyanurate is { } cya ? CyanuricAcid.From(cya) : null,
            FreeChlorine = free is { } chlorine ? FreeChlorine.From(chlorine) : null,
        };
        var (with, without) = (water.Speciate(), (water with { Cyanurate = null }).Speciate());
        var sayings = (with.Saying() is { } why ? [why] : Array.Empty<Reason>()).Concat(free is null ? [Reason.Of("chlorine.no_free_chlorine")] : []);
        var (there, bare) = (Figures(water, with), Figures(water with { Cyanurate = null }, without));
        return new(free, there?.HypochlorousShare, there?.HypochlorousAcid, bare?.HypochlorousShare, bare?.HypochlorousAcid, cyanurate, words.Say(sayings));
    }

    private static WaterFigures? Figures(ImaginedWater water, EquilibriumResult result) => result.IsKnown ? water.FiguresOf(result.Value) : null;
}
