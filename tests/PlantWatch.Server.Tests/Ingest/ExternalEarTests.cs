using System.Collections.Concurrent;
using System.Net;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;
using MQTTnet.Protocol;
using MQTTnet.Server;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Ingest;

/// <summary>The ear at an external broker: nothing that goes wrong with it ends the server.</summary>
public sealed class ExternalEarTests
{
    [Fact]
    public async Task An_address_that_is_none_is_told_and_the_server_goes_on()
    {
        var options = new PlantWatchOptions();
        (options.Broker.Host, options.Broker.Port) = ("127.0.0.1", 70_000);
        var (ear, log) = (new TopicEar(), new Lines());
        using var ours = new ExternalEar(ear, Options.Create(options), TimeProvider.System, log);
        await ours.StartAsync(CancellationToken.None);
        ear.Ask(Instant.From(TimeProvider.System.GetUtcNow()));
        await Peer.UntilAsync(() => log.Said.Contains(2032), "the trouble is told");
        Assert.False(ours.ExecuteTask!.IsCompleted);
        await ours.StopAsync(CancellationToken.None);
        Assert.True(ours.ExecuteTask.IsCompletedSuccessfully);
    }

    [Fact]
    public async Task A_broker_that_lets_nobody_hear_everything_is_told_by_what_it_refused()
    {
        var broker = new MqttServerOptionsBuilder().WithDefaultEndpoint().WithDefaultEndpointBoundIPAddress(IPAddress.Loopback)
            .WithDefaultEndpointBoundIPV6Address(IPAddress.None).WithDefaultEndpointPort(Peer.FreePort()).Build();
        using var server = new MqttServerFactory().CreateMqttServer(broker);
        server.InterceptingSubscriptionAsync += e =>
        {
            e.Response.ReasonCode = MqttSubscribeReasonCode.NotAuthorized;
            return Task.CompletedTask;
        };
        await server.StartAsync();
        var options = new PlantWatchOptions();
        (options.Broker.Host, options.Broker.Port) = ("127.0.0.1", broker.DefaultEndpointOptions.Port);
        var (ear, log) = (new TopicEar(), new Lines());
        using var ours = new ExternalEar(ear, Options.Create(options), TimeProvider.System, log);
        ear.Ask(Instant.From(TimeProvider.System.GetUtcNow()));
        await ours.StartAsync(CancellationToken.None);
        await Peer.UntilAsync(() => log.Said.Contains(2032), "the refusal is told");
        Assert.All(["refused the topic filter #", "NotAuthorized"], part => Assert.Contains(part, log.Sentences.First(), StringComparison.Ordinal));
        await ours.StopAsync(CancellationToken.None);
        await server.StopAsync(new MqttServerStopOptions());
    }

    private sealed class Lines : ILogger<ExternalEar>
    {
        public ConcurrentQueue<int> Said { get; } = new();

        public ConcurrentQueue<string> Sentences { get; } = new();

        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            Sentences.Enqueue(formatter(state, exception));
            Said.Enqueue(eventId.Id);
        }
    }
}
