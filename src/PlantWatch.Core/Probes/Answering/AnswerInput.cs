using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes.Answering;

/// <summary>All that the answer for one probe is made from.</summary>
public sealed record AnswerInput
{
    /// <summary>The probe.</summary>
    public required ProbePlan Probe { get; init; }

    /// <summary>What its signal says.</summary>
    public required SignalHealth Signal { get; init; }

    /// <summary>What the checks say.</summary>
    public required ProbeTrust Trust { get; init; }

    /// <summary>What calibration the checks speak for.</summary>
    public required CalibrationAdvice Advice { get; init; }

    /// <summary>A reading has arrived at least once.</summary>
    public bool Heard { get; init; }

    /// <summary>It has not spoken for longer than it should.</summary>
    public bool Silent { get; init; }

    /// <summary>A proposed calibration waits for its decision.</summary>
    public bool Waiting { get; init; }

    /// <summary>The time the answer is for.</summary>
    public required Instant Now { get; init; }
}
