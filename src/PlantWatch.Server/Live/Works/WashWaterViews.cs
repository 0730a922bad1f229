using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Units;

namespace PlantWatch.Server.Live;

/// <summary>The water of washes as what it is for the pool: dilution.</summary>
internal static class WashWaterViews
{
    /// <summary>How far back washes are counted.</summary>
    public const int Days = 28;

    private static readonly Measurand[] Thinned = [Measurand.CombinedChlorine, Measurand.CyanuricAcid, Measurand.DissolvedSolids];

    /// <summary>What the washes did.</summary>
    /// <param name="at">The pool with its tests.</param>
    /// <param name="washes">Washes of the circuit's filters within <see cref="Days"/>, strainers among them or not.</param>
    /// <param name="units">The plant's units.</param>
    public static WashWaterView? Of(DoseSituation at, IEnumerable<(Instant At, FilterEntry Wash)> washes, UnitSystem units)
    {
        var beds = at.Circuit.Filters.Where(f => f.Kind == FilterKind.Media).Select(f => f.Id).ToHashSet(StringComparer.Ordinal);
        var counted = washes.Where(w => beds.Contains(w.Wash.FilterId)).ToList();
        if (counted.Count == 0) return null;
        var (whole, amounts) = (DoseVolume.WholeOf(at.Circuit), new AmountWords(units, Words.Reader.Here.Language));
        double Drained(Instant since) => counted.Where(w => w.At > since).Sum(w => w.Wash.CubicMetres ?? 0);
        var total = Drained(Instant.Never);
        return FreshWater.Dilutes(1, 0, total, whole).OrNull is not { } left ? null : new(
            Days, counted.Count, counted.Count(w => w.Wash.CubicMetres is null), amounts.Water(total), 1 - left,
            [.. Thinned.Select(what => Diluted(at, what, Drained, whole, amounts)).OfType<DilutedView>()]);
    }

    private static DilutedView? Diluted(DoseSituation at, Measurand what, Func<Instant, double> drained, double whole, AmountWords amounts)
    {
        var isCombined = what == Measurand.CombinedChlorine;
        if ((isCombined ? at.Combined : at.Tested(what)) is not { } tested || !at.Tests.TryGetValue(isCombined ? Measurand.TotalChlorine : what, out var test)) return null;
        var since = drained(test.SampledAt);
        return since > 0 && FreshWater.Dilutes(tested, 0, since, whole).OrNull is { } left ? new(what, tested, test.SampledAt, amounts.Water(since), left) : null;
    }
}
