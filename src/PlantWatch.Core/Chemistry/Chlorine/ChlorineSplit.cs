using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>Hypochlorous acid, the part of free chlorine that disinfects, with and without cyanuric acid.</summary>
/// <remarks>
/// Without cyanuric acid: Morris (1966), see <see cref="HoclShare"/>. With it: all species of O'Brien, Morris and Butler (1974) in the one <see cref="Equilibrium"/>, whose constants are
/// those of 25 degC at zero ionic strength; other temperatures are computed as 25 degC, and said so. Constants of simpler models are not mixed in.
/// </remarks>
public static class ChlorineSplit
{
    private const double ReferenceCelsius = 25;

    // Within this of 25 degC nothing is to be said: a degree moves the share by less than the tests can tell.
    private const double NearReference = 1;

    // The share has a limit where chlorine vanishes; this little shows it.
    private const double Trace = 1e-4;

    // The set brings its own pKa of hypochlorous acid, 7.54; to take Morris's 7.5366 with it would mix two sets.
    private static readonly Tableau OBrien = Tableau.At(ReferenceCelsius, ideal: true).With("OCl-", -7.54);

    // Strong base enough to carry every anion of cyanurate and chlorine in range; in the ideal water it does nothing else.
    private static readonly Composition Background = new(Sodium: 0.1);

    /// <summary>The sheet for a water, or the reason why there is none.</summary>
    public static ChlorineSheetResult Of(ChlorineWater water)
    {
        if (water.Disinfectant == Disinfectant.Bromine) return ChlorineSheetResult.Not(Reason.Of("hocl.bromine"));
        if (Unfit(water) is { } why) return ChlorineSheetResult.Not(why);
        var stabilised = water.Cyanurate is { MilligramsPerLitre: > 0 };
        var split = Split(water.Ph.Value, water.Temperature.Degrees, water.Free.MilligramsPerLitre, water.Cyanurate?.MilligramsPerLitre ?? 0);
        return ChlorineSheetResult.Of(new()
        {
            MilligramsPerLitre = split.Acid,
            Hypochlorite = split.Ion,
            Bound = Math.Max(0, water.Free.MilligramsPerLitre - split.Acid - split.Ion),
            Share = split.Share,
            Constants = stabilised ? ChlorineConstants.OBrien1974 : ChlorineConstants.Morris1966,
            StandardUncertainty = Propagated(water, split.Acid),
            Says = [.. Says(water, stabilised)],
        });
    }

    /// <summary>The sheet for a water that was worked out, after a dose for one; the same figure as on every other page.</summary>
    public static ChlorineSheetResult Of(Speciation water, Disinfectant disinfectant)
    {
        ArgumentNullException.ThrowIfNull(water);
        return Quantity.TryFrom(water.Ph, out Ph ph) && Quantity.TryFrom(water.Temperature, out Celsius temperature) && Quantity.TryFrom(water.FreeChlorine, out FreeChlorine free)
            && Quantity.TryFrom(water.Cyanurate, out CyanuricAcid cyanurate)
            ? Of(new(ph, temperature, free, cyanurate) { Disinfectant = disinfectant })
            : default;
    }

    private static Reason? Unfit(ChlorineWater water) => new InputCheck()
        .Within("ph", water.Ph.Value, Equilibrium.ValidPh, "")
        .And(HoclShare.ValidCelsius.Contains(water.Temperature.Degrees),
            () => Reason.Of("hocl.temperature_outside_range", HoclShare.ValidCelsius.Low, HoclShare.ValidCelsius.High)).Why;

    private static List<Reason> Says(ChlorineWater water, bool stabilised)
    {
        var says = new List<Reason>();
        if (!stabilised && water.Cyanurate is null && water.Disinfectant == Disinfectant.StabilisedChlorine) says.Add(Reason.Of("hocl.cyanurate_not_tested"));
        if (stabilised) says.Add(Reason.Of("hocl.bound_reads_as_free"));
        if (stabilised && Math.Abs(water.Temperature.Degrees - ReferenceCelsius) > NearReference)
            says.Add(Reason.Of(
                "hocl.cyanurate_constants_are_of_25_degrees", water.Temperature.Degrees, 100 * SimplerCyanurate.MoreThanAt25(water.Temperature.Degrees).Value));
        return says;
    }

    private static (double Acid, double Ion, double Share) Split(double ph, double celsius, double free, double cyanurate)
    {
        var present = Math.Max(free, Trace);
        if (cyanurate <= 0)
        {
            var share = HoclShare.Of(Ph.From(ph), Celsius.From(celsius)).Share;
            return (share * free, (1 - share) * free, share);
        }

        var solved = Solve(ph, present, cyanurate);
        var part = free / present;
        return (part * solved.HypochlorousAcid, part * solved.HypochloriteIon, solved.HypochlorousAcid / present);
    }

    private static Speciation Solve(double ph, double free, double cyanurate)
    {
        var water = Background with
        {
            Chlorine = Masses.Moles(free, Masses.Chlorine), Cyanurate = Masses.Moles(cyanurate, Masses.CyanuricAcid),
        };
        var atPh = new Condition(ConditionKind.HydrogenActivity, -Math.Log(10) * ph, FreeAmount.Carbon);
        return Equilibrium.Solve(water, OBrien, ReferenceCelsius, true, atPh, ph, null).Value;
    }

    // GUM: the sensitivity to each test by a small step to both sides.
    private static double? Propagated(ChlorineWater water, double acid)
    {
        if (water.Doubt is not { } u || acid <= 0) return null;
        var (ph, celsius, free, cyanurate) = (water.Ph.Value, water.Temperature.Degrees, water.Free.MilligramsPerLitre, water.Cyanurate?.MilligramsPerLitre ?? 0);
        var byPh = u.Ph * Slope(x => Split(x, celsius, free, cyanurate).Acid, ph, 0.01);
        var byFree = u.FreeChlorine * Slope(x => Split(ph, celsius, x, cyanurate).Acid, free, 0.01 * free);
        var byCyanurate = cyanurate > 0 ? u.Cyanurate * Slope(x => Split(ph, celsius, free, x).Acid, cyanurate, 0.01 * cyanurate) : 0;
        return Math.Sqrt((byPh * byPh) + (byFree * byFree) + (byCyanurate * byCyanurate));
    }

    private static double Slope(Func<double, double> f, double x, double step) => (f(x + step) - f(x - step)) / (2 * step);
}
