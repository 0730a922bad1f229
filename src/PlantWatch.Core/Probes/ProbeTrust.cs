using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>What the manual checks say of a probe: the paired checks it rests on and the estimate folded from them.</summary>
public sealed record ProbeTrust
{
    /// <summary>Paired checks kept, so that one arriving out of order can be refolded in its place.</summary>
    public const int Kept = 200;

    /// <summary>No check yet.</summary>
    public static ProbeTrust New { get; } = new();

    /// <summary>Standing by the checks alone.</summary>
    public Standing Standing { get; init; }

    /// <summary>Why; most important first.</summary>
    public ImmutableArray<Reason> Reasons { get; init; } = [];

    /// <summary>What the probe reads less what it should; unknown before the first check that could be compared.</summary>
    public Estimate Bias { get; init; }

    /// <summary>Newest verdict.</summary>
    public Verdict Verdict { get; init; }

    /// <summary>When it was given, by sample time.</summary>
    public Instant JudgedAt { get; init; }

    /// <summary>Paired checks in sample-time order, the newest <see cref="Kept"/>.</summary>
    public ImmutableArray<PairedCheck> Pairs { get; init; } = [];
}

/// <summary>A check paired with what the probe read then.</summary>
/// <param name="CheckId">The check.</param>
/// <param name="SampledAt">Sample time.</param>
/// <param name="Raw">What the probe read, raw, with the uncertainty of the pairing.</param>
/// <param name="Test">What the test says it should have read, with the method's uncertainty.</param>
/// <param name="Doubted">Set aside as a wild check; not part of the estimate until a repeat confirms it.</param>
public sealed record PairedCheck(Guid CheckId, Instant SampledAt, Estimate Raw, Estimate Test, bool Doubted);
