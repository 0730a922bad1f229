using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>What a hold is counted in.</summary>
public enum HoldBasis
{
    /// <summary>There is nothing to count.</summary>
    None = 0,
    /// <summary>Contact time in mg·min/L: any residual counts by its height.</summary>
    ContactTime,
    /// <summary>Minutes at a residual not under the one named.</summary>
    Minutes,
    /// <summary>Nothing may be counted: the water must be diluted first.</summary>
    DiluteFirst,
}

/// <summary>A residual and how long to hold it.</summary>
/// <param name="MilligramsPerLitre">Free chlorine, mg/L as Cl2.</param>
/// <param name="Minutes">The hold at it.</param>
/// <param name="Provenance">How far the pair can be relied on.</param>
public readonly record struct HoldLevel(double MilligramsPerLitre, double Minutes, Provenance Provenance);

/// <summary>One row of an authority's table: for what, in which water, how much for how long, and who says so.</summary>
public sealed record HoldFigure
{
    /// <summary>Who says so.</summary>
    public required IncidentAuthority Authority { get; init; }

    /// <summary>For which incidents.</summary>
    public required ImmutableArray<IncidentKind> Kinds { get; init; }

    /// <summary>What is counted.</summary>
    public required HoldBasis Basis { get; init; }

    /// <summary>Cyanurate in mg/L that the row is for.</summary>
    public ValueRange Cyanurate { get; init; }

    /// <summary>False where the source names no cyanurate: the row is then taken for water without it.</summary>
    public bool CyanurateNamed { get; init; }

    /// <summary>Residual in mg/L that must be measured through the pool before the clock starts.</summary>
    public double StartAt { get; init; }

    /// <summary>Residual in mg/L below which nothing counts.</summary>
    public double Floor { get; init; }

    /// <summary>What must be reached: mg·min/L, or minutes at the first of <see cref="Levels"/>.</summary>
    public double Required { get; init; }

    /// <summary>Residuals the source names with their times, rising.</summary>
    public ImmutableArray<HoldLevel> Levels { get; init; } = [];

    /// <summary>Lowest pH, where the source names one.</summary>
    public double? LowestPh { get; init; }

    /// <summary>Highest pH.</summary>
    public double HighestPh { get; init; } = IncidentTables.HighestPh;

    /// <summary>Lowest water temperature in degC.</summary>
    public double LowestCelsius { get; init; } = IncidentTables.LowestCelsius;

    /// <summary>False where the source names no pH and temperature: those of the contact times are used.</summary>
    public bool ConditionsNamed { get; init; }

    /// <summary>Document and clause.</summary>
    public required string Source { get; init; }

    /// <summary>How far the row can be relied on.</summary>
    public required Provenance Provenance { get; init; }

    /// <summary>Newer evidence took its place: it is shown and never counted by.</summary>
    public bool Superseded { get; init; }

    /// <summary>Code of a remark that stands beside it; null for none.</summary>
    public string? Remark { get; init; }

    /// <summary>Longest time between two counted tests. Sources ask for tests "the whole time" and name no interval: half an hour in a short hold and an hour in a long one are common practice.</summary>
    public TimeSpan LongestGap => TimeSpan.FromMinutes(Required <= 60 ? 30 : 60);

    /// <summary>What a minute at a residual is worth in the unit of <see cref="Required"/>; 0 under the floor.</summary>
    public double WorthOfMinute(double milligramsPerLitre)
    {
        if (milligramsPerLitre < Floor) return 0;
        if (Basis == HoldBasis.ContactTime) return milligramsPerLitre;
        if (Basis != HoldBasis.Minutes || Levels.IsEmpty) return 0;
        var minutes = double.PositiveInfinity;
        // The row at or below what was measured, never a figure between two rows that nobody has published.
        foreach (var level in Levels)
            if (level.MilligramsPerLitre <= milligramsPerLitre) minutes = level.Minutes;
        return Required / minutes;
    }
}
