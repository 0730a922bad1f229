using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>What would be, beside what is. Pure: the same bench and wish give the same answer.</summary>
internal static class WhatIfViews
{
    private const double LeastPh = 6.4;
    private const double MostPh = 8.8;
    private const int PhPoints = 49;
    private const int DosePoints = 41;
    private const double LitresPerCubicMetre = 1000;

    public static WhatIfView Of(WhatIfBench bench, WhatIfRequest wish, Instant at, Wording words)
    {
        var remarks = new List<Reason>();
        var volume = wish.VolumeM3 ?? bench.VolumeM3;
        var present = Imagined(bench.Present(), bench.Pool);
        var now = present?.Speciate() ?? default;
        var asked = wish.Water ?? bench.Present();
        remarks.AddRange(bench.Inputs.Where(i => i.Suspect).Select(i => Reason.Of("what_if.in_doubt", Wording.Key(i.Measurand))));
        remarks.AddRange(Missing(asked, bench.Pool));
        var water = Imagined(asked, bench.Pool);
        var set = water?.Speciate() ?? default;
        if (water is not null && set.Saying() is { } why) remarks.Add(why);
        var after = set.IsKnown ? Equilibrium.After(set.Value, Dosed(set.Value.Composition, bench, wish, volume)) : default;
        if (set.IsKnown) remarks.AddRange(ImaginedReasons.SayingAfterDose(after));
        var dosed = water is not null && after.IsKnown ? water.Became(after.Value) : null;
        if (wish is { Doses.Count: > 0, VolumeM3: null } && !bench.IsVolumeConfirmed) remarks.Add(Reason.Of("what_if.volume_unconfirmed"));
        remarks.AddRange(Chlorine(dosed));
        remarks.AddRange(bench.Bottles.Where(b => (wish.Doses ?? []).Any(d => d.Product == b.Id)).SelectMany(b => b.Says));
        return new WhatIfView(
            at, bench.Inputs, Figures(present, now), Figures(water, set), Figures(water, after), Curve(dosed),
            Curve(present), AgainstDose(bench, wish, water, set, volume), Amounts(bench, wish), volume, bench.Amounts.Water(volume),
            [.. bench.Bottles.Select(b => Product(b, volume))], words.Say(remarks));
    }

    private static ImmutableArray<Reason> Chlorine(ImaginedWater? water) => water?.Split() switch
    {
        { IsKnown: true } split => split.Value.Says,
        { Why: { } why } => [why],
        _ => [],
    };

    private static WhatIfAmount[] Amounts(WhatIfBench bench, WhatIfRequest wish) => [.. (wish.Doses ?? []).Select(d => new WhatIfAmount(
        d.Product!, bench.Amounts.Mass(d.Kilograms), bench.Find(d.Product)!.KilogramsPerLitre is { } density ? bench.Amounts.Volume(d.Kilograms / density) : null))];

    private static Composition Dosed(Composition water, WhatIfBench bench, WhatIfRequest wish, double volume)
    {
        var added = default(Composition);
        foreach (var dose in wish.Doses ?? [])
            added += dose.Kilograms / (volume * LitresPerCubicMetre) * bench.Find(dose.Product)!.PerKilogram;
        return water + (wish.ChlorineSpent ? added.ChlorineSpent() : added);
    }

    private static CurveView AgainstDose(WhatIfBench bench, WhatIfRequest wish, ImaginedWater? water, EquilibriumResult set, double volume)
    {
        if (water is null || !set.IsKnown || bench.Find(wish.Curve) is not { } bottle) return Columns([]);
        var others = Dosed(set.Value.Composition, bench, wish with { Doses = [.. (wish.Doses ?? []).Where(d => d.Product != bottle.Id)] }, volume);
        var start = Equilibrium.After(set.Value, others);
        var chosen = (wish.Doses ?? []).Where(d => d.Product == bottle.Id).Sum(d => d.Kilograms);
        var step = 1 / (volume * LitresPerCubicMetre) * (wish.ChlorineSpent ? bottle.PerKilogram.ChlorineSpent() : bottle.PerKilogram);
        return Columns(start.IsKnown ? Sweep.OverDose(water, start.Value, step, Math.Max(Scale(bottle, volume), chosen), DosePoints) : []);
    }

