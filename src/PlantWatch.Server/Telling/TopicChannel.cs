using PlantWatch.Core.Plans.Telling;

namespace PlantWatch.Server.Telling;

/// <summary>Tells whoever listens at the broker: each message once at topic/circuit/notices; what stands is kept at topic/circuit/state by <see cref="StandingTopics"/>.</summary>
internal sealed class TopicChannel(ChannelPlan plan, IAlarmTopic topic) : IChannel
{
    public async Task<Delivery> SendAsync(Outgoing outgoing, CancellationToken cancellation)
    {
        await topic.PublishAsync($"{plan.Topic}/{outgoing.Message.Circuit}/notices", CloudEvent.Write(outgoing.Message), CloudEvent.ContentType, retain: false, cancellation);
        return Delivery.Done;
    }
}
