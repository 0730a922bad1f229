using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>One probe as the story knows it.</summary>
public sealed record StoryProbe
{
    /// <summary>The probe.</summary>
    public required ProbePlan Plan { get; init; }

    /// <summary>What its signal says.</summary>
    public SignalHealth Signal { get; init; } = SignalHealth.New;

    /// <summary>What the checks say.</summary>
    public ProbeTrust Trust { get; init; } = ProbeTrust.New;

    /// <summary>What it read of the sample, corrected; unknown when the two could not be compared.</summary>
    public Estimate Read { get; init; }

    /// <summary>What it read of the sample as received, for a panel to be held against; unknown when not comparable.</summary>
    public Estimate Received { get; init; }

    /// <summary>Why the two could not be compared; null when they were, or nobody said.</summary>
    public Reason? WhyNot { get; init; }

    /// <summary>What the panel showed beside the sample; null when it was not read.</summary>
    public double? Panel { get; init; }

    /// <summary>True when the checks call the probe wrong.</summary>
    public bool IsFlagged => Trust.Standing is Standing.MaintenanceRequired or Standing.OutOfSpecification;

    /// <summary>The drift the checks found, unit a day: the estimate tells it for a drift, or it exceeds its uncertainty at k = 2. Null otherwise.</summary>
    internal Estimate? FoundDrift =>
        Trust.Drift is { IsKnown: true } drift && (Math.Abs(drift.Value) > drift.Expanded || (!Trust.Reasons.IsDefault && Trust.Reasons.Any(reason => reason.Code is "trust.drifting" or "trust.drifting_rate_open"))) ? drift : null;

    /// <summary>True when the signal asks for maintenance for its slow response alone.</summary>
    internal bool IsOnlySlow => Signal is { Standing: Standing.MaintenanceRequired, Response.IsKnown: true, Reasons: [{ Code: "signal.slow" }] };

    /// <summary>The leap that counts against the probe: one of the last day, or an older one that its checks have not taken back.</summary>
    internal SignalLeap? Leap(Instant now)
    {
        if (Signal.LeaptAt.IsSet && now - Signal.LeaptAt < LeapCounts) return new(Signal.LeaptAt, Signal.LeaptBy);
        return Trust.Leaps is [.., var leap] && leap.At <= now && IsFlagged && (!Trust.Bias.IsKnown || Trust.Bias.Value / leap.By > 0.5) ? leap : null;
    }

    private static readonly TimeSpan LeapCounts = TimeSpan.FromHours(24);
}
