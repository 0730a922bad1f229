using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Telling;

/// <summary>Tells a circuit when a channel does not deliver its messages, and when it does again: that alarm is one like any other, with its place in the record.</summary>
/// <remarks>It compares what the outbox says with what the circuit knows, so that a start anew neither forgets nor repeats it.</remarks>
internal sealed class ChannelWatch(PlantHost host, OutboxBook book, TimeProvider clock)
{
    public async Task LookAsync(PlantPlan plan, CircuitWorker circuit, CancellationToken cancellation)
    {
        foreach (var channel in plan.Telling.Channels)
        {
            var health = ChannelHealth.Of(book.Of(circuit.Partition), channel.Id);
            var fails = health.Fails(Instant.From(clock.GetUtcNow()));
            if (fails == IsKnown(circuit.State, channel.Id)) continue;
            await host.SendAsync(circuit.Partition.Value, at => new ChannelStateSaid(at, channel.Id, !fails, health.Trouble), cancellation);
        }
    }

    private static bool IsKnown(CircuitState state, string channel) => state.Alarms.TryGetValue(RuleBook.ChannelFails.KeyFor(channel), out var alarm) && alarm.Active;
}
