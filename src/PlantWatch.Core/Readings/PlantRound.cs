using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>A round through a circuit's plant room, as somebody walked it.</summary>
/// <param name="Id">UUIDv7 made where it was entered, so that sending it twice is harmless.</param>
/// <param name="WalkedAt">When.</param>
/// <param name="By">Who.</param>
/// <param name="Readings">What was read, each item at most once; what was left out is missing.</param>
/// <param name="Remark">What else was seen.</param>
public sealed record PlantRound(Guid Id, Instant WalkedAt, string By, ImmutableArray<RoundReading> Readings, string? Remark)
{
    /// <summary>True when it says the same as another.</summary>
    public bool SaysWhat(PlantRound other) => other is not null && Id == other.Id && WalkedAt == other.WalkedAt && By == other.By && Remark == other.Remark && Readings.AsSpan().SequenceEqual(other.Readings.AsSpan());
}

/// <summary>One reading of a round.</summary>
/// <param name="ItemId">The item of the plan.</param>
/// <param name="Value">The number in the unit of its kind; null for a look.</param>
/// <param name="Works">In order or not, for a look; null for a number.</param>
/// <param name="Remark">What was seen of it.</param>
public sealed record RoundReading(string ItemId, double? Value, bool? Works, string? Remark);

/// <summary>How the rounds of a circuit stand. The default: nobody has walked one.</summary>
public sealed record RoundStanding
{
    /// <summary>How many ids are remembered; older ones are in the record (our choice, because rounds may be typed in from a month's paper, one a day, and what is sent again is among them).</summary>
    public const int Remembered = 40;

    /// <summary>Nobody has walked one.</summary>
    public static RoundStanding None { get; } = new();

    /// <summary>When the newest was walked.</summary>
    public Instant WalkedAt { get; init; }

    /// <summary>Who walked it; null while nobody did.</summary>
    public string? By { get; init; }

    /// <summary>The newest reading of each item, by item.</summary>
    public ImmutableArray<RoundLast> Last { get; init; } = [];

    /// <summary>Ids of the newest rounds.</summary>
    public ImmutableArray<Guid> Known { get; init; } = [];

    /// <summary>The newest reading of an item; null when it was never read.</summary>
    public RoundLast? LastOf(string itemId)
    {
        foreach (var last in Last)
            if (last.Reading.ItemId == itemId) return last;
        return null;
    }

    /// <summary>With one round more. One that is told late changes nothing that a newer one has read.</summary>
    public RoundStanding With(PlantRound round)
    {
        ArgumentNullException.ThrowIfNull(round);
        var last = Last;
        foreach (var reading in round.Readings)
        {
            var known = last.FirstOrDefault(l => l.Reading.ItemId == reading.ItemId);
            if (known is null) last = last.Add(new(reading, round.WalkedAt));
            else if (known.At <= round.WalkedAt) last = last.Replace(known, new(reading, round.WalkedAt));
        }

        var ids = Known.Length < Remembered ? Known : Known.RemoveAt(0);
        var newest = round.WalkedAt >= WalkedAt;
        return this with { WalkedAt = newest ? round.WalkedAt : WalkedAt, By = newest ? round.By : By, Last = last, Known = ids.Add(round.Id) };
    }
}

/// <summary>A reading and when it was taken.</summary>
public sealed record RoundLast(RoundReading Reading, Instant At);
