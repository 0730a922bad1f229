using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Telling;

/// <summary>Keeps the retained state of every alarm topic true: said when it changes, and every minute. Only the newest counts, so what failed is not made up for but said anew.</summary>
internal sealed class StandingTopics(IAlarmTopic topic, TimeProvider clock)
{
    private const string ContentType = "application/json";
    private readonly Dictionary<string, (byte[] What, Instant At)> _said = new(StringComparer.Ordinal);

    /// <summary>Says what has changed or is due.</summary>
    public async Task SayAsync(SitePlan site, IReadOnlyCollection<ChannelPlan> channels, IReadOnlyCollection<CircuitState> circuits, CancellationToken cancellation)
    {
        var now = Instant.From(clock.GetUtcNow());
        var wanted = new HashSet<string>(StringComparer.Ordinal);
        foreach (var channel in channels.Where(channel => channel.Kind == ChannelKind.Mqtt))
            foreach (var circuit in circuits)
            {
                var at = $"{channel.Topic}/{circuit.Plan.Id}/state";
                wanted.Add(at);
                await SayAsync(at, StandingState.Of(site.Name, circuit, channel.From, now, Wording.Of(site)), now, cancellation);
            }

        // A circuit that is gone must not stand there for ever; an empty retained message takes it away (MQTT 5.0, 3.3.1.3).
        foreach (var gone in _said.Keys.Except(wanted).ToList())
        {
            await topic.PublishAsync(gone, ReadOnlyMemory<byte>.Empty, ContentType, retain: true, cancellation);
            _said.Remove(gone);
        }
    }

    private async Task SayAsync(string at, StandingState state, Instant now, CancellationToken cancellation)
    {
        // Compared without its own time.
        var what = (state with { At = Instant.Never }).Write();
        if (_said.TryGetValue(at, out var before) && now - before.At < StandingState.SaidEvery && before.What.AsSpan().SequenceEqual(what)) return;
        await topic.PublishAsync(at, state.Write(), ContentType, retain: true, cancellation);
        _said[at] = (what, now);
    }
}
