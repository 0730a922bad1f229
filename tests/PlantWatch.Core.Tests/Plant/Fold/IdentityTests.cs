using System.Text;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>Which messages are one reading and which are two.</summary>
public sealed class IdentityTests
{
    private readonly Bench _bench = new();

    [Fact]
    public void Two_equal_plain_numbers_in_a_row_are_two_readings()
    {
        _bench.SaysOnce(Hall.Ph, "7.4");
        _bench.SaysOnce(Hall.Ph, "7.4");
        Assert.Equal(2, _bench.Readings.Count);
        Assert.All(_bench.Readings, r => Assert.Equal(Order.Newest, r.Order));
        Assert.Equal((2, 0), (_bench.Ledger.StoredByPacket, _bench.Ledger.Duplicates));
    }

    [Fact]
    public void A_redelivered_packet_is_one_reading()
    {
        var packet = _bench.SaysOnce(Hall.Ph, "7.4");
        _bench.SaysOnce(Hall.Orp, "720");
        Again(packet, packet.Ordinal + 2);
        Assert.Equal((3, 2, 1), (_bench.Ledger.Received, _bench.Ledger.Stored, _bench.Ledger.Duplicates));
    }

    [Fact]
    public void A_redelivered_pack_counts_each_of_its_records()
    {
        const string pack = """[{"n":"learner:ph","v":7.4},{"n":"learner:temperature","v":30},{"n":"learner:none","v":1}]""";
        var packet = _bench.SaysOnce(Hall.Learner, pack);
        _bench.Says(Hall.Learner, Encoding.UTF8.GetBytes(pack), packet: packet with { Redelivered = true });
        Assert.Equal((6, 2, 1, 3), (_bench.Ledger.Received, _bench.Ledger.Stored, _bench.Ledger.Refused, _bench.Ledger.Duplicates));
    }

    [Theory]
    [InlineData("another value", "7.5", Hall.Ph, "gateway", 1, true)]
    [InlineData("another topic", "7.4", Hall.Orp, "gateway", 1, true)]
    [InlineData("another session", "7.4", Hall.Ph, "other", 1, true)]
    [InlineData("another packet", "7.4", Hall.Ph, "gateway", 2, true)]
    [InlineData("no redelivery", "7.4", Hall.Ph, "gateway", 1, false)]
    public void Only_the_same_packet_with_the_same_content_sent_again_is_a_duplicate(string why, string payload, string topic, string session, int id, bool redelivered)
    {
        _bench.SaysOnce(Hall.Ph, "7.4");
        _bench.Says(topic, Encoding.UTF8.GetBytes(payload), packet: new PacketIdentity(session, id, 2, redelivered));
        Assert.True(_bench.Ledger.Duplicates == 0 && _bench.Ledger.Received == 2, why);
    }

    [Fact]
    public void A_packet_identifier_that_came_round_is_no_redelivery()
    {
        var packet = _bench.SaysOnce(Hall.Ph, "7.4");
        Again(packet, packet.Ordinal + 40_000);
        Assert.Equal((2, 0), (_bench.Ledger.Stored, _bench.Ledger.Duplicates));
    }

    [Fact]
    public void A_number_at_QoS_0_is_counted_as_stored_at_least_once()
    {
        _bench.Says(Hall.Ph, "7.4");
        _bench.Says(Hall.Ph, "7.4"u8.ToArray(), packet: new PacketIdentity("gateway", 0, 1, false));
        Assert.Equal((2, 0), (_bench.Ledger.StoredAtLeastOnce, _bench.Ledger.StoredByPacket));
    }

    [Fact]
    public void The_same_device_time_with_the_same_value_is_a_duplicate_however_it_arrives()
    {
        var at = _bench.Now;
        _bench.LearnerSays("ph", at, 7.4);
        _bench.Pass(TimeSpan.FromSeconds(30));
        _bench.LearnerSays("ph", at, 7.4);
        Assert.Equal((1, 1), (_bench.Ledger.StoredByDeviceTime, _bench.Ledger.Duplicates));
        Assert.Single(_bench.Readings);
    }

