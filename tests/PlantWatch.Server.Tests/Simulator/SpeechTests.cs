using System.Formats.Cbor;
using System.Text;
using System.Text.Json;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Payloads;
using PlantWatch.Simulator.Plant;
using PlantWatch.Simulator.Setup;
using CborReader = System.Formats.Cbor.CborReader;

namespace PlantWatch.Server.Tests.Simulator;

/// <summary>SenML read back by a few lines of its own from RFC 8428 section 4.6: base values apply to the records that follow.</summary>
public sealed class SpeechTests
{
    private const string Topic = "lantern-bay/main/probes";

    [Fact]
    public void A_pack_carries_every_reading_with_its_name_unit_and_time()
    {
        var readings = Said(Plants.Quiet(), TimeSpan.FromHours(1)).Where(m => m.Topic == Topic).SelectMany(m => Resolve(m.Payload)).ToList();
        var ph = readings.Where(r => r.Name == "urn:dev:ops:lantern-bay-main:ph").ToList();
        Assert.Equal(60, ph.Count);
        Assert.All(ph, r => Assert.Equal("pH", r.Unit));
        Assert.All(ph, r => Assert.InRange(r.Value, 7.2, 7.6));
        Assert.All(ph.Skip(1).Zip(ph), pair => Assert.Equal(60, (pair.First.At - pair.Second.At).TotalSeconds));
        Assert.InRange(ph[^1].At, Plants.Start.AddMinutes(59), Plants.Start.AddMinutes(60));
    }

    [Fact]
    public void No_reading_lies_ahead_of_the_pack_that_brings_it() =>
        Assert.All(Said(Plants.Quiet(), TimeSpan.FromHours(2)).Where(m => m.Topic == Topic), m => Assert.All(Resolve(m.Payload), r => Assert.True(r.At <= m.At)));

    [Fact]
    public void A_message_counts_the_readings_it_carries() =>
        Assert.All(Said(Plants.Quiet(), TimeSpan.FromHours(1)).Where(m => m.Topic == Topic), m => Assert.Equal(m.Values, Resolve(m.Payload).Count));

    [Fact]
    public void A_wrong_clock_shifts_the_device_times()
    {
        var messages = Said(Plants.Quiet(s => s.Faults.Add(Plants.Fault("main", FaultKind.Clock, 3600, "0m"))), TimeSpan.FromHours(1)).Where(m => m.Topic == Topic);
        Assert.All(messages, m => Assert.True(Resolve(m.Payload)[^1].At - m.At > TimeSpan.FromMinutes(55)));
    }

    [Fact]
    public void A_silent_probe_is_missing_and_the_others_speak()
    {
        var readings = Said(Plants.Quiet(s => s.Faults.Add(Plants.Fault("main-ph", FaultKind.Silent, 0, "0m"))), TimeSpan.FromHours(1))
            .Where(m => m.Topic == Topic).SelectMany(m => Resolve(m.Payload)).ToList();
        Assert.DoesNotContain(readings, r => r.Name.EndsWith(":ph", StringComparison.Ordinal));
        Assert.Contains(readings, r => r.Name.EndsWith(":orp", StringComparison.Ordinal));
    }

    [Fact]
    public void A_reading_that_is_no_number_spoils_no_other()
    {
        var messages = Said(Plants.Quiet(s => s.Faults.Add(Plants.Fault("main-ph", FaultKind.NotANumber, 0, "0m"))), TimeSpan.FromMinutes(30)).Where(m => m.Topic == Topic).ToList();
        var broken = messages.Where(m => Encoding.UTF8.GetString(m.Payload).Contains("NaN", StringComparison.Ordinal)).ToList();
        Assert.Equal(30, broken.Count);
        Assert.All(messages.Except(broken), m => Assert.Equal(m.Values, Resolve(m.Payload).Count));
    }

    [Fact]
    public void A_gateway_that_writes_CBOR_says_the_same_as_one_that_writes_JSON()
    {
        var json = Said(Plants.Quiet(), TimeSpan.FromHours(1)).Where(m => m.Topic == Topic).SelectMany(m => Resolve(m.Payload)).ToList();
        var messages = Said(Plants.Quiet(s => s.Circuits[0].Packs = PackForm.Cbor), TimeSpan.FromHours(1)).Where(m => m.Topic == Topic).ToList();
        Assert.Equal(json, messages.SelectMany(m => ResolveCbor(m.Payload)));

        var items = new List<DecodedItem>();
        foreach (var message in messages) SenmlCbor.Decode(message.Payload, Instant.FromUtc(2026, 1, 1), items);
        Assert.Equal(json.Select(r => (r.Name, (string?)r.Unit, Instant.From(r.At), r.Value)), items.Select(i => (i.Sample.Name, i.Sample.Unit, i.Sample.DeviceTime, i.Sample.Value)));
    }

