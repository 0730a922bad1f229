using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>Where a water may be after a dose, and how far one go may move it.</summary>
/// <remarks>
/// The steps are common practice. A dose may not leave a band, nor go further out of one, by more than a test can tell (<see cref="Slack"/>): else pH at its limit would forbid the chlorine that the water lacks. The default saturation band is the tolerance of the handbook.
/// </remarks>
public sealed record DoseLimits
{
    /// <summary>Half the width of the saturation band: from +0.5 on calcium carbonate clouds the water, below -0.5 the water dissolves it.</summary>
    public const double MostSaturation = 0.5;

    /// <summary>Most that one go may move pH.</summary>
    public const double MostPhStep = 0.3;

    /// <summary>Bands by figure; one that is missing is not limited.</summary>
    public required ImmutableArray<DoseBand> Bands { get; init; }

    /// <summary>Most that one go may raise free chlorine, in mg/L, where an incident asks for more than the usual; null for the usual.</summary>
    public double? ChlorineStep { get; init; }

    /// <summary>Most that one go may move a figure here; null without.</summary>
    public double? Step(Measurand measurand) => measurand == Measurand.FreeChlorine ? ChlorineStep ?? MostStep(measurand) : MostStep(measurand);

    /// <summary>The band of a figure; null where none holds.</summary>
    public DoseBand? Band(Measurand measurand)
    {
        foreach (var band in Bands)
            if (band.Measurand == measurand) return band;
        return null;
    }

    /// <summary>Most that one go may move a figure, in its unit (common practice): what the water and the next test can follow.</summary>
    public static double? MostStep(Measurand measurand) => measurand switch
    {
        Measurand.Ph => MostPhStep,
        Measurand.FreeChlorine => 3,
        Measurand.TotalAlkalinity => 30,
        Measurand.CalciumHardness => 75,
        Measurand.CyanuricAcid => 20,
        Measurand.DissolvedSolids => 1000,
        _ => null,
    };

    /// <summary>What a test cannot tell apart (common practice): so much further out is not further out.</summary>
    public static double Slack(Measurand measurand) => measurand switch
    {
        Measurand.Ph => 0.05,
        Measurand.FreeChlorine => 0.1,
        _ => 5,
    };
}

/// <summary>A band that a dose has to keep.</summary>
/// <param name="Measurand">The figure.</param>
/// <param name="Low">Lowest; null without.</param>
/// <param name="High">Highest; null without.</param>
public readonly record struct DoseBand(Measurand Measurand, double? Low, double? High);
