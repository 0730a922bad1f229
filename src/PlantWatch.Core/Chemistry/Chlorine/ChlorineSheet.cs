using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>The water that hypochlorous acid is worked out for.</summary>
/// <param name="Ph">pH.</param>
/// <param name="Temperature">Water temperature.</param>
/// <param name="Free">Free chlorine by DPD, which reads chlorine on cyanurate as free.</param>
/// <param name="Cyanurate">Cyanuric acid; null when there is none or it was never tested.</param>
public readonly record struct ChlorineWater(Ph Ph, Celsius Temperature, FreeChlorine Free, CyanuricAcid? Cyanurate = null)
{
    /// <summary>What the pool is disinfected with; bromine water has no hypochlorous acid to speak of.</summary>
    public Disinfectant Disinfectant { get; init; }

    /// <summary>Standard uncertainties of the tests; null when they are not to be carried over.</summary>
    public ChlorineDoubt? Doubt { get; init; }
}

/// <summary>Standard uncertainties of the tests behind a figure of hypochlorous acid.</summary>
/// <param name="Ph">Of pH.</param>
/// <param name="FreeChlorine">Of free chlorine, mg/L.</param>
/// <param name="Cyanurate">Of cyanuric acid, mg/L.</param>
public readonly record struct ChlorineDoubt(double Ph, double FreeChlorine, double Cyanurate);

/// <summary>Whose constants a figure stands on.</summary>
public enum ChlorineConstants
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary>Morris (1966), over temperature; no cyanurate.</summary>
    Morris1966,
    /// <summary>O'Brien, Morris and Butler (1974), all species with cyanurate, 25 degC and zero ionic strength only.</summary>
    OBrien1974,
}

/// <summary>How the free chlorine of a water is shared out.</summary>
public sealed record ChlorineSheet
{
    /// <summary>Hypochlorous acid, mg/L as Cl2.</summary>
    public required double MilligramsPerLitre { get; init; }

    /// <summary>Hypochlorite ion, mg/L as Cl2.</summary>
    public required double Hypochlorite { get; init; }

    /// <summary>Chlorine held by cyanurate, mg/L as Cl2: a reserve that does not disinfect.</summary>
    public required double Bound { get; init; }

    /// <summary>Hypochlorous acid as a share of free chlorine, 0 to 1; also of a water without chlorine, as the limit.</summary>
    public required double Share { get; init; }

    /// <summary>Whose constants.</summary>
    public required ChlorineConstants Constants { get; init; }

    /// <summary>Standard uncertainty of the hypochlorous acid by its tests, mg/L; null when those were not given, or there is no chlorine. The model adds to it.</summary>
    public double? StandardUncertainty { get; init; }

    /// <summary>What has to be said beside it.</summary>
    public ImmutableArray<Reason> Says { get; init; } = [];
}

/// <summary>A sheet, or why there is none. The default was never computed.</summary>
public readonly record struct ChlorineSheetResult
{
    private readonly ChlorineSheet? _sheet;

    private ChlorineSheetResult(ChlorineSheet? sheet, Reason? why) => (_sheet, Why) = (sheet, why);

    /// <summary>True when there is a sheet.</summary>
    public bool IsKnown => _sheet is not null;

    /// <summary>Why there is none.</summary>
    public Reason? Why { get; }

    /// <summary>The sheet.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public ChlorineSheet Value => _sheet ?? throw new InvalidOperationException($"no sheet: {Why?.Code ?? "never computed"}");

    internal static ChlorineSheetResult Of(ChlorineSheet sheet) => new(sheet, null);

    internal static ChlorineSheetResult Not(Reason why) => new(null, why);
}
