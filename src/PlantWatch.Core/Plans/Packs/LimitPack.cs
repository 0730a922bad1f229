using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace PlantWatch.Core.Plans.Packs;

/// <summary>The limits of one authority in one edition. Packs are never merged: a plant picks one, and confirms it row by row with the document in hand.</summary>
/// <param name="Id">Stable key, also the name of its file.</param>
/// <param name="Authority">Who set the limits.</param>
/// <param name="Edition">Which edition of the document, as far as it was seen.</param>
/// <param name="Rows">Its rows in the order of the document.</param>
public sealed record LimitPack(string Id, string Authority, string Edition, ImmutableArray<PackRow> Rows)
{
    /// <summary>True when a newer edition is known to have replaced it; it is shown with that word.</summary>
    public bool Superseded { get; init; }
}

/// <summary>What a row of a pack limits. Bases as the quantity says: chlorine as Cl2, alkalinity and hardness as CaCO3, cyanurate as cyanuric acid.</summary>
public enum PackQuantity
{
    /// <summary>A sentence that no machine can compute; a person reads and confirms it.</summary>
    Sentence = 0,
    /// <summary>pH.</summary>
    Ph,
    /// <summary>ORP in mV, against the row's reference electrode.</summary>
    Orp,
    /// <summary>Water temperature in degC.</summary>
    Temperature,
    /// <summary>Free chlorine in mg/L as Cl2.</summary>
    FreeChlorine,
    /// <summary>Total chlorine in mg/L as Cl2.</summary>
    TotalChlorine,
    /// <summary>Combined chlorine in mg/L as Cl2.</summary>
    CombinedChlorine,
    /// <summary>Combined chlorine divided by free chlorine of the same sample.</summary>
    CombinedPerFree,
    /// <summary>Combined chlorine divided by total chlorine of the same sample.</summary>
    CombinedPerTotal,
    /// <summary>Cyanuric acid in mg/L divided by free chlorine in mg/L as Cl2.</summary>
    CyanuratePerFree,
    /// <summary>Total alkalinity in mg/L as CaCO3.</summary>
    TotalAlkalinity,
    /// <summary>Calcium hardness in mg/L as CaCO3.</summary>
    CalciumHardness,
    /// <summary>Cyanuric acid in mg/L.</summary>
    CyanuricAcid,
    /// <summary>Total dissolved solids in mg/L.</summary>
    DissolvedSolids,
    /// <summary>Saturation index of calcite.</summary>
    SaturationIndex,
    /// <summary>Total bromine in mg/L as Br2.</summary>
    Bromine,
    /// <summary>The bottom must be seen.</summary>
    Clarity,
    /// <summary>Turbidity in NTU.</summary>
    Turbidity,
    /// <summary>Colony count per mL.</summary>
    ColonyCount,
    /// <summary>Escherichia coli per 100 mL.</summary>
    EscherichiaColi,
    /// <summary>Pseudomonas aeruginosa per 100 mL.</summary>
    PseudomonasAeruginosa,
    /// <summary>Legionella per 100 mL.</summary>
    Legionella,
    /// <summary>Conductivity in microsiemens per centimetre.</summary>
    Conductivity,
}

/// <summary>How hard a row is.</summary>
public enum RowGrade
{
    /// <summary>The water should be inside: outside it somebody acts within the hour. Within the test's uncertainty it says "at the limit, repeat".</summary>
    Operating = 0,
    /// <summary>Outside it the pool is closed, whatever the uncertainty of the test.</summary>
    Closure,
    /// <summary>Desirable, not demanded: shown, and never an alarm.</summary>
    Guide,
}

/// <summary>How a row is known.</summary>
public enum RowProvenance
{
    /// <summary>Recalled, not seen: shown to a user only as such.</summary>
    FromMemory = 0,
    /// <summary>Seen in a second-hand text.</summary>
    Secondary,
    /// <summary>Seen in the document or an official page.</summary>
    Published,
}

/// <summary>One row of a pack.</summary>
public sealed record PackRow
{
    /// <summary>Stable key within the pack.</summary>
    public required string Id { get; init; }

    /// <summary>What it limits.</summary>
    public required PackQuantity Quantity { get; init; }

    /// <summary>How hard it is.</summary>
    public RowGrade Grade { get; init; }

    /// <summary>For which pools and waters it holds.</summary>
    public PackCondition When { get; init; } = PackCondition.Always;

    /// <summary>Lowest value; null when it has none.</summary>
    public double? Low { get; init; }

    /// <summary>Highest value; null when it has none.</summary>
    public double? High { get; init; }

    /// <summary>By how much the row raises the lowest value of every other row of its quantity that holds; null for a row that limits by itself.</summary>
    public double? RaisesLowBy { get; init; }

    /// <summary>The authority demands that it is measured. Only asked of what nobody tests by hand, such as ORP; everything else that has a limit is to be tested.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool MustBeMeasured { get; init; }

    /// <summary>What the row says, in this project's words.</summary>
    public required string Says { get; init; }

    /// <summary>Document and clause.</summary>
    public required string Source { get; init; }

    /// <summary>How it is known.</summary>
    public RowProvenance Provenance { get; init; }

    /// <summary>How far it can be trusted, and what was not seen; null when nothing is to be said.</summary>
    public string? Certainty { get; init; }
}
