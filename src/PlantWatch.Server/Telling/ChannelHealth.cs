using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Telling;

/// <summary>How a channel fares with the messages of a circuit. The default has never been used and is not in trouble.</summary>
/// <param name="LastDeliveredAt">The newest message that was taken; never before the first.</param>
/// <param name="Waiting">Messages that wait.</param>
/// <param name="GivenUp">Messages that are tried no more.</param>
/// <param name="FailingSince">Since when something is not delivered; never when all is.</param>
/// <param name="Trouble">Why, in words; empty when nothing is amiss.</param>
internal readonly record struct ChannelHealth(Instant LastDeliveredAt, int Waiting, int GivenUp, Instant FailingSince, string Trouble)
{
    /// <summary>A mail server that is restarted is no alarm.</summary>
    public static readonly TimeSpan Grace = TimeSpan.FromMinutes(1);

    /// <summary>It has failed for longer than passes by itself.</summary>
    public bool Fails(Instant now) => FailingSince.IsSet && now - FailingSince >= Grace;

    /// <summary>What the facts of the outbox say of a channel.</summary>
    public static ChannelHealth Of(IEnumerable<OutboxItem> items, string channel)
    {
        var own = items.Where(item => item.Notice.Channel == channel).ToList();
        var delivered = own.Where(item => item.Fate == Fate.Sent).Select(item => item.LastTriedAt).Aggregate(Instant.Never, Instant.Later);
        // A sheet is no alarm: once it is given up nobody waits for it.
        // What was given up counts until the same person, or whoever listens, is reached again: giving up puts nothing right.
        var failing = own.Where(item => item.Tries > 0 && (item.Fate == Fate.Waiting || (item.Fate == Fate.GivenUp && item.Notice.Kind != NoticeKind.Sheet && !ReachedSince(own, item)))).ToList();
        var newest = failing.MaxBy(item => item.LastTriedAt);
        return new(
            delivered, own.Count(item => item.Fate == Fate.Waiting), own.Count(item => item.Fate == Fate.GivenUp),
            failing.Select(item => item.FirstTriedAt).Aggregate(Instant.Never, (a, b) => a.IsSet ? Instant.Earlier(a, b) : b), newest?.Trouble ?? "");
    }

    private static bool ReachedSince(List<OutboxItem> own, OutboxItem lost) =>
        own.Any(item => item.Fate == Fate.Sent && item.Notice.Person == lost.Notice.Person && item.LastTriedAt > lost.LastTriedAt);
}
