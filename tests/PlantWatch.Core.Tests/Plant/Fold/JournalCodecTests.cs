using System.Text;
using System.Text.Json;
using CsCheck;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>The journal gives back what it was given, and refuses what it was not.</summary>
public sealed class JournalCodecTests
{
    [Fact]
    public void Any_day_comes_back_the_same_to_the_byte() =>
        Walk.Acts.Sample(acts =>
        {
            var events = Walk.Live(acts).Events;
            var bytes = JournalCodec.Write(events);
            var read = JournalCodec.Read(bytes);
            Assert.Equal(bytes, JournalCodec.Write(read));
            Assert.Equal(events.Select(Text), read.Select(Text));
        }, iter: 200);

    [Fact]
    public void Any_message_comes_back_the_same() =>
        Gen.Select(Gen.Long[0, 4_000_000_000_000_000], Gen.String[Gen.Char['\u0001', '\ud7ff'], 0, 40], Gen.Byte.Array[0, 200], Gen.Bool, Gen.Int[0, 65535], Gen.Long).Sample(
            (at, topic, payload, flag, id, ordinal) =>
            {
                var message = new MessageArrived(Instant.FromUnixMicroseconds(at), topic, payload, flag, id == 0 ? null : new PacketIdentity(topic + "!", id, ordinal, !flag));
                var read = Assert.IsType<MessageArrived>(JournalCodec.Read(JournalCodec.Write([message, message]))[1]);
                Assert.Equal(message with { Payload = default }, read with { Payload = default });
                Assert.Equal(payload, read.Payload.ToArray());
            }, iter: 20_000);

    [Fact]
    public void Every_kind_of_event_has_its_place_in_the_journal()
    {
        var kinds = typeof(PlantEvent).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(PlantEvent)) && !t.IsAbstract).ToHashSet();
        var met = new HashSet<Type>();
        // That random days meet every kind is checked here, so that the round trips above mean something.
        Walk.Acts.Sample(acts => { lock (met) met.UnionWith(Walk.Live(acts).Events.Select(e => e.GetType())); }, iter: 1000);
        Assert.Equal(kinds.Select(k => k.Name).Order(), met.Select(k => k.Name).Order());
    }

    [Fact]
    public void A_row_that_ends_too_early_is_refused_wherever_it_ends()
    {
        var bytes = JournalCodec.Write(Day());
        for (var length = 0; length < bytes.Length; length++) Refused(bytes[..length]);
    }

    [Fact]
    public void A_row_with_something_behind_its_end_is_refused() => Refused([.. JournalCodec.Write(Day()), 0]);

    [Fact]
    public void A_row_of_a_newer_version_is_refused_by_name()
    {
        var bytes = JournalCodec.Write(Day());
        bytes[0] = 2;
        Assert.Contains("version 2", Assert.Throws<InvalidDataException>(() => JournalCodec.Read(bytes)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Spoiled_rows_are_refused_or_still_events_the_step_can_take_and_never_anything_else()
    {
        var bytes = JournalCodec.Write(Day());
        var empty = CircuitState.Of(new CircuitPlan { Id = "hall", Name = "Hall", TimeZone = "Europe/London" });
        Gen.Select(Gen.Int[0, bytes.Length - 1], Gen.Byte, Gen.Int[0, 3]).Array[1, 4].Sample(changes =>
        {
            var spoiled = Spoil(bytes, changes);
            IReadOnlyList<PlantEvent> read;
            try
            {
                read = JournalCodec.Read(spoiled);
            }
            catch (Exception e) when (e is InvalidDataException or JsonException)
            {
                return;
            }

            Assert.True(read.Count <= spoiled.Length);
            Step.Run(empty, read);
        }, iter: 30_000);
    }

    [Fact]
    public void A_count_that_promises_two_thousand_million_events_takes_no_memory()
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        Refused([1, 0xFF, 0xFF, 0xFF, 0xFF, 0x07]);
        Refused([1, 1, 1, 0, 0, 0, 0xFF, 0xFF, 0xFF, 0xFF, 0x07]);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 2_000_000);
    }

    [Fact]
    public void A_check_whose_number_is_none_is_turned_down_and_the_journal_still_carries_it()
    {
        var bench = new Bench();
        var no = Assert.IsType<Outcome.TurnedDown>(bench.Check(Bench.Test(Measurand.Ph, double.PositiveInfinity)));
        Assert.Equal(("results[0].value", "check.not_a_number"), (no.Remarks[0].Field, no.Remarks[0].Reason.Code));
        var read = Assert.IsType<CheckEntered>(JournalCodec.Read(JournalCodec.Write([bench.Events[^1]]))[0]);
        Assert.Equal(double.PositiveInfinity, read.Check.Results[0].Value);
    }

    /// <remarks>Measured: plain numbers of seven probes at 1 Hz, QoS 1, 4 bytes of payload each. Beside the payload a message takes 11.0 bytes in a batch of 1000, 20.6 in one of 10 and 38 alone.</remarks>
    [Fact]
    public void A_plain_number_takes_no_more_than_fourteen_bytes_beside_its_payload()
    {
        PlantEvent[] batch = [.. Enumerable.Range(0, 1000).Select(i => new MessageArrived(
            Hall.Nine + TimeSpan.FromMicroseconds(i * 142_857L), $"hall/probe/{i % 7}", Encoding.UTF8.GetBytes("7.41"), false, new PacketIdentity("gateway", (i % 65535) + 1, i + 1, false)))];
        var beside = (JournalCodec.Write(batch).Length - (4.0 * batch.Length)) / batch.Length;
        Assert.InRange(beside, 8, 14);
    }

    private static List<PlantEvent> Day()
    {
        var bench = new Bench();
        bench.SaysOnce(Hall.Ph, "8.6");
        bench.Hold(TimeSpan.FromMinutes(1), (Hall.Ph, 8.6), (Hall.Flow, 1));
        bench.CheckBeside("main-ph", 8.6, Bench.Test(Measurand.Ph, 7.4), Bench.Test(Measurand.FreeChlorine, 1.2));
        bench.Run(at => new AlarmAcknowledged(at, bench.State.Alarms.Values.First().Id, "J. Sample", "seen"));
        bench.Run(at => new CalibrationProposed(at, new Core.Probes.Calibration { Id = TimeOrderedId.Derive(at, "c"), ProbeId = "main-ph", Offset = -1, ProposedBy = "R. Example" }));
        bench.Run(at => new SessionLost(at, at - TimeSpan.FromMinutes(3), "gateway"));
        return bench.Events;
    }

    private static byte[] Spoil(byte[] bytes, (int At, byte With, int How)[] changes)
    {
        var spoiled = new List<byte>(bytes);
        foreach (var (at, with, how) in changes)
        {
            var place = at % spoiled.Count;
            if (how == 0) spoiled.Insert(place, with);
            else if (how == 1) spoiled.RemoveAt(place);
            else spoiled[place] = how == 2 ? with : (byte)(spoiled[place] ^ (1 << (with % 8)));
        }

        return [.. spoiled];
    }

    private static void Refused(byte[] bytes)
    {
        var thrown = Record.Exception(() => JournalCodec.Read(bytes));
        Assert.True(thrown is InvalidDataException or JsonException, $"{bytes.Length} bytes: {thrown}");
    }

    private static string Text(PlantEvent happening) => happening is MessageArrived message
        ? $"{message.At} {message.Topic} {Convert.ToHexString(message.Payload.Span)} {message.Retained} {message.Packet}"
        : JsonSerializer.Serialize(happening, happening.GetType(), PlantJson.Options);
}
