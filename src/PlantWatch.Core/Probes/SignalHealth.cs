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

    /// <summary>Its raw value; of a leap that nothing confirmed yet, the value before it.</summary>
    public double LastRaw { get; init; }

    /// <summary>True when the newest reading leapt away and the next one has to say whether it was a spike.</summary>
    public bool LastDoubted { get; init; }

    /// <summary>The value that leapt away; meaningful while <see cref="LastDoubted"/>.</summary>
    public double LeapRaw { get; init; }

    /// <summary>How long the value usually stays the same, in seconds: a running mean.</summary>
    public double UsuallySameSeconds { get; init; }

    /// <summary>The longest it stayed the same and moved again, in seconds.</summary>
    public double LongestSameSeconds { get; init; }

    /// <summary>Changes of value seen, counted up to what makes <see cref="UsuallySameSeconds"/> worth believing.</summary>
    public int Changes { get; init; }

    /// <summary>How far the value wanders within some hours, and whether it still does.</summary>
    public SignalSpan Span { get; init; }

    /// <summary>When the cell last had no flow.</summary>
    public Instant NoFlowAt { get; init; }

    /// <summary>When a leap was last confirmed.</summary>
    public Instant LeaptAt { get; init; }

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

/// <summary>How far a signal wanders, in blocks of some hours. The default has seen nothing.</summary>
/// <param name="Since">Start of the block under way.</param>
/// <param name="Low">Lowest raw value in it.</param>
/// <param name="High">Highest raw value in it.</param>
/// <param name="Usual">How far blocks usually span: a running mean that flat blocks do not enter.</param>
/// <param name="Blocks">Blocks it rests on, counted up to what is enough.</param>
/// <param name="Flat">Flat blocks in a row, up to now.</param>
public readonly record struct SignalSpan(Instant Since, double Low, double High, double Usual, int Blocks, int Flat);
