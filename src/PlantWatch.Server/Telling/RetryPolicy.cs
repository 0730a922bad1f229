using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Telling;

/// <summary>When a message that was not taken is tried again, and when no more. Pure; chance comes from the message's own id, so that a restart decides the same.</summary>
internal static class RetryPolicy
{
    /// <summary>Longest first wait.</summary>
    public static readonly TimeSpan First = TimeSpan.FromSeconds(5);

    /// <summary>Longest wait of all: a way that is open again is found within it.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    private const int MostDoublings = 7;

    /// <summary>How long a message is tried: what is low has lost its meaning after a day, what is high has not (common practice, to be set by the site).</summary>
    public static TimeSpan TriedFor(Priority priority) => priority >= Priority.High ? TimeSpan.FromDays(3) : TimeSpan.FromDays(1);

    /// <summary>From when it may be sent.</summary>
    public static Instant DueAt(OutboxItem item) => item.Tries == 0 ? item.QueuedAt : item.LastTriedAt + After(item.Tries, Chance(item.Notice.Id, item.Tries));

    /// <summary>The wait after so many failures: doubling, in the upper half of the full wait, so that many messages do not come at once.</summary>
    /// <param name="failures">1 or more.</param>
    /// <param name="chance">From 0 to 1: where in the upper half to land.</param>
    public static TimeSpan After(int failures, double chance)
    {
        var full = First * Math.Pow(2, Math.Min(failures - 1, MostDoublings));
        return (full < Longest ? full : Longest) * (0.5 + (0.5 * chance));
    }

    /// <summary>What becomes of a message whose attempt failed.</summary>
    /// <param name="item">The message before the attempt.</param>
    /// <param name="forGood">Trying again cannot help.</param>
    /// <param name="now">When the attempt failed.</param>
    public static Fate FateAfterFailure(OutboxItem item, bool forGood, Instant now) =>
        forGood || now - item.QueuedAt >= TriedFor(item.Notice.Priority) ? Fate.GivenUp : Fate.Waiting;

    /// <summary>The next message of a channel that may go: an older one of the same alarm to the same person goes first, or its end would arrive before its begin.</summary>
    public static OutboxItem? Next(IReadOnlyList<OutboxItem> items, string channel, Instant now, bool hurry)
    {
        var held = new HashSet<(Guid, string?)>();
        OutboxItem? next = null;
        foreach (var item in items.Where(item => item.Fate == Fate.Waiting && item.Notice.Channel == channel))
        {
            if (!held.Add((item.Notice.Alarm, item.Notice.Person)) || !(hurry || DueAt(item) <= now)) continue;
            if (next is null || IsBefore(item.Notice, next.Notice)) next = item;
        }

        return next;
    }

    private static bool IsBefore(Notice a, Notice b) => a.Priority > b.Priority;

    private static double Chance(Guid id, int tries)
    {
        Span<byte> bytes = stackalloc byte[16];
        id.TryWriteBytes(bytes);
        // The last bytes of a derived id are spread evenly; each attempt reads others of them.
        return bytes[8 + (tries % 8)] / 255.0;
    }
}
