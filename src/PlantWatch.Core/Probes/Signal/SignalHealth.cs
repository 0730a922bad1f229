using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

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

    /// <summary>Receive time less device time in seconds, the least of the recent ones, so that a late delivery is not taken for a wrong clock; 0 without device time.</summary>
    public double LagSeconds { get; init; }

    /// <summary>Measured time of the newest reading.</summary>
    public Instant LastAt { get; init; }

    /// <summary>Its raw value.</summary>
    public double LastRaw { get; init; }

    /// <summary>The last readings that were not doubted.</summary>
    public SignalTail Tail { get; init; }

    /// <summary>A leap that nothing confirmed yet; null when there is none.</summary>
    public LeapTrial? Trial { get; init; }

    /// <summary>True while the newest readings have leapt away and the next ones have to say whether they stay.</summary>
    public bool LastDoubted => Trial is not null;

    /// <summary>How long the value usually stays the same, in seconds: a running mean.</summary>
    public double UsuallySameSeconds { get; init; }

    /// <summary>The longest it stayed the same and moved again, in seconds.</summary>
    public double LongestSameSeconds { get; init; }

    /// <summary>Changes of value seen, counted up to what makes <see cref="UsuallySameSeconds"/> worth believing.</summary>
    public int Changes { get; init; }

    /// <summary>How far the signal scatters from reading to reading.</summary>
    public SignalNoise Noise { get; init; }

    /// <summary>The block under way.</summary>
    public SignalBlock Block { get; init; }

    /// <summary>How the signal wanders from block to block.</summary>
    public SignalWander Wander { get; init; } = SignalWander.New;

    /// <summary>When the cell last had no flow.</summary>
    public Instant NoFlowAt { get; init; }

    /// <summary>The newest moment at which the signal could not be watched: standing or flushed cell, gap, a leap left undecided. A leap since then would have been seen.</summary>
    public Instant BlindAt { get; init; }

    /// <summary>When the newest confirmed leap happened: the value changed within a reading or two by more than water can, and stayed. Known a quarter of an hour later.</summary>
    public Instant LeaptAt { get; init; }

    /// <summary>How far it leapt, signed, in the measurand's unit; meaningful when <see cref="LeaptAt"/> is set.</summary>
    public double LeaptBy { get; init; }

    /// <summary>Apparent time constant of a probe that has become slow, in minutes; unknown while healthy or not known.</summary>
    public Estimate Response => Wander.Pace.Response;

    /// <summary>Since when a pH probe has sat at the isopotential pH 7, having leapt there; never otherwise.</summary>
    public Instant AtSevenSince { get; init; }

    /// <summary>Spikes of late: each adds 1, and the count halves within half an hour.</summary>
    public double Spikes { get; init; }

    /// <summary>Takes the next reading in. Cheap enough for every reading; one that is not newer than the last changes nothing.</summary>
    /// <param name="probe">The probe.</param>
    /// <param name="before">Health before.</param>
    /// <param name="measuredAt">Measured time.</param>
    /// <param name="raw">Raw value, finite.</param>
    /// <param name="flow">Whether the sample cell has flow; null when nothing tells.</param>
    /// <param name="lagSeconds">Receive time less device time; 0 without device time.</param>
    public static SignalHealth Next(ProbePlan probe, SignalHealth before, Instant measuredAt, double raw, bool? flow, double lagSeconds = 0) =>
        measuredAt <= before.LastAt ? before : SignalWatch.Next(probe, before, measuredAt, raw, flow, lagSeconds);

    /// <summary>Lets time pass without a reading: after three times the usual interval, and at least two minutes, the probe is silent.</summary>
    /// <param name="probe">The probe.</param>
    /// <param name="before">Health before.</param>
    /// <param name="watermark">The time up to which readings have been taken.</param>
    public static SignalHealth Wait(ProbePlan probe, SignalHealth before, Instant watermark) => SignalWatch.Wait(probe, before, watermark);
}
