using System.Collections.Concurrent;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Ingest.Links;

/// <summary>A topic of the plant file on which nothing has come yet.</summary>
/// <param name="Topic">Its name.</param>
/// <param name="Of">The probe or pump that it belongs to.</param>
/// <param name="Since">Waited for since then.</param>
internal sealed record SilentTopic(string Topic, string Of, Instant Since);

/// <summary>Knows which topics of the plant file have never spoken since this server began to wait for them. A probe that spoke and fell silent is told of by the alarms.</summary>
internal sealed class TopicSilence(PlantHost host, TimeProvider clock) : IHostedService
{
    /// <summary>What a pump says, it says when it changes.</summary>
    private static readonly TimeSpan OfPump = TimeSpan.FromMinutes(10);

    private static readonly TimeSpan Least = TimeSpan.FromMinutes(1);

    private readonly ConcurrentDictionary<string, Waiting> _topics = new(StringComparer.Ordinal);

    public Task StartAsync(CancellationToken cancellationToken)
    {
        host.TopicsChanged += Renew;
        host.Arrived += Hear;
        Renew();
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        host.TopicsChanged -= Renew;
        host.Arrived -= Hear;
        return Task.CompletedTask;
    }

    /// <summary>The topics that should have spoken by now, by name.</summary>
    public IReadOnlyList<SilentTopic> At(Instant now) =>
        host.Plan is not { } plan ? [] : [.. Expected(plan).Where(e => _topics.TryGetValue(e.Topic, out var w) && !w.Spoke && now - w.Since > e.Patience)
            .DistinctBy(e => e.Topic).OrderBy(e => e.Topic, StringComparer.Ordinal).Select(e => new SilentTopic(e.Topic, e.Of, _topics[e.Topic].Since))];

    // A last value that the broker kept proves nothing: its publisher may be gone for years.
    private void Hear(IncomingMessage message)
    {
        if (!message.Retained && _topics.TryGetValue(message.Topic, out var waiting)) waiting.Spoke = true;
    }

    private void Renew()
    {
        var now = Instant.From(clock.GetUtcNow());
        foreach (var gone in _topics.Keys.Except(host.Topics, StringComparer.Ordinal).ToList()) _topics.TryRemove(gone, out _);
        foreach (var topic in host.Topics) _topics.TryAdd(topic, new(now));
    }

    private static IEnumerable<(string Topic, string Of, TimeSpan Patience)> Expected(PlantPlan plan)
    {
        var probes = plan.Circuits.SelectMany(c => c.Probes).Select(p => (p.Topic, p.Name, 3 * p.Every > Least ? 3 * p.Every : Least));
        var pumps = plan.Circuits.SelectMany(c => c.Pumps).SelectMany(p => new[] { p.StateTopic, p.TankTopic, p.StrokesTopic }.OfType<string>().Select(t => (t, p.Name, OfPump)));
        return probes.Concat(pumps);
    }

    private sealed class Waiting(Instant since)
    {
        private volatile bool _spoke;

        public Instant Since { get; } = since;

        public bool Spoke { get => _spoke; set => _spoke = value; }
    }
}