    [Fact]
    public void A_reading_in_CBOR_that_is_no_number_is_a_float_that_is_none()
    {
        var said = Said(Plants.Quiet(s =>
        {
            s.Circuits[0].Packs = PackForm.Cbor;
            s.Faults.Add(Plants.Fault("main-ph", FaultKind.NotANumber, 0, "0m"));
        }), TimeSpan.FromMinutes(30)).Where(m => m.Topic == Topic).Select(m => ResolveCbor(m.Payload)).ToList();
        Assert.Equal(30, said.Count(pack => double.IsNaN(Assert.Single(pack.Take(1)).Value)));
        Assert.All(said.Where(pack => pack.Count > 1), pack => Assert.DoesNotContain(pack, r => double.IsNaN(r.Value)));
    }

    [Fact]
    public void A_probe_without_record_name_sends_plain_numbers()
    {
        var messages = Said(Plants.Quiet(s =>
        {
            s.Circuits[0].Probes[0].Record = "";
            s.Circuits[0].Probes[0].Topic = "own/ph";
        }), TimeSpan.FromHours(1)).Where(m => m.Topic == "own/ph").ToList();
        Assert.Equal(20, messages.Count);
        Assert.All(messages, m => Assert.InRange(double.Parse(Encoding.UTF8.GetString(m.Payload)), 7.2, 7.6));
    }

    [Fact]
    public void Pumps_say_their_state_in_words_and_their_tank_in_per_cent()
    {
        var messages = Said(Plants.Quiet(), TimeSpan.FromHours(6));
        Assert.All(messages.Where(m => m.Topic.EndsWith("/state", StringComparison.Ordinal)), m => Assert.Contains(Encoding.UTF8.GetString(m.Payload), new[] { "running", "stopped" }));
        var tank = messages.Where(m => m.Topic == "lantern-bay/main/hypo/tank").Select(m => double.Parse(Encoding.UTF8.GetString(m.Payload))).ToList();
        Assert.True(tank.Count >= 6 && tank[^1] < tank[0]);
    }

    [Fact]
    public void A_denser_cadence_holds_at_once()
    {
        var plant = new SimulatedPlant(Plants.Quiet(), Plants.Start) { Cadence = Cadence.History };
        plant.AdvanceTo(Plants.Start.AddMinutes(61));
        plant.Cadence = Cadence.Live;
        var messages = plant.AdvanceTo(plant.Now.AddMinutes(2)).Messages;
        Assert.True(messages.Count(m => m.Topic == Topic) > 20);
        Assert.Contains(messages, m => m.Topic.EndsWith("/tank", StringComparison.Ordinal));
    }

    private static List<Outgoing> Said(Scenario scenario, TimeSpan time)
    {
        var plant = new SimulatedPlant(scenario, Plants.Start) { Cadence = Cadence.History };
        return plant.AdvanceTo(Plants.Start + time).Messages;
    }

    /// <summary>The same from CBOR, by the platform's own reader and the integers of RFC 8428 section 6, table 4.</summary>
    private static List<(string Name, string Unit, DateTimeOffset At, double Value)> ResolveCbor(byte[] pack)
    {
        var (name, time) = ("", 0m);
        List<(string, string, DateTimeOffset, double)> resolved = [];
        var cbor = new CborReader(pack, CborConformanceMode.Strict);
        for (var records = cbor.ReadStartArray()!.Value; records > 0; records--)
        {
            var (own, unit, t, v) = ("", "", 0m, double.NaN);
            for (var fields = cbor.ReadStartMap()!.Value; fields > 0; fields--)
            {
                switch (cbor.ReadInt32())
                {
                    case -2: name = cbor.ReadTextString(); break;
                    case -3: time = Number(cbor); break;
                    case 0: own = cbor.ReadTextString(); break;
                    case 1: unit = cbor.ReadTextString(); break;
                    case 6: t = Number(cbor); break;
                    case 2: v = cbor.PeekState() == CborReaderState.HalfPrecisionFloat ? cbor.ReadDouble() : (double)Number(cbor); break;
                    default: throw new InvalidOperationException("a label that a gateway does not use");
                }
            }

            cbor.ReadEndMap();
            resolved.Add((name + own, unit, DateTimeOffset.FromUnixTimeMilliseconds((long)((time + t) * 1000)), v));
        }

        cbor.ReadEndArray();
        Assert.Equal(0, cbor.BytesRemaining);
        return resolved;

        static decimal Number(CborReader cbor) => cbor.PeekState() == CborReaderState.Tag ? cbor.ReadDecimal() : cbor.ReadInt64();
    }

    private static List<(string Name, string Unit, DateTimeOffset At, double Value)> Resolve(byte[] pack)
    {
        var (name, time) = ("", 0m);
        List<(string, string, DateTimeOffset, double)> resolved = [];
        foreach (var record in JsonDocument.Parse(pack).RootElement.EnumerateArray())
        {
            if (record.TryGetProperty("bn", out var bn)) name = bn.GetString()!;
            if (record.TryGetProperty("bt", out var bt)) time = bt.GetDecimal();
            var t = record.TryGetProperty("t", out var own) ? own.GetDecimal() : 0;
            resolved.Add((name + record.GetProperty("n").GetString(), record.GetProperty("u").GetString()!,
                DateTimeOffset.FromUnixTimeMilliseconds((long)((time + t) * 1000)), record.GetProperty("v").GetDouble()));
        }
        return resolved;
    }
}
