using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Telling;
using PlantWatch.Storage;

namespace PlantWatch.Server.Live;

/// <summary>How people are told, as it stands now.</summary>
internal static class TellingViews
{
    private static readonly TimeSpan Ahead = TimeSpan.FromDays(8);
    private static readonly TimeSpan Step = TimeSpan.FromMinutes(1);

    public static TellingView Of(PlantPlan plan, IReadOnlyList<OutboxItem> items, Instant now)
    {
        var (telling, duty) = (plan.Telling, new Duty(plan.Telling, plan.Site.TimeZone));
        var onCall = duty.OnCall(now);
        var change = NextChange(telling, duty, now);
        return new(
            [.. telling.Channels.Select(channel => Of(channel, ChannelHealth.Of(items, channel.Id), now))], Names(plan, onCall.IsEmpty ? duty.At(0, now) : onCall), onCall.IsEmpty && !telling.Escalation.IsEmpty,
            change.IsSet ? Names(plan, duty.At(0, change)) : [], change.OrNull(), Names(plan, telling.Escalation), Hour(telling.Quiet?.From), Hour(telling.Quiet?.To));
    }

    private static ChannelView Of(ChannelPlan channel, ChannelHealth health, Instant now) => new(
        channel.Id, channel.Name, channel.Kind, channel.From, Where(channel), health.Fails(now), health.LastDeliveredAt.OrNull(), health.Waiting, health.GivenUp,
        health.Trouble.Length == 0 ? null : health.Trouble, health.FailingSince.OrNull());

    // An address of a webhook may hold a token in its path: who looks at the page sees the host.
    private static string Where(ChannelPlan channel) => channel.Kind switch
    {
        ChannelKind.Mqtt => channel.Topic ?? "",
        ChannelKind.Webhook when channel.AddressIsApart => "kept apart",
        ChannelKind.Webhook => channel.Address?.Authority ?? "",
        _ => channel.Mail is { } mail ? $"{mail.Host}:{mail.Port}" : "",
    };

    // Shifts begin and end on full minutes of the wall.
    private static Instant NextChange(TellingPlan telling, Duty duty, Instant now)
    {
        if (telling.Roster.IsEmpty) return Instant.Never;
        var (before, minute) = (duty.OnCall(now), Instant.FromUnixMicroseconds(now.UnixMicroseconds / 60_000_000 * 60_000_000));
        for (var at = minute + Step; at < now + Ahead; at += Step)
            if (!duty.OnCall(at).SequenceEqual(before)) return at;
        return Instant.Never;
    }

    private static IReadOnlyList<string> Names(PlantPlan plan, IEnumerable<string> ids) => [.. ids.Select(id => plan.People.FirstOrDefault(person => person.Id == id)?.Name ?? id)];

    private static string? Hour(TimeOnly? time) => time?.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}
