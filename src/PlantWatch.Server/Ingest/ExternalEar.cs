using Microsoft.Extensions.Options;
using MQTTnet;
using MQTTnet.Protocol;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Ingest.Links;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Ingest;

/// <summary>Listens to all topics of an external broker while a person picks from them, by a connection of its own that leaves nothing behind there.</summary>
/// <remarks>
/// Not by the session that carries the readings: that one stays at the broker and queues while we are away, and a subscription to everything would fill it.
/// QoS 0 and a clean session: what is missed here is missed by nobody.
/// </remarks>
internal sealed class ExternalEar(TopicEar ear, IOptions<PlantWatchOptions> options, TimeProvider time, ILogger<ExternalEar> logger) : BackgroundService
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(5);
    private const string Everything = "#";
    private readonly SemaphoreSlim _wanted = new(0, 1);

    private Instant Now => Instant.From(time.GetUtcNow());

    public override void Dispose()
    {
        _wanted.Dispose();
        base.Dispose();
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        ear.Wanted += Wake;
        // Somebody may have asked before.
        if (ear.IsWanted(Now)) Wake();
        try
        {
            while (!stoppingToken.IsCancellationRequested)
            {
                await _wanted.WaitAsync(stoppingToken);
                while (ear.IsWanted(Now)) await ListenAndWaitAsync(stoppingToken);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // The server stops; the broker forgets the connection by itself.
        }
        finally
        {
            ear.Wanted -= Wake;
        }
    }

    private void Wake()
    {
        try
        {
            _wanted.Release();
        }
        catch (SemaphoreFullException)
        {
            // It is awake already.
        }
    }

    private async Task ListenAndWaitAsync(CancellationToken stopping)
    {
        try
        {
            await ListenAsync(stopping);
        }
        catch (Exception e) when (!stopping.IsCancellationRequested)
        {
            // Nobody's readings hang on it: whatever it is, the server goes on.
            IngestLog.EarDeaf(logger, e.Message);
        }

        if (ear.IsWanted(Now)) await Task.Delay(Look, time, stopping);
    }

    private async Task ListenAsync(CancellationToken stopping)
    {
        using var client = new MqttClientFactory().CreateMqttClient();
        client.ApplicationMessageReceivedAsync += message =>
        {
            var said = message.ApplicationMessage;
            ear.Hear(new IncomingMessage(said.Topic, IncomingPayload.Copy(said.Payload), said.Retain, "", 0, false), Now);
            return Task.CompletedTask;
        };
        await ConnectAsync(client, stopping);
        while (client.IsConnected && ear.IsWanted(Now)) await Task.Delay(Look, time, stopping);
        if (client.IsConnected) await client.DisconnectAsync(new MqttClientDisconnectOptions(), stopping);
    }

    private async Task ConnectAsync(IMqttClient client, CancellationToken stopping)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        patience.CancelAfter(Patience);
        var answer = await client.ConnectAsync(Options(), patience.Token);
        if (answer.ResultCode == MqttClientConnectResultCode.Success) await SubscribeAsync(client, patience.Token);
        else IngestLog.EarDeaf(logger, answer.ResultCode.ToString());
    }

    private async Task SubscribeAsync(IMqttClient client, CancellationToken cancellation)
    {
        var answer = await client.SubscribeAsync(Everything, MqttQualityOfServiceLevel.AtMostOnce, cancellation);
        foreach (var refused in answer.Items.Where(i => i.ResultCode > MqttClientSubscribeResultCode.GrantedQoS2))
            IngestLog.EarDeaf(logger, $"the broker refused the topic filter {Everything}: {refused.ResultCode}");
    }

    private MqttClientOptions Options()
    {
        var broker = options.Value.Broker;
        return BrokerDial.To(broker, time).Options
            .WithClientId($"{broker.ClientId}-ear-{Guid.NewGuid().ToString("N")[..8]}").WithCleanStart().WithTimeout(Patience).Build();
    }
}
