using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The whole server listens for whoever sets up a plant: at the broker inside it and at a mosquitto, with mosquitto's own clients.</summary>
public sealed class HeardTopicTests
{
    private const string Empty = "site: { name: North Quay, time_zone: Europe/London }\ncircuits: []\n";

    [PeerFact("mosquitto_pub")]
    public async Task What_comes_to_the_embedded_broker_is_heard_and_read_as_a_probe_would()
    {
        await using var server = await WholeServer.StartAsync();
        await HeardAsync(server);
        await server.PublishAsync("quay/ph", "7.41");
        await server.PublishAsync("hall/ph", "7.2");
        await server.PublishAsync("quay/pack", """[{"bn":"urn:dev:ops:quay:","n":"orp","u":"mV","v":712},{"n":"water","u":"Cel","v":28.4}]""");
        // [{-2: "urn:dev:ops:quay:", 0: "orp", 1: "mV", 2: 712}], and one record cut short.
        await server.PublishAsync("quay/cbor", Convert.FromHexString("81a4217175726e3a6465763a6f70733a717561793a00636f727001626d56021902c8"));
        await server.PublishAsync("quay/cut", Convert.FromHexString("81a4217175726e"));
        await server.PublishAsync("quay/door", "open\u0007");
        var heard = await HeardAsync(server);
        var ph = Of(heard, "quay/ph");
        Assert.Equal((PayloadFormat.Number, 1L, "7.41"), (ph.Format, ph.Count, ph.Payload));
        Assert.Equal(new HeardValue(null, null, 7.41, null, Measurand.Ph), Assert.Single(ph.Values));
        Assert.Equal("pH", Assert.Single(Of(heard, "hall/ph").Values).TakenBy);
        var pack = Of(heard, "quay/pack");
        Assert.Equal(PayloadFormat.SenmlJson, pack.Format);
        Assert.Equal([new("urn:dev:ops:quay:orp", "mV", 712, null, Measurand.Orp), new("urn:dev:ops:quay:water", "Cel", 28.4, null, Measurand.Temperature)], pack.Values);
        var cbor = Of(heard, "quay/cbor");
        Assert.Equal(PayloadFormat.SenmlCbor, cbor.Format);
        Assert.Equal(new HeardValue("urn:dev:ops:quay:orp", "mV", 712, null, Measurand.Orp), Assert.Single(cbor.Values));
        Assert.Equal((null, "0x81a4217175726e"), (Of(heard, "quay/cut").Format, Of(heard, "quay/cut").Payload));
        Assert.Equal((null, "open\u00b7"), (Of(heard, "quay/door").Format, Of(heard, "quay/door").Payload));
        Assert.NotNull(Of(heard, "quay/door").Trouble);
        // It is heard beside the record and not instead of it: what nobody claims is refused and kept as ever.
        Assert.Contains(await server.GetAsync<List<RefusalView>>("/api/v1/refusals"), r => r.Topic == "quay/ph");
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task At_a_broker_of_the_plants_own_everything_is_heard_while_somebody_listens_and_its_session_is_left_alone()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await PublishAsync(mosquitto, "quay/temp", "28.1", "-r");
        await using var server = await WholeServer.StartAsync(plant: Empty, set: o => (o.Broker.Mode, o.Broker.Port) = (BrokerMode.External, mosquitto.Port));
        await Peer.UntilAsync(() => mosquitto.Log.Any(l => l.Contains("as plantwatch", StringComparison.Ordinal)), "the server is connected");
        Assert.DoesNotContain(mosquitto.Log, l => l.Contains("-ear-", StringComparison.Ordinal));
        await HeardAsync(server);
        await Peer.UntilAsync(() => mosquitto.Log.Any(l => l.Contains("-ear-", StringComparison.Ordinal) && l.Contains("SUBSCRIBE", StringComparison.Ordinal)), "the ear subscribes");
        HeardView heard;
        for (var i = 0; ; i++)
        {
            await PublishAsync(mosquitto, "quay/ph", $"7.{i % 10}");
            heard = await HeardAsync(server);
            if (heard.Topics.Count >= 2 || i > 100) break;
        }

        Assert.True(Of(heard, "quay/temp").Retained);
        Assert.False(Of(heard, "quay/ph").Retained);
        Assert.Equal(Measurand.Ph, Assert.Single(Of(heard, "quay/ph").Values).Guess);
        Assert.DoesNotContain(mosquitto.Log, l => l.Contains("plantwatch 1 #", StringComparison.Ordinal) || l.Contains("plantwatch 0 #", StringComparison.Ordinal));
    }

    private static HeardTopicView Of(HeardView heard, string topic) => heard.Topics.Single(t => t.Topic == topic);

    private static Task<HeardView> HeardAsync(WholeServer server) => server.GetAsync<HeardView>("/api/v1/topics/heard");

    private static async Task PublishAsync(Mosquitto broker, string topic, string payload, params string[] more)
    {
        await using var client = broker.Publish(["-q", "1", "-t", topic, "-m", payload, .. more]);
        await client.ExitAsync();
    }
}
