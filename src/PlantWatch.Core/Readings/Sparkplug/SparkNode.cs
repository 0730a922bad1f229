using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>What became of a step.</summary>
/// <param name="Next">The state after it.</param>
/// <param name="Readings">In the order of the node's messages.</param>
/// <param name="Notes">In the order they were made.</param>
/// <param name="Rebirth">The effect; null for none.</param>
public sealed record SparkStep(SparkNodeState Next, ImmutableArray<SparkReading> Readings, ImmutableArray<SparkNote> Notes, RebirthWanted? Rebirth);

/// <summary>The session of one edge node as a fold over its messages (Sparkplug 3.0.0, chapter 5, the part of a host application). docs/sparkplug.md goes through its clauses.</summary>
public static class SparkNode
{
    /// <summary>Takes a message of the node. Never throws for anything that can arrive.</summary>
    /// <param name="state">What was known.</param>
    /// <param name="message">The message, decoded; of this node.</param>
    /// <param name="receivedAt">Now.</param>
    /// <param name="rules">What may be done.</param>
    /// <exception cref="ArgumentException">The message is another node's.</exception>
    public static SparkStep Step(SparkNodeState state, SparkMessage message, Instant receivedAt, SparkRules rules)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(rules);
        if (message.Topic.Group != state.Group || message.Topic.Node != state.Node) throw new ArgumentException("a message of another node", nameof(message));
        var fold = new SparkFold(state, receivedAt, rules);
        fold.LetTimePass();
        fold.Take(message);
        fold.LetTimePass();
        return fold.Result;
    }

    /// <summary>Lets time pass: what is missing for too long is given up.</summary>
    public static SparkStep Tick(SparkNodeState state, Instant now, SparkRules rules)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(rules);
        var fold = new SparkFold(state, now, rules);
        fold.LetTimePass();
        return fold.Result;
    }
}
