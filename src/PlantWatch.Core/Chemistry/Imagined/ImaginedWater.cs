using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>A water that a person sets by hand to see what would be. What is null is not known, and what needs it is not given.</summary>
/// <param name="Ph">pH.</param>
/// <param name="Temperature">Water temperature.</param>
/// <param name="Alkalinity">Total alkalinity, cyanurate included: without it nothing can be said of a dose.</param>
public sealed record ImaginedWater(Ph Ph, Celsius Temperature, Alkalinity Alkalinity)
{
    /// <summary>Calcium hardness; without it there is no saturation index.</summary>
    public CalciumHardness? Calcium { get; init; }

    /// <summary>Total dissolved solids; without them there is no saturation index.</summary>
    public DissolvedSolids? Solids { get; init; }

    /// <summary>Cyanuric acid; null counts as none.</summary>
    public CyanuricAcid? Cyanurate { get; init; }

    /// <summary>Free chlorine; without it there is no amount of hypochlorous acid, only its share.</summary>
    public FreeChlorine? FreeChlorine { get; init; }

    /// <summary>What the pool is disinfected with.</summary>
    public Disinfectant Disinfectant { get; init; }

    /// <summary>True when the index can be had.</summary>
    public bool HasIndex => Calcium is not null && Solids is not null;

    /// <summary>The water worked out, closed to the air.</summary>
    public EquilibriumResult Speciate() => Equilibrium.Speciate(new Water(Ph, Temperature, Alkalinity, Calcium ?? CalciumHardness.From(0), Solids ?? DissolvedSolids.From(0))
    {
        Cyanurate = Cyanurate, FreeChlorine = FreeChlorine,
    });

    /// <summary>How the free chlorine of this water is shared out; not known where the share depends on an amount that is not.</summary>
    public ChlorineSheetResult Split() => FreeChlorine is null && Cyanurate is { MilligramsPerLitre: > 0 }
        ? default
        : ChlorineSplit.Of(new ChlorineWater(Ph, Temperature, FreeChlorine ?? Quantities.FreeChlorine.From(0), Cyanurate) { Disinfectant = Disinfectant });

    /// <summary>The figures of a water that came from this one: those that rest on what is not known are left out.</summary>
    /// <param name="speciation">This water, or what a dose made of it.</param>
    public WaterFigures FiguresOf(Speciation speciation)
    {
        ArgumentNullException.ThrowIfNull(speciation);
        var split = Became(speciation) is { } water ? water.Split() : default;
        return new(
            speciation.Ph, speciation.TotalAlkalinity, Calcium is null ? null : speciation.CalciumHardness, Solids is null ? null : speciation.DissolvedSolids, speciation.Cyanurate,
            FreeChlorine is null ? null : speciation.FreeChlorine, HasIndex && double.IsFinite(speciation.SaturationIndex) ? speciation.SaturationIndex : null,
            FreeChlorine is not null && split.IsKnown ? split.Value.MilligramsPerLitre : null, split.IsKnown ? split.Value.Share : null);
    }

    /// <summary>This water with the figures of what a dose made of it; what was not known stays so. Null when it is beyond what a pool can be.</summary>
    /// <param name="after">What it became.</param>
    public ImaginedWater? Became(Speciation after)
    {
        ArgumentNullException.ThrowIfNull(after);
        return Quantity.TryFrom(after.Ph, out Ph ph) && Quantity.TryFrom(after.TotalAlkalinity, out Alkalinity alkalinity)
            ? new(ph, Temperature, alkalinity)
            {
                Calcium = Calcium is null ? null : Now<CalciumHardness>(after.CalciumHardness), Solids = Solids is null ? null : Now<DissolvedSolids>(after.DissolvedSolids),
                Cyanurate = Now<CyanuricAcid>(after.Cyanurate), Disinfectant = Disinfectant, FreeChlorine = FreeChlorine is null ? null : Now<FreeChlorine>(after.FreeChlorine),
            }
            : null;
    }

    private static T? Now<T>(double value) where T : struct, IQuantity<T> => Quantity.TryFrom(value, out T quantity) ? quantity : null;
}
