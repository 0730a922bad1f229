using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>What a check says of a probe.</summary>
public enum Verdict
{
    /// <summary>The two cannot be compared, and the reasons say why.</summary>
    NotComparable = 0,
    /// <summary>They agree within both uncertainties.</summary>
    Agrees,
    /// <summary>The probe has drifted from the tests.</summary>
    ProbeDrifts,
    /// <summary>This one test stands alone against the probe and the earlier tests: repeat it.</summary>
    CheckSuspect,
    /// <summary>Too few checks yet to judge by (ORP learns its pool's line first).</summary>
    Learning,
}

/// <summary>What one check says of one probe, and why. Kept for ever.</summary>
/// <param name="CheckId">The check.</param>
/// <param name="ProbeId">The probe.</param>
/// <param name="Measurand">The quantity compared.</param>
/// <param name="Verdict">The answer.</param>
/// <param name="Probe">What the probe read at the sample time, corrected, with its uncertainty; unknown when not comparable.</param>
/// <param name="Test">What the test says it should have read, with its uncertainty; unknown when not comparable.</param>
/// <param name="Bias">The estimate after this check of what the probe reads less what it should; unknown until there is one.</param>
/// <param name="Standing">The probe's standing after this check, by the checks alone.</param>
/// <param name="Reasons">Why, most important first; never empty.</param>
public sealed record Judgement(
    Guid CheckId, string ProbeId, Measurand Measurand, Verdict Verdict,
    Estimate Probe, Estimate Test, Estimate Bias, Standing Standing, ImmutableArray<Reason> Reasons)
{
    /// <summary>How fast the bias drifts by this check and those before, in the measurand's unit a day; unknown until there is an estimate.</summary>
    public Estimate Drift { get; init; }
}
