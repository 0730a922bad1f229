using System.Text.Json;
using CsCheck;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>What holds of the step whatever happens, in whatever order.</summary>
public sealed class StepProperties
{
    private const int Days = 300;

    private static readonly CircuitState Empty = CircuitState.Of(new CircuitPlan { Id = "hall", Name = "Hall", TimeZone = "Europe/London" });

    [Fact]
    public void Nothing_that_can_happen_throws_and_the_invariants_hold_after_every_event() =>
        Walk.Acts.Sample(acts => { Walk.Live(acts, bench => Invariants(bench.State)); }, iter: Days, print: Print);

    [Fact]
    public void How_events_are_cut_into_batches_changes_neither_the_state_nor_anything_that_comes_out() =>
        Gen.Select(Walk.Acts, Gen.Int[1, 40].Array[1, 8]).Sample((acts, sizes) =>
        {
            var live = Walk.Live(acts);
            var (state, told) = Cut(live.Events, sizes);
            Assert.Equal(PlantJson.HashOf(live.State), PlantJson.HashOf(state));
            Assert.Equal((live.Readings.Count, live.Refusals.Count, live.Entries.Count), (told.Readings, told.Refusals, told.Entries.Count));
            Assert.Equal(live.Entries.Select(e => e.Id), told.Entries);
        }, iter: Days);

    [Fact]
    public void A_state_is_the_same_live_from_a_snapshot_in_the_middle_and_from_the_journal_from_zero() =>
        Gen.Select(Walk.Acts, Gen.Double[0, 1]).Sample((acts, where) =>
        {
            var live = Walk.Live(acts);
            var middle = (int)(where * live.Events.Count);
            var half = Step.Run(Empty, live.Events[..middle]).Next;
            var snapshot = PlantJson.ReadState(PlantJson.Write(half));
            Assert.Equal(PlantJson.HashOf(half), PlantJson.HashOf(snapshot));
            Assert.Equal(PlantJson.HashOf(live.State), PlantJson.HashOf(Step.Run(snapshot, live.Events[middle..]).Next));
            Assert.Equal(PlantJson.HashOf(live.State), PlantJson.HashOf(Step.Run(Empty, JournalCodec.Read(JournalCodec.Write(live.Events))).Next));
        }, iter: Days);

    private static (CircuitState State, (int Readings, int Refusals, List<Guid> Entries) Told) Cut(List<PlantEvent> events, int[] sizes)
    {
        var (state, readings, refusals, entries) = (Empty, 0, 0, new List<Guid>());
        for (int at = 0, i = 0; at < events.Count; i++)
        {
            var result = Step.Run(state, events.GetRange(at, Math.Min(sizes[i % sizes.Length], events.Count - at)));
            at += result.Outcomes.Length;
            state = result.Next;
            readings += result.Readings.Length;
            refusals += result.Refusals.Length;
            entries.AddRange(result.Entries.Select(e => e.Id));
        }

        return (state, (readings, refusals, entries));
    }

    private static void Invariants(CircuitState state)
    {
        var ledger = state.Ledger;
        Assert.Equal(ledger.Received, ledger.Stored + ledger.Duplicates + ledger.Refused);
        Assert.Equal(state.Plan.Probes.Select(p => p.Id), state.Probes.Select(p => p.Id));
        Assert.Equal(state.Plan.Pools.Select(p => p.Id), state.Pools.Select(p => p.Id));
        Assert.Equal(state.Plan.Pumps.Select(p => p.Id), state.Pumps.Select(p => p.Id));
        Assert.True(state.Packets.Recent.Length <= PacketMemory.Capacity);
        foreach (var alarm in state.Alarms.Values) Sound(state, alarm);
    }

    private static void Sound(CircuitState state, AlarmRecord alarm)
    {
        var rule = RuleBook.All[alarm.Rule];
        // Of two that meet under one name, the one that only waits to be seen stands beside under a longer key.
        if (alarm.Key == $"{rule.KeyFor(alarm.Subject)}/{alarm.Id:N}") Assert.False(alarm.Active, $"{alarm.Key} is active, and nothing asks for it under that key");
        else Assert.Equal(rule.KeyFor(alarm.Subject), alarm.Key);
        // A latch outlives the line of the plant file it was about.
        if (alarm.Active || !alarm.LatchHeld) Assert.Contains(alarm.Subject.Split('/')[0], state.Plan.Probes.Select(p => p.Id).Concat(state.Plan.Pools.Select(p => p.Id)).Concat(state.Plan.Pumps.Select(p => p.Id)).Concat(state.Plan.Reagents.Select(r => r.Id)).Concat(state.Plan.Products.Select(p => p.Id)).Concat(state.Plan.Telling.Channels.Select(c => c.Id)).Append(state.Plan.Id));
        Assert.True(!alarm.ShelvedUntil.IsSet || rule.Shelvable);
        Assert.False(AlarmLife.IsOver(alarm), $"{alarm.Key} is kept although nothing of it needs to be remembered");
        Assert.True(alarm.Id != Guid.Empty || (!alarm.Active && alarm.IsAcknowledged), $"{alarm.Key} was raised without an id");
        Assert.False(alarm.Active && alarm.ClearedAt.IsSet);
    }

    private static string Print(Walk.Act[] acts) => JsonSerializer.Serialize(acts.Select(a => new[] { a.What, a.A, a.B }));
}
