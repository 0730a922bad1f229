using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Ingest;

/// <summary>Lets the ear hear what comes to the broker in this process, whether somebody claims it or not.</summary>
internal sealed class DoorEar(TopicEar ear, PlantHost host, TimeProvider clock) : IHostedService
{
    public Task StartAsync(CancellationToken cancellationToken)
    {
        host.Arrived += Hear;
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        host.Arrived -= Hear;
        return Task.CompletedTask;
    }

    private void Hear(IncomingMessage message) => ear.Hear(message, Instant.From(clock.GetUtcNow()));
}
