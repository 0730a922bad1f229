using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>From a device's publish to the interface, with mosquitto's own clients as the devices.</summary>
public sealed class ReadingsTests
{
    [PeerFact("mosquitto_pub")]
    public async Task A_published_number_is_stored_and_shown_once_it_was_acknowledged()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishAsync("hall/ph", "7.41");
        var ph = (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Probes.Single(p => p.Id == "ph");
        Assert.Equal(7.41, ph.Value);
        Assert.True(ph.Good);
    }

    [PeerFact("mosquitto_pub")]
    public async Task Equal_values_in_a_row_are_as_many_readings_as_were_published()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.40", 300));
        var sums = await server.SumsAsync();
        Assert.Equal(300, sums.Stored);
        Assert.Equal(300, (await server.Series.RawAsync(new PartitionKey("hall"), "ph", Instant.FromUtc(2020, 1, 1), WholeServer.Now + TimeSpan.FromDays(1), 1000, default)).Count);
    }

    private static readonly (string Topic, string Payload, RefusalReason Reason)[] BadPayloads =
    [
        ("hall/nothing", "7.4", RefusalReason.UnknownTopic),
        ("hall/ph", "seven", RefusalReason.NotANumber),
        ("hall/ph", "NaN", RefusalReason.NotFinite),
        ("hall/ph", "Infinity", RefusalReason.NotFinite),
        ("hall/ph", "14.5", RefusalReason.OutsideRange),
        ("hall/pack", "{\"n\":\"temperature\"}", RefusalReason.MalformedSenml),
        ("hall/pack", "[{\"n\":\"urn:dev:ops:hall:other\",\"v\":20}]", RefusalReason.UnknownName),
        ("hall/pack", "[{\"n\":\"urn:dev:ops:hall:temperature\",\"u\":\"pH\",\"v\":20}]", RefusalReason.WrongUnit),
        ("hall/pack", "[{\"n\":\"urn:dev:ops:hall:temperature\",\"bt\":4000000000,\"v\":20}]", RefusalReason.ClockAhead),
        ("hall/pack", "[{\"n\":\"urn:dev:ops:hall:temperature\",\"bt\":1276020076,\"v\":20}]", RefusalReason.ClockBehind),
        ("hall/acid/state", "thinking", RefusalReason.UnknownState),
        ("hall/acid/tank", "130", RefusalReason.OutsideRange),
    ];

    [PeerFact("mosquitto_pub")]
    public async Task A_pack_in_CBOR_becomes_a_reading_and_a_bad_record_of_it_is_kept_and_shown_as_bytes()
    {
        await using var server = await WholeServer.StartAsync(plant: WholeServer.Plant.Replace("senml_json", "senml_cbor", StringComparison.Ordinal));
        await server.PublishAsync("hall/pack", Pack(("urn:dev:ops:hall:temperature", 28.4m), ("urn:dev:ops:hall:other", 1m)));
        await server.PublishAsync("hall/pack", """[{"n":"urn:dev:ops:hall:temperature","v":28.5}]""");

        var water = (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Probes.Single(p => p.Id == "water");
        Assert.Equal(28.4, water.Value);
        var refusals = await server.GetAsync<List<RefusalView>>("/api/v1/refusals");
        Assert.Equal([RefusalReason.UnknownName, RefusalReason.MalformedSenml], refusals.Select(r => r.Reason).Order(Comparer<RefusalReason>.Create((a, b) => b.CompareTo(a))));
        Assert.Equal("0x" + Convert.ToHexStringLower(Pack(("urn:dev:ops:hall:other", 1m)).AsSpan(1)), refusals.Single(r => r.Reason == RefusalReason.UnknownName).PayloadText);
        var sums = await server.SumsAsync();
        Assert.Equal((3, 1, 2), (sums.Received, sums.Stored, sums.Refused));
    }

    // By the platform's own encoder.
    private static byte[] Pack(params (string Name, decimal Value)[] records)
    {
        var cbor = new System.Formats.Cbor.CborWriter();
        cbor.WriteStartArray(records.Length);
        foreach (var (name, value) in records)
        {
            cbor.WriteStartMap(2);
            cbor.WriteInt32(0);
            cbor.WriteTextString(name);
            cbor.WriteInt32(2);
            cbor.WriteDecimal(value);
            cbor.WriteEndMap();
        }

        cbor.WriteEndArray();
        return cbor.Encode();
    }

    [PeerFact("mosquitto_pub")]
    public async Task Everything_bad_is_refused_by_name_kept_with_its_bytes_and_the_sums_close()
    {
        await using var server = await WholeServer.StartAsync();
        foreach (var bad in BadPayloads) await server.PublishAsync(bad.Topic, bad.Payload);
        await server.PublishAsync("hall/ph", [0x37, 0xC3, 0x28]);
        await server.PublishAsync("hall/ph", new byte[1024 * 1024]);
        await server.PublishAsync("hall/ph", "7.3");

        var refusals = await server.GetAsync<List<RefusalView>>("/api/v1/refusals?limit=100");
        foreach (var bad in BadPayloads)
            Assert.Contains(refusals, r => r.Topic == bad.Topic && r.Reason == bad.Reason);
        Assert.Contains(refusals, r => r.Reason == RefusalReason.InvalidUtf8 && r.PayloadBytes == 3);
        Assert.Contains(refusals, r => r.Reason == RefusalReason.TooLarge);

        var sums = await server.SumsAsync();
        Assert.Equal(BadPayloads.Length + 3, sums.Received);
        Assert.Equal(sums.Received, sums.Stored + sums.Duplicates + sums.Refused + sums.InFlight);
        Assert.Equal(1, sums.Stored);
        Assert.Equal(refusals.Count, sums.Refused);
    }

    [PeerFact("mosquitto_pub")]
    public async Task Out_of_order_duplicate_and_conflicting_device_times_are_told_apart()
    {
        await using var server = await WholeServer.StartAsync();
        var now = WholeServer.Now;
        async Task Send(int secondsAgo, double value) => await server.PublishAsync(
            "hall/pack", FormattableString.Invariant($"[{{\"n\":\"urn:dev:ops:hall:temperature\",\"bt\":{(now.UnixMilliseconds / 1000) - secondsAgo},\"v\":{value}}}]"));
        await Send(10, 28.1);
        await Send(20, 28.0);
        await Send(20, 28.0);
        await Send(20, 29.0);
        await Send(10, 28.1);
        await Send(10, 30.0);

        var sums = await server.SumsAsync();
        Assert.Equal((6, 2, 2, 2), (sums.Received, sums.Stored, sums.Duplicates, sums.Refused));
        var stored = await server.Series.RawAsync(new PartitionKey("hall"), "water", now - TimeSpan.FromHours(1), now, 10, default);
        Assert.Equal([28.0, 28.1], stored.Select(r => r.Raw));
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_series_comes_back_with_its_points_and_a_gap_where_nothing_was_heard()
    {
        await using var server = await WholeServer.StartAsync();
        var start = (WholeServer.Now.UnixMilliseconds / 1000) - 3600;
        var pack = Enumerable.Range(0, 60).Concat(Enumerable.Range(600, 60)).Select(s => FormattableString.Invariant($"{{\"n\":\"urn:dev:ops:hall:temperature\",\"t\":{start + s},\"v\":{28 + (s % 10 / 10.0)}}}"));
        await server.PublishAsync("hall/pack", $"[{string.Join(',', pack)}]");
        var series = await server.GetAsync<SeriesView>($"/api/v1/series?probe=water&from={Instant.FromUnixMilliseconds((start - 60) * 1000)}&to={Instant.FromUnixMilliseconds((start + 900) * 1000)}&width=4000");
        Assert.Equal(120, series.Mean.Count(m => m is not null));
        Assert.Contains(null, series.Mean);
    }
}
