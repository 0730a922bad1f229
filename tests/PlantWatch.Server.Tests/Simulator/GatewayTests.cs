using PlantWatch.Server.Tests.Peers;
using PlantWatch.Simulator.Plant;
using PlantWatch.Simulator.Wire;

namespace PlantWatch.Server.Tests.Simulator;

/// <summary>The plant speaks to a real mosquitto, and its own subscriber hears it.</summary>
public sealed class GatewayTests
{
    [PeerFact("mosquitto", "mosquitto_sub")]
    public async Task Every_message_of_two_hours_is_heard()
    {
        await using var broker = await Mosquitto.StartAsync(persistent: false);
        await using var listener = broker.Subscribe("-t", "lantern-bay/#", "-q", "1", "-v");
        await Peer.UntilAsync(() => broker.Log.Any(l => l.Contains("Sending SUBACK", StringComparison.Ordinal)), "the subscriber is there");
        var messages = new SimulatedPlant(Plants.Quiet(), Plants.Start) { Cadence = Cadence.History }.AdvanceTo(Plants.Start.AddHours(2)).Messages;
        await using var gateways = new Gateways("127.0.0.1", broker.Port);
        await gateways.SendAsync(messages, CancellationToken.None);
        Assert.Equal((messages.Count, 0), (gateways.Acknowledged, gateways.Retries));
        await Peer.UntilAsync(() => listener.Lines.Count >= messages.Count, "all are heard");
        Assert.Equal(messages.Select(m => $"{m.Topic} {System.Text.Encoding.UTF8.GetString(m.Payload)}"), listener.Lines);
    }

    [PeerFact("mosquitto")]
    public async Task A_broker_that_is_away_is_waited_for_and_nothing_is_lost()
    {
        await using var broker = await Mosquitto.StartAsync(persistent: false);
        await using var gateways = new Gateways("127.0.0.1", broker.Port);
        Outgoing Message(string text) => new(Plants.Start, "main", "t", System.Text.Encoding.UTF8.GetBytes(text), 1);
        await gateways.SendAsync([Message("1")], CancellationToken.None);
        await broker.KillAsync();
        var waiting = gateways.SendAsync([Message("2"), Message("3")], CancellationToken.None);
        await Peer.UntilAsync(() => gateways.Retries > 0, "the gateway notices");
        Assert.False(waiting.IsCompleted);
        await broker.StartAsync();
        await waiting.WaitAsync(TimeSpan.FromSeconds(20));
        Assert.Equal(3, gateways.Acknowledged);
    }

    [PeerFact("mosquitto")]
    public async Task A_plant_that_is_told_to_stop_stops_waiting()
    {
        await using var broker = await Mosquitto.StartAsync(persistent: false);
        await using var gateways = new Gateways("127.0.0.1", broker.Port);
        using var stop = new CancellationTokenSource();
        Outgoing message = new(Plants.Start, "main", "t", [49], 1);
        await gateways.SendAsync([message], stop.Token);
        await broker.KillAsync();
        var waiting = gateways.SendAsync([message], stop.Token);
        await Peer.UntilAsync(() => gateways.Retries > 0, "the gateway notices");
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
    }
}
