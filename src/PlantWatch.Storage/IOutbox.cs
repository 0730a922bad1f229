using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage;

/// <summary>What people are to be told: written down before anything is sent, and what became of it. A process that dies in between finds it again.</summary>
public interface IOutbox
{
    /// <summary>Writes notices down in one transaction: all of them or none. One that is there already stays as it is.</summary>
    /// <exception cref="StorageException">The store failed; nothing was written.</exception>
    ValueTask QueueAsync(PartitionKey partition, IReadOnlyList<WrittenNotice> notices, Instant at, CancellationToken cancellation);

    /// <summary>All that is known of a partition's notices, in the order in which they were written.</summary>
    ValueTask<IReadOnlyList<OutboxItem>> OutboxAsync(PartitionKey partition, CancellationToken cancellation);

    /// <summary>Notes what became of an attempt to send. A notice that was sent stays sent.</summary>
    ValueTask NoteAsync(PartitionKey partition, Guid notice, Attempt attempt, CancellationToken cancellation);

    /// <summary>Forgets notices of alarms of which none waits and the newest was written before a time; those of the alarms named are kept. Returns how many went.</summary>
    ValueTask<long> ForgetAsync(PartitionKey partition, Instant before, IReadOnlyCollection<Guid> keptAlarms, CancellationToken cancellation);
}

/// <summary>A notice with its words.</summary>
/// <param name="Notice">Who is told of what by which way.</param>
/// <param name="Content">What it says, as its writer put it; no store looks into it.</param>
public sealed record WrittenNotice(Notice Notice, string Content);

/// <summary>What became of a notice. The default still waits.</summary>
public enum Fate
{
    /// <summary>It waits to be sent, for the first time or again.</summary>
    Waiting = 0,
    /// <summary>The other side has taken it.</summary>
    Sent,
    /// <summary>It is tried no more.</summary>
    GivenUp,
}

/// <summary>One attempt to send.</summary>
/// <param name="At">When.</param>
/// <param name="Fate">Sent, given up with this attempt, or still waiting.</param>
/// <param name="Trouble">Why it failed, in words; empty when it was sent.</param>
public sealed record Attempt(Instant At, Fate Fate, string Trouble);

/// <summary>A notice and what became of it.</summary>
/// <param name="Written">The notice.</param>
/// <param name="QueuedAt">When it was written down.</param>
/// <param name="Tries">Attempts so far.</param>
/// <param name="FirstTriedAt">The first of them; never while there was none.</param>
/// <param name="LastTriedAt">The last of them; never while there was none.</param>
/// <param name="Fate">What became of it.</param>
/// <param name="Trouble">Why the last attempt failed; empty when it did not.</param>
public sealed record OutboxItem(WrittenNotice Written, Instant QueuedAt, int Tries, Instant FirstTriedAt, Instant LastTriedAt, Fate Fate, string Trouble)
{
    /// <summary>The notice.</summary>
    public Notice Notice => Written.Notice;

    /// <summary>A notice that was just written down.</summary>
    public static OutboxItem New(WrittenNotice written, Instant at) => new(written, at, 0, Instant.Never, Instant.Never, Fate.Waiting, "");

    /// <summary>The same after one more attempt.</summary>
    public OutboxItem After(Attempt attempt)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        if (Fate == Fate.Sent) return this;
        return this with { Tries = Tries + 1, FirstTriedAt = FirstTriedAt.IsSet ? FirstTriedAt : attempt.At, LastTriedAt = attempt.At, Fate = attempt.Fate, Trouble = attempt.Trouble };
    }
}
