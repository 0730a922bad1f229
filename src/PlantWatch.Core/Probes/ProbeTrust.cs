using System.Collections.Immutable;
using System.Runtime.InteropServices;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>What the manual checks say of a probe: the paired checks it rests on and the estimate folded from them.</summary>
public sealed record ProbeTrust
{
    /// <summary>Paired checks kept one by one, so that one arriving out of order can be refolded in its place; what was before is in <see cref="Base"/>.</summary>
    public const int Kept = 24;

    /// <summary>No check yet.</summary>
    public static ProbeTrust New { get; } = new();

    /// <summary>Standing by the checks alone.</summary>
    public Standing Standing { get; init; }

    /// <summary>Why; most important first.</summary>
    public ImmutableArray<Reason> Reasons { get; init; } = [];

    /// <summary>What the probe reads less what it should; unknown before the first check that could be compared.</summary>
    public Estimate Bias { get; init; }

    /// <summary>How fast the bias drifts, in the measurand's unit a day; unknown before the second check.</summary>
    public Estimate Drift { get; init; }

    /// <summary>Sensitivity of a pH probe as a share of what it should be, about pH 7: 1 is 100 %. Unknown for other probes and before the second check.</summary>
    public Estimate Slope { get; init; }

    /// <summary>What the newest tests read more than they should, while a bad lot of reagent or a wrong instrument is the likeliest account; unknown otherwise.</summary>
    public Estimate TestOff { get; init; }

    /// <summary>Newest verdict.</summary>
    public Verdict Verdict { get; init; }

    /// <summary>When it was given, by sample time.</summary>
    public Instant JudgedAt { get; init; }

    /// <summary>Paired checks in sample-time order, the newest <see cref="Kept"/>.</summary>
    public ImmutableArray<PairedCheck> Pairs { get; init; } = [];

    /// <summary>What older checks taught; null while all are kept.</summary>
    public TrustBase? Base { get; init; }

    /// <summary>The same right after the newest pair, so that the next one goes on from there; null before the first.</summary>
    public TrustBase? Head { get; init; }

    /// <summary>Leaps of the signal since the base.</summary>
    public ImmutableArray<SignalLeap> Leaps { get; init; } = [];

    /// <summary>Checks taken into the estimate since the probe was last serviced or adjusted.</summary>
    public int Taken { get; init; }

    /// <summary>The pool's own ORP line, once learned; null for other probes and while learning.</summary>
    public LearnedLine? Line { get; init; }
}

/// <summary>A check paired with what the probe read then.</summary>
/// <param name="CheckId">The check.</param>
/// <param name="SampledAt">Sample time.</param>
/// <param name="Raw">What the probe read, raw, with the uncertainty of the pairing.</param>
/// <param name="Test">What the test says it should have read, with the method's uncertainty. For an ORP probe log10 of hypochlorous acid in mg/L as Cl2, by the test.</param>
/// <param name="Doubted">Set aside as a wild check; not part of the estimate until a repeat confirms it.</param>
/// <param name="Shared">The part of the test's standard uncertainty that all tests of this instrument and lot have in common.</param>
/// <param name="Suspect">The result was already unlikely by itself.</param>
/// <param name="ByReagent">Tested with a reagent, whose lot may be bad, and not with a meter.</param>
/// <param name="WatchedSince">Since when the probe's signal was followed without a break, so that a leap of it would have been seen; never when it was not.</param>
// Two dozen are kept for every probe, side by side and without gaps.
[StructLayout(LayoutKind.Auto)]
public readonly record struct PairedCheck(
    Guid CheckId, Instant SampledAt, Estimate Raw, Estimate Test, bool Doubted, double Shared = 0, bool Suspect = false, bool ByReagent = true, Instant WatchedSince = default)
{
    /// <summary>Standard deviation of what differs from one test to the next.</summary>
    internal double TestScatter => Math.Sqrt(Math.Max(0, (Test.StandardUncertainty * Test.StandardUncertainty) - (Shared * Shared)));
}

/// <summary>What ORP this pool shows at a given hypochlorous acid: mV = level + slope x (log10[HOCl, mg/L as Cl2] - reference). This pool's own, never another's.</summary>
/// <param name="Reference">The log10 the level is given at.</param>
/// <param name="Level">mV there.</param>
/// <param name="Slope">mV a decade.</param>
public sealed record LearnedLine(double Reference, Estimate Level, Estimate Slope);
