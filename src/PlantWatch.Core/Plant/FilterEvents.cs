using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant;

/// <summary>A person washed a filter, or emptied a strainer.</summary>
/// <param name="At">When.</param>
/// <param name="Id">Id of this wash, UUIDv7.</param>
/// <param name="FilterId">The filter.</param>
/// <param name="By">Who.</param>
public sealed record FilterWashed(Instant At, Guid Id, string FilterId, string By) : PlantEvent(At)
{
    /// <summary>Most water that one wash is believed to drain, m3.</summary>
    public const double MostCubicMetres = 1000;

    /// <summary>Water that it drained, rinse included, m3; null leaves the plant file's usual figure.</summary>
    public double? CubicMetres { get; init; }
}

/// <summary>A person begins to backwash a filter: until the end what the circuit's flow and pressure say is not of the pool.</summary>
public sealed record BackwashBegun(Instant At, Guid Id, string FilterId, string By) : PlantEvent(At)
{
    /// <summary>Why so soon after the last one; null where nobody asks.</summary>
    public string? Why { get; init; }
}

/// <summary>A person ended a backwash without having washed: given up, or begun by mistake.</summary>
public sealed record BackwashEnded(Instant At, Guid Id, string FilterId, string By) : PlantEvent(At);

/// <summary>A filter was washed.</summary>
/// <param name="WashId">Id of the wash.</param>
/// <param name="FilterId">The filter.</param>
/// <param name="By">Who washed it.</param>
public sealed record FilterEntry(Guid WashId, string FilterId, string By) : EntryBody
{
    /// <summary>Water that it drained, m3: fresh water took its place. Null when nobody said and the plant file states none.</summary>
    public double? CubicMetres { get; init; }

    /// <summary>That figure is the plant file's usual one, and nobody's of this wash.</summary>
    public bool IsUsual { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "filter_washed";
}

/// <summary>What happened to a backwash.</summary>
public enum BackwashChange
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>A person began it.</summary>
    Begun,
    /// <summary>It ended with a wash that was noted.</summary>
    Washed,
    /// <summary>A person ended it without a wash.</summary>
    GivenUp,
    /// <summary>Nobody ended it in time.</summary>
    RanOut,
}

/// <summary>A backwash began or is over.</summary>
/// <param name="FilterId">The filter.</param>
/// <param name="Window">The time of it.</param>
/// <param name="Change">What happened.</param>
/// <param name="By">The person; null when it ended by itself.</param>
public sealed record BackwashEntry(string FilterId, BackwashWindow Window, BackwashChange Change, string? By) : EntryBody
{
    /// <summary>Why it began so soon after the last one; null where nobody asked.</summary>
    public string? Why { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "backwash";
}
