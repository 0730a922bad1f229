using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>What a probe's own signal says, in constant memory and without any check. The default record is a probe never heard.</summary>
public sealed record SignalHealth
{
    /// <summary>A probe never heard.</summary>
    public static SignalHealth New { get; } = new();

    /// <summary>Standing by the signal alone.</summary>
    public Standing Standing { get; init; }

    /// <summary>Why; empty while good or unknown.</summary>
    public ImmutableArray<Reason> Reasons { get; init; } = [];

    /// <summary>Since when the value has not moved.</summary>
    public Instant SameSince { get; init; }

    /// <summary>Receive time less device time of the newest reading, in seconds; 0 without device time.</summary>
    public double LagSeconds { get; init; }
}
