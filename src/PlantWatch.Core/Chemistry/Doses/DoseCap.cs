using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>How much of a dose may go in at once: never past a pH, saturation, chlorine or rate limit.</summary>
/// <param name="Part">The part of the whole dose, 0 to 1.</param>
/// <param name="Because">What holds it back; empty when all of it may go in.</param>
public sealed record DoseCap(double Part, ImmutableArray<Reason> Because)
{
    /// <summary>Works the cap out.</summary>
    /// <param name="water">The water now; null when it cannot be worked out, and then only the figures that stoichiometry gives are watched.</param>
    /// <param name="now">What the tests say now, by figure; those missing are not watched.</param>
    /// <param name="product">The product as it stands in the store.</param>
    /// <param name="kilogramsPerCubicMetre">The whole dose in the water it is poured into.</param>
    /// <param name="limits">Where the water may be.</param>
    public static DoseCap Of(Speciation? water, IReadOnlyDictionary<Measurand, double> now, ProductAtHand product, double kilogramsPerCubicMetre, DoseLimits limits)
    {
        var watch = new Watch(water, now, product, kilogramsPerCubicMetre, limits);
        if (watch.Against(1).IsEmpty) return new(1, []);
        double low = 0, high = 1;
        for (var i = 0; i < 24; i++)
        {
            var middle = (low + high) / 2;
            if (watch.Against(middle).IsEmpty) low = middle;
            else high = middle;
        }

        return new(low < 1e-3 ? 0 : low, watch.Against(high));
    }

    private sealed class Watch(Speciation? water, IReadOnlyDictionary<Measurand, double> now, ProductAtHand product, double each, DoseLimits limits)
    {
        private static readonly Measurand[] Figures =
            [Measurand.FreeChlorine, Measurand.TotalAlkalinity, Measurand.CalciumHardness, Measurand.CyanuricAcid, Measurand.DissolvedSolids];

        public ImmutableArray<Reason> Against(double part)
        {
            var against = ImmutableArray.CreateBuilder<Reason>();
            var changes = DoseChanges.Of(product.PerKilogram, part * each);
            foreach (var figure in Figures)
                if (changes.For(figure) is { } change && now.TryGetValue(figure, out var value)) Look(figure, value, value + change, against);
            if (water is null) return against.ToImmutable();
            if (DoseAmount.Dosing(water, product, part * each) is not { IsKnown: true } dosed) return [Reason.Of("dose.cap_out_of_model")];
            Look(Measurand.Ph, water.Ph, dosed.Value.Ph, against);
            Saturation(water.SaturationIndex, dosed.Value.SaturationIndex, against);
            return against.ToImmutable();
        }

        private void Look(Measurand figure, double before, double after, ImmutableArray<Reason>.Builder against)
        {
            if (limits.Step(figure) is { } step && Math.Abs(after - before) > step + 1e-9) against.Add(Reason.Of("dose.cap_step", figure.Key(), step, figure.Unit()));
            if (limits.Band(figure) is not { } band) return;
            var slack = DoseLimits.Slack(figure);
            if (band.High is { } high && after > before && after > Math.Max(high, before + slack) + 1e-9) against.Add(Reason.Of("dose.cap_high", figure.Key(), high, figure.Unit()));
            if (band.Low is { } low && after < before && after < Math.Min(low, before - slack) - 1e-9) against.Add(Reason.Of("dose.cap_low", figure.Key(), low, figure.Unit()));
        }

        private static void Saturation(double before, double after, ImmutableArray<Reason>.Builder against)
        {
            if (!double.IsFinite(before) || !double.IsFinite(after)) return;
            if (after > before && after > Math.Max(DoseLimits.MostSaturation, before + 0.05)) against.Add(Reason.Of("dose.cap_clouds", DoseLimits.MostSaturation));
            if (after < before && after < Math.Min(-DoseLimits.MostSaturation, before - 0.05)) against.Add(Reason.Of("dose.cap_dissolves", -DoseLimits.MostSaturation));
        }
    }
}
