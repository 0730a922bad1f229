using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>A time in which a filter is backwashed: what the circuit's flow and pressure say is not of the pool. The default is no such time.</summary>
/// <param name="Id">Id given by whoever began it.</param>
/// <param name="By">Who began it.</param>
/// <param name="Since">From when.</param>
/// <param name="Until">Until when: its end once it is over, and some minutes more after a wash; the latest one before.</param>
/// <param name="Ended">A wash was noted, a person said that it is over, or its time ran out.</param>
public readonly record struct BackwashWindow(Guid Id, string? By, Instant Since, Instant Until, bool Ended)
{
    /// <summary>Longest time: three minutes of wash and as much of rinse, valves to be turned, a second bed after the first (common practice). What stands after that is a fault.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromMinutes(30);

    /// <summary>After a noted wash flow, pressure and sample cells come back within minutes (common practice); until then they call nobody either.</summary>
    public static readonly TimeSpan Settles = TimeSpan.FromMinutes(5);

    /// <summary>How much of it may silence, from its beginning on; zero silences nothing.</summary>
    public TimeSpan Allowance { get; init; }

    /// <summary>Until when it silences what it does to flow, pressure and sample cells.</summary>
    [JsonIgnore]
    public Instant QuietUntil => Instant.Earlier(Until, Since + Allowance);

    /// <summary>True while it silences.</summary>
    public bool Silences(Instant at) => Holds(at) && at < QuietUntil;

    /// <summary>It began and nobody has said that it is over.</summary>
    public bool IsOpen => Since.IsSet && !Ended;

    /// <summary>True while water goes backwards, as far as anybody has said.</summary>
    public bool IsUnderWay(Instant at) => !Ended && Holds(at);

    /// <summary>True for a moment within it.</summary>
    public bool Holds(Instant at) => Since.IsSet && at >= Since && at < Until;
}
