using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Maintenance;

/// <summary>A job of maintenance: a fault that somebody saw or planned work that is due, and what was done about it. Each change is a new row with the same id.</summary>
/// <param name="Id">UUIDv7 made where it was first written.</param>
/// <param name="Asset">Id of the pump, probe, filter, pool or circuit that it is about.</param>
/// <param name="Seen">What was seen, or what planned work is to be done.</param>
/// <param name="Done">What was done; null while nothing was.</param>
/// <param name="State">Where it stands.</param>
/// <param name="AlarmId">The alarm it answers; null when there was none.</param>
/// <param name="By">Who wrote this version.</param>
/// <param name="At">When this version was written.</param>
public sealed record Job(Guid Id, string Asset, string Seen, string? Done, JobState State, Guid? AlarmId, string By, Instant At)
{
    /// <summary>Longest time at work that is believed, in minutes: a week.</summary>
    public const int MostMinutes = 7 * 24 * 60;

    /// <summary>The planned task of the plant file that it does; null for a fault.</summary>
    public string? TaskId { get; init; }

    /// <summary>Parts that were fitted.</summary>
    public ImmutableArray<PartUsed> Parts { get; init; } = [];

    /// <summary>Time at work in minutes, all versions together; null when nobody counted it.</summary>
    public int? Minutes { get; init; }

    /// <summary>Most pictures of one job.</summary>
    public const int MostPictures = 12;

    /// <summary>Its pictures, by the names that they are kept by: SHA-256 of their bytes.</summary>
    public ImmutableArray<string> Pictures { get; init; } = [];

    /// <summary>It is about something that failed, and not work that the calendar asked for.</summary>
    public bool IsFault => TaskId is null;

    /// <summary>Says the same as another version, whenever that was written.</summary>
    public bool SaysWhat(Job other) =>
        this with { At = other.At, Parts = other.Parts, Pictures = other.Pictures } == other && Parts.AsSpan().SequenceEqual(other.Parts.AsSpan()) && Pictures.AsSpan().SequenceEqual(other.Pictures.AsSpan());
}

/// <summary>A part that was fitted.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Count">How many, at least one.</param>
/// <param name="Number">Its number on the shelf or in the maker's list; null when none.</param>
public sealed record PartUsed(string Name, int Count, string? Number);

/// <summary>Where a job stands, as a person says it. Whether it helped no person says: see <see cref="JobEffect"/>.</summary>
public enum JobState
{
    /// <summary>Seen, nobody on it.</summary>
    Open = 0,
    /// <summary>Somebody is on it.</summary>
    InHand,
    /// <summary>Done.</summary>
    Done,
    /// <summary>It cannot go on before parts have come.</summary>
    WaitingForParts,
}
