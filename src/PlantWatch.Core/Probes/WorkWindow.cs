using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>A time in which a person works on a probe: its readings are no pool water, and nothing is judged by them. The default is no such time.</summary>
/// <param name="Id">UUIDv7 made by who begins it.</param>
/// <param name="By">Who works.</param>
/// <param name="Since">From when on.</param>
/// <param name="Until">Up to when: its end, or the moment at which it ends by itself.</param>
/// <param name="Ended">True once its end stands in the record.</param>
/// <param name="UnwatchedSince">Since when the pool's water was not seen: the beginning of the first of several such times that follow each other; never means <paramref name="Since"/>.</param>
public readonly record struct WorkWindow(Guid Id, string? By, Instant Since, Instant Until, bool Ended, Instant UnwatchedSince = default)
{
    // Between two times of work the probe has to stand in its cell for so long that its readings count again: ten minutes, common practice for an electrode to settle.
    private static readonly TimeSpan Settles = TimeSpan.FromMinutes(10);

    /// <summary>It ends by itself after half an hour, so that a forgotten one never blinds the plant for long. Whoever needs longer says so again.</summary>
    public static TimeSpan Longest { get; } = TimeSpan.FromMinutes(30);

    /// <summary>True when a reading of this time was taken while the probe was worked on.</summary>
    public bool Holds(Instant at) => Since.IsSet && at >= Since && at < Until;

    /// <summary>Since when the water was not seen by this probe, if work begins now: work that follows at once on work goes on with it.</summary>
    internal Instant UnwatchedBy(Instant begins) => Since.IsSet && begins - Until < Settles ? Instant.Earlier(UnwatchedSince.IsSet ? UnwatchedSince : Since, begins) : begins;

    /// <summary>True while the end is neither said nor written.</summary>
    public bool IsOpen => Since.IsSet && !Ended;
}

/// <summary>What a person's work on a probe came to.</summary>
public enum WorkChange
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>A person began.</summary>
    Begun,
    /// <summary>The person ended it.</summary>
    Ended,
    /// <summary>It ended by itself.</summary>
    RanOut,
    /// <summary>A calibration was signed, which ends it.</summary>
    SheetSigned,
}
