using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plans.Packs;

/// <summary>For which pools and waters a row holds: every part that is stated must be so. Nothing stated holds always.</summary>
public sealed record PackCondition
{
    /// <summary>Holds for every pool.</summary>
    public static PackCondition Always { get; } = new();

    /// <summary>Pool kinds; empty means all.</summary>
    public ImmutableArray<PoolKind> Kinds { get; init; } = [];

    /// <summary>Pool kinds it does not hold for.</summary>
    public ImmutableArray<PoolKind> NotKinds { get; init; } = [];

    /// <summary>Indoor or outdoor; null means both.</summary>
    public Setting? Setting { get; init; }

    /// <summary>Disinfectants; empty means all.</summary>
    public ImmutableArray<Disinfectant> Disinfectants { get; init; } = [];

    /// <summary>A second treatment the pool must have; null means any or none.</summary>
    public SecondaryTreatment? Secondary { get; init; }

    /// <summary>Whether cyanurate is used; null means either.</summary>
    public bool? CyanurateUsed { get; init; }

    /// <summary>Cyanurate from this, in mg/L, included.</summary>
    public double? CyanurateFrom { get; init; }

    /// <summary>Cyanurate below this, in mg/L.</summary>
    public double? CyanurateBelow { get; init; }

    /// <summary>pH above this.</summary>
    public double? PhAbove { get; init; }

    /// <summary>pH up to this, included.</summary>
    public double? PhUpTo { get; init; }

    /// <summary>Temperature above this, in degC.</summary>
    public double? TemperatureAbove { get; init; }

    /// <summary>Temperature up to this, included, in degC.</summary>
    public double? TemperatureUpTo { get; init; }

    /// <summary>For an ORP row: the reference electrode its figures are against.</summary>
    public string? ReferenceElectrode { get; init; }

    /// <summary>It asks what the water is like, so that it may change from one hour to the next.</summary>
    internal bool AsksWater => CyanurateUsed is not null || CyanurateFrom is not null || CyanurateBelow is not null || PhAbove is not null || PhUpTo is not null || TemperatureAbove is not null || TemperatureUpTo is not null;

    /// <summary>What a person has to judge, since the plant file does not say it, such as the flocculant or sea water; null when the row computes by itself.</summary>
    public string? ToJudge { get; init; }
}

/// <summary>What is known of a pool's water when conditions are asked. Null is not known, and never zero.</summary>
/// <param name="Ph">pH that is believed.</param>
/// <param name="Cyanurate">Cyanuric acid in mg/L.</param>
/// <param name="Temperature">Water temperature.</param>
public readonly record struct WaterFacts(Ph? Ph, CyanuricAcid? Cyanurate, Celsius? Temperature);
