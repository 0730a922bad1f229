using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plans;

/// <summary>How an instrument tests. The default is by the light that a colour takes away.</summary>
public enum InstrumentKind
{
    /// <summary>Photometer.</summary>
    Photometer = 0,
    /// <summary>Visual comparator, held against its own colour standards.</summary>
    Comparator,
    /// <summary>Meter or thermometer in the hand.</summary>
    Meter,
}

/// <summary>An instrument that the plant tests with, and how often it is held against a standard.</summary>
public sealed record InstrumentPlan
{
    /// <summary>Once a month (common practice; the maker's papers come first).</summary>
    public static TimeSpan UsualEvery { get; } = TimeSpan.FromDays(31);

    /// <summary>Key in the plant file.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>How it tests.</summary>
    public InstrumentKind Kind { get; init; }

    /// <summary>What is tested with it.</summary>
    public ImmutableArray<Measurand> Tests { get; init; } = [];

    /// <summary>Longest time between two verifications.</summary>
    public TimeSpan Every { get; init; } = UsualEvery;
}
