using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>
/// All that the checks up to a time have taught about a probe: where the fold over later ones starts. Without one it starts from nothing.
/// </summary>
public sealed record TrustBase
{
    /// <summary>Sample time of the newest check in it.</summary>
    public Instant At { get; init; }

    /// <summary>Checks taken in since the probe was last worked on.</summary>
    public int Taken { get; init; }

    /// <summary>Sample time of the first of these.</summary>
    public Instant FirstTaken { get; init; }

    /// <summary>The standing then.</summary>
    public Standing Standing { get; init; }

    /// <summary>Squares of what the checks were off by, in units of what was expected: how many, and their sum.</summary>
    public ImmutableArray<double> Scatter { get; init; } = [];

    /// <summary>How far the pool itself wanders, for a probe that follows a line: count, mean and squares.</summary>
    public ImmutableArray<double> Spread { get; init; } = [];

    /// <summary>The newest test and the newest raw reading.</summary>
    public ImmutableArray<double> Newest { get; init; } = [];

    /// <summary>Whether the newest test was made with reagent.</summary>
    public bool ByReagent { get; init; }

    /// <summary>When the newest decision was taken that it knows of; later ones are applied at its time.</summary>
    public Instant DecidedUntil { get; init; }

    /// <summary>For each account a bit for each newest pair, the newest lowest: its test is not believed.</summary>
    public ImmutableArray<ulong> Doubts { get; init; } = [];

    /// <summary>The accounts of the bank, one after the other: each its weight, days of drift, kind, and those of its twenty numbers that are not 0. Of a stable probe and sound tests that is less than half.</summary>
    public ImmutableArray<double> Accounts { get; init; } = [];
}

/// <summary>A leap of the signal that stayed, and that no water explains.</summary>
/// <param name="At">When.</param>
/// <param name="By">How far, signed, in the measurand's unit, raw.</param>
public readonly record struct SignalLeap(Instant At, double By);
