using System.Text;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>Whose packets are remembered when there are more than fit.</summary>
public sealed class PacketSharesTests
{
    private static readonly CircuitState Empty = CircuitState.Of(new CircuitPlan { Id = "hall", Name = "Hall", TimeZone = "Europe/London" });

    [Fact]
    public void What_a_device_sends_again_after_a_long_outage_is_known_though_the_others_went_on()
    {
        List<PlantEvent> events = [new PlanLoaded(Hall.Nine, Hall.Plan)];
        for (var id = 1; id <= 20; id++) events.Add(Packet("away", id, events.Count));
        for (var i = 0; i < 30_000; i++) events.Add(Packet($"busy-{i % 19}", (i / 19) + 1, events.Count));
        for (var id = 1; id <= 20; id++) events.Add(Packet("away", id, events.Count, redelivered: true));

        var ledger = Step.Run(Empty, events).Next.Ledger;

        Assert.Equal((30_020, 20), (ledger.Stored, ledger.Duplicates));
    }

    [Fact]
    public void The_only_session_has_the_whole_memory()
    {
        List<PlantEvent> events = [new PlanLoaded(Hall.Nine, Hall.Plan)];
        for (var id = 1; id <= 6000; id++) events.Add(Packet("broker", id, events.Count));
        events.Add(Packet("broker", 6000 - PacketMemory.Capacity, events.Count, redelivered: true)); // just forgotten
        for (var id = 6000 - PacketMemory.Capacity + 2; id <= 6000; id++) events.Add(Packet("broker", id, events.Count, redelivered: true));

        var ledger = Step.Run(Empty, events).Next.Ledger;

        Assert.Equal((6001, PacketMemory.Capacity - 1), (ledger.Stored, ledger.Duplicates));
    }

    [Theory]
    [InlineData(1), InlineData(7), InlineData(997)]
    public void What_is_forgotten_does_not_depend_on_where_batches_end(int size)
    {
        var chance = new Random(size);
        List<PlantEvent> events = [new PlanLoaded(Hall.Nine, Hall.Plan)];
        var lastIds = new Dictionary<int, int>();
        for (var i = 0; i < 9000; i++)
        {
            // A few talk much, many seldom, more in all than the memory has names for.
            var device = (int)Math.Pow(chance.NextDouble() * 11.5, 3);
            var redelivered = chance.Next(10) == 0 && lastIds.ContainsKey(device);
            var id = redelivered ? lastIds[device] : lastIds[device] = lastIds.GetValueOrDefault(device) + 1;
            events.Add(Packet($"d{device}", id, events.Count, redelivered));
        }

        var whole = Step.Run(Empty, events).Next;
        var cut = events.Chunk(size).Aggregate(Empty, (state, batch) => Step.Run(state, batch).Next);

        Assert.InRange(whole.Packets.Recent.Length, PacketMemory.Capacity / 2, PacketMemory.Capacity);
        Assert.InRange(whole.Packets.Sessions.Length, 1, PacketMemory.MostSessions);
        Assert.Equal(PlantJson.HashOf(whole), PlantJson.HashOf(cut));
    }

    [Fact]
    public void A_redelivered_message_that_was_refused_is_not_refused_a_second_time()
    {
        var first = Packet("broker", 1, 1) with { Topic = "hall/nobody" };
        var again = Packet("broker", 1, 2, redelivered: true) with { Topic = "hall/nobody" };

        var result = Step.Run(Empty, [new PlanLoaded(Hall.Nine, Hall.Plan), first, again]);

        Assert.Single(result.Refusals);
        Assert.Equal((2, 1, 1), (result.Next.Ledger.Received, result.Next.Ledger.Refused, result.Next.Ledger.Duplicates));
    }

    private static MessageArrived Packet(string session, int id, int ordinal, bool redelivered = false) => new(
        Hall.Nine + TimeSpan.FromMilliseconds(ordinal), Hall.Orp, Encoding.UTF8.GetBytes($"{id % 2}"), false, new PacketIdentity(session, id, ordinal, redelivered));
}
