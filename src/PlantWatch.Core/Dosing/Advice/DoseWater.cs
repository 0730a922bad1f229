using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing;

/// <summary>The tested water of a pool as far as a dose can rest on it: tests by hand, and a live probe for temperature alone. pH is never taken from a probe here.</summary>
/// <param name="Speciation">The water worked out; null when something is missing or impossible.</param>
/// <param name="Missing">What is missing for it.</param>
/// <param name="Says">What was assumed.</param>
/// <param name="Figures">What the tests say, by figure.</param>
internal sealed record DoseWater(Speciation? Speciation, ImmutableArray<Reason> Missing, ImmutableArray<Reason> Says, IReadOnlyDictionary<Measurand, double> Figures)
{
    // Dissolved solids are seldom tested and weigh little here: 500 more move a predicted pH by less than 0.01.
    private const double UsualSolids = 1000;

    private static readonly Measurand[] All =
    [
        Measurand.Ph, Measurand.Temperature, Measurand.FreeChlorine, Measurand.TotalAlkalinity, Measurand.CalciumHardness, Measurand.CyanuricAcid, Measurand.DissolvedSolids,
    ];

    /// <summary>The figures that the cap watches.</summary>
    public IReadOnlyDictionary<Measurand, double> Now(DoseAdvice advice) =>
        advice.From is { } from ? new Dictionary<Measurand, double>(Figures) { [advice.Target] = from } : Figures;

    /// <summary>The figure now; the bound of a chlorine test below its range.</summary>
    public static double? Now(DoseSituation at, Measurand measurand) => at.Tested(measurand)
        ?? (measurand == Measurand.FreeChlorine && at.Tests.TryGetValue(measurand, out var test) && test.Result.Censoring == Censoring.Below ? test.Result.Value : null);

    public static DoseWater Of(DoseSituation at)
    {
        var (missing, says) = (ImmutableArray.CreateBuilder<Reason>(), ImmutableArray.CreateBuilder<Reason>());
        var figures = new Dictionary<Measurand, double>();
        foreach (var measurand in All)
            if (Fresh(at, measurand) is { } value) figures[measurand] = value;
        if (!figures.ContainsKey(Measurand.Temperature) && at.LiveTemperature is { } live) figures[Measurand.Temperature] = live;
        foreach (var needed in (ReadOnlySpan<Measurand>)[Measurand.Ph, Measurand.Temperature, Measurand.TotalAlkalinity, Measurand.CalciumHardness])
            if (!figures.ContainsKey(needed)) missing.Add(Reason.Of("dose.missing_for_prediction", needed.Key()));
        if (at.Pool.Disinfectant == Plans.Disinfectant.StabilisedChlorine && !figures.ContainsKey(Measurand.CyanuricAcid)) missing.Add(Reason.Of("dose.missing_for_prediction", Measurand.CyanuricAcid.Key()));
        if (missing.Count > 0) return new(null, missing.ToImmutable(), [], figures);
        if (!figures.ContainsKey(Measurand.DissolvedSolids)) says.Add(Reason.Of("dose.solids_assumed", UsualSolids));
        var water = Equilibrium.Speciate(Make(figures));
        return water.IsKnown ? new(water.Value, [], says.ToImmutable(), figures) : new(null, [Reason.Of("dose.impossible_water")], says.ToImmutable(), figures);
    }

    private static Water Make(Dictionary<Measurand, double> figures) => new(
        Ph.From(figures[Measurand.Ph]), Celsius.From(figures[Measurand.Temperature]), Alkalinity.From(figures[Measurand.TotalAlkalinity]),
        CalciumHardness.From(figures[Measurand.CalciumHardness]), DissolvedSolids.From(figures.GetValueOrDefault(Measurand.DissolvedSolids, UsualSolids)))
    {
        Cyanurate = figures.TryGetValue(Measurand.CyanuricAcid, out var cyanurate) ? CyanuricAcid.From(cyanurate) : null,
        FreeChlorine = figures.TryGetValue(Measurand.FreeChlorine, out var chlorine) ? FreeChlorine.From(chlorine) : null,
    };

    private static double? Fresh(DoseSituation at, Measurand measurand) =>
        Now(at, measurand) is { } value && at.Now - at.Tests[measurand].SampledAt <= TestAge.Oldest(measurand) ? value : null;
}

/// <summary>The limits of a situation.</summary>
internal static class DoseLimitsOf
{
    private static readonly Measurand[] Bounded =
        [Measurand.TotalAlkalinity, Measurand.CalciumHardness, Measurand.CyanuricAcid, Measurand.DissolvedSolids];

    public static DoseLimits Situation(DoseSituation at, DoseAdvice advice)
    {
        var hold = advice.Target == Measurand.FreeChlorine && DoseRefusals.IsForHold(at, advice.Product, advice.Value) ? at.Hold : null;
        var bands = ImmutableArray.CreateBuilder<DoseBand>();
        var ph = at.Limit(Measurand.Ph);
        // Above the highest pH of the plan nothing counts: the chlorine must not take the water past it.
        bands.Add(new(Measurand.Ph, ph?.Low ?? at.PhStop.Low, Math.Min(ph?.High ?? at.PhStop.High, hold?.Figure?.HighestPh ?? double.MaxValue)));
        bands.Add(new(Measurand.FreeChlorine, at.Closed ? null : at.Limit(Measurand.FreeChlorine)?.Low,
            hold is not null ? hold.Highest : at.Closed ? at.ChlorineStop.High : at.Limit(Measurand.FreeChlorine)?.High ?? DoseAdvisor.UsualHighestChlorine));
        foreach (var measurand in Bounded)
            if (at.Limit(measurand) is { } limit) bands.Add(new(measurand, limit.Low, limit.High));
        return new() { Bands = bands.ToImmutable(), ChlorineStep = hold?.Highest };
    }
}