    [Fact]
    public void What_comes_out_of_order_is_back_fill_and_leaves_the_newest_alone()
    {
        var at = _bench.Now;
        _bench.LearnerSays("ph", at, 7.4);
        _bench.LearnerSays("ph", at - TimeSpan.FromSeconds(30), 7.3);
        Assert.Equal([Order.Newest, Order.BackFill], _bench.Readings.Select(r => r.Order));
        Assert.Equal((at, 7.4), (_bench.Probe("learner-ph").Last.MeasuredAt, _bench.Probe("learner-ph").Last.Raw));
    }

    [Fact]
    public void A_backlog_that_waited_hours_at_the_broker_is_late_even_before_the_first_tick()
    {
        _bench.LearnerSays("ph", _bench.Now - TimeSpan.FromHours(3), 6.2);
        Assert.Equal(Quality.Received | Quality.Late, _bench.Readings[0].Quality);
        Assert.Empty(_bench.State.Alarms);
    }

    [Fact]
    public void After_a_probe_changed_its_meaning_an_old_device_time_is_left_to_the_storage_to_judge()
    {
        var at = _bench.Now;
        _bench.LearnerSays("ph", at, 7.4);
        _bench.Load(Hall.Plan.With("learner-ph", p => p with { Origin = SignalOrigin.PanelScaled }));
        _bench.LearnerSays("ph", at, 7.4);
        Assert.Empty(_bench.Refusals);
        Assert.Equal(Order.BackFill, _bench.Readings[^1].Order);
    }

    [Theory]
    [InlineData(1), InlineData(4096), InlineData(6000)]
    public void Where_a_batch_ends_does_not_decide_what_is_remembered(int cut)
    {
        List<PlantEvent> events = [new PlanLoaded(Hall.Nine, Hall.Plan)];
        for (var i = 1; i <= 6000; i++) events.Add(Packet(i, i, redelivered: false));
        // The first is older than what is remembered, the last is not.
        events.Add(Packet(1, 6001, redelivered: true));
        events.Add(Packet(6000, 6002, redelivered: true));
        var one = Step.Run(Empty, events).Next;
        var two = Step.Run(Step.Run(Empty, events[..cut]).Next, events[cut..]).Next;
        Assert.Equal(PlantJson.HashOf(one), PlantJson.HashOf(two));
        Assert.Equal((6001, 1), (one.Ledger.Stored, one.Ledger.Duplicates));
        Assert.Equal(PacketMemory.Capacity, one.Packets.Recent.Length);
    }

    [Fact]
    public void Sessions_with_ever_new_names_do_not_fill_the_memory_and_are_forgotten_at_the_same_event_however_batches_are_cut()
    {
        List<PlantEvent> events = [new PlanLoaded(Hall.Nine, Hall.Plan)];
        for (var i = 1; i <= 12_000; i++) events.Add(Packet(7, i, redelivered: false, session: $"device-{i}"));
        var one = Step.Run(Empty, events).Next;
        Assert.True(one.Packets.Sessions.Length <= PacketMemory.Capacity + 1024);
        Assert.Equal(one.Packets.Sessions.Length, one.Packets.Ordinals.Length);
        Assert.All(one.Packets.Recent, p => Assert.InRange(p.Session, 0, one.Packets.Sessions.Length - 1));

        var cut = events.Chunk(700).Aggregate(Empty, (state, batch) => Step.Run(state, batch).Next);
        Assert.Equal(PlantJson.HashOf(one), PlantJson.HashOf(cut));
        var again = Step.Run(cut, [Packet(7, 1, redelivered: true, session: "device-12000") with { Payload = Digits(12_000) }]);
        Assert.Equal(1, again.Next.Ledger.Duplicates);
    }

    private static readonly CircuitState Empty = CircuitState.Of(new CircuitPlan { Id = "hall", Name = "Hall", TimeZone = "Europe/London" });

    private static MessageArrived Packet(int id, int ordinal, bool redelivered, string session = "gateway") => new(
        Hall.Nine + TimeSpan.FromMilliseconds(ordinal), Hall.Orp, Digits(session == "gateway" ? id : ordinal), false, new PacketIdentity(session, id, ordinal, redelivered));

    private static byte[] Digits(int i) => Encoding.UTF8.GetBytes($"{i % 1000}");

    private void Again(PacketIdentity packet, long ordinal) =>
        _bench.Says(Hall.Ph, "7.4"u8.ToArray(), packet: packet with { Redelivered = true, Ordinal = ordinal });
}