    private static CurveView Curve(ImaginedWater? water) =>
        Columns(water is null ? [] : Sweep.OverPh(water, Math.Min(LeastPh, water.Ph.Value), Math.Max(MostPh, water.Ph.Value), PhPoints));

    // Four decimals draw the same line in half the bytes.
    private static CurveView Columns(ImmutableArray<SweepPoint> points) => new(
        [.. points.Select(p => Math.Round(p.At, 4))], [.. points.Select(p => Math.Round(p.Figures.Ph, 4))], [.. points.Select(p => Short(p.Figures.SaturationIndex))],
        [.. points.Select(p => Short(p.Figures.HypochlorousAcid))], [.. points.Select(p => Short(p.Figures.HypochlorousShare))]);

    private static double? Short(double? value) => value is { } number ? Math.Round(number, 4) : null;

    private static FiguresView? Figures(ImaginedWater? water, EquilibriumResult result)
    {
        if (water is null || !result.IsKnown) return null;
        var figures = water.FiguresOf(result.Value);
        return new(figures, figures.SaturationIndex is null ? null : Wording.Key(SpeciatedIndex.Of(result).Word));
    }

    private static WhatIfProduct Product(WhatIfBottle b, double volume) => new(b.Id, b.Name, b.Kind, b.AtHand, b.Strength, b.KilogramsPerLitre, Scale(b, volume));

    // A dose that moves the water clearly: an equivalent of 0.6 mmol a litre, or 10 mg/L of chlorine; rounded to what people would choose as the end of a scale.
    private static double Scale(WhatIfBottle bottle, double volume)
    {
        var p = bottle.PerKilogram;
        double[] effects = [p.StrongCharge, p.Carbon, p.Calcium, 4 * p.Chlorine, 2 * p.Cyanurate, p.Sodium / 20];
        var strongest = effects.Max(Math.Abs);
        return strongest > 0 ? Nice(0.0006 / strongest * volume * LitresPerCubicMetre) : 1;
    }

    private static double Nice(double value)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(value)));
        return power * (value / power) switch { < 1.5 => 1, < 3.5 => 2, < 7.5 => 5, _ => 10 };
    }

    private static ImaginedWater? Imagined(WhatIfWater water, PoolPlan pool) => water is { Ph: { } ph, Temperature: { } temperature, TotalAlkalinity: { } alkalinity }
        ? new ImaginedWater(Ph.From(ph), Celsius.From(temperature), Alkalinity.From(alkalinity))
        {
            Disinfectant = pool.Disinfectant, Calcium = Known<CalciumHardness>(water.CalciumHardness), Solids = Known<DissolvedSolids>(water.DissolvedSolids),
            Cyanurate = Known<CyanuricAcid>(water.CyanuricAcid), FreeChlorine = Known<FreeChlorine>(water.FreeChlorine),
        }
        : null;

    private static T? Known<T>(double? value) where T : struct, IQuantity<T> => value is { } number ? Quantity.From<T>(number) : null;

    private static IEnumerable<Reason> Missing(WhatIfWater water, PoolPlan pool)
    {
        foreach (var (measurand, value) in ((Measurand, double?)[])
            [(Measurand.Ph, water.Ph), (Measurand.Temperature, water.Temperature), (Measurand.TotalAlkalinity, water.TotalAlkalinity)])
            if (value is null) yield return Reason.Of("what_if.missing_for_all", Wording.Key(measurand));
        foreach (var (measurand, value) in ((Measurand, double?)[])[(Measurand.CalciumHardness, water.CalciumHardness), (Measurand.DissolvedSolids, water.DissolvedSolids)])
            if (value is null) yield return Reason.Of("what_if.missing_for_index", Wording.Key(measurand));
        if (water.FreeChlorine is null && pool.Disinfectant != Disinfectant.Bromine) yield return Reason.Of("what_if.missing_for_amount", Wording.Key(Measurand.FreeChlorine));
    }
}
