using System.Collections.Immutable;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant;

/// <summary>What a batch of events made of a circuit: the next state, and everything the shell has to commit and tell.</summary>
/// <param name="Next">The state after the batch.</param>
/// <param name="Readings">Readings to store, in arrival order.</param>
/// <param name="Refusals">Refused items to keep.</param>
/// <param name="Entries">New rows of the record, in order.</param>
/// <param name="Renamed">Series whose key changed, old to new: their history follows.</param>
/// <param name="Outcomes">The answer to each event of the batch, in its order.</param>
public sealed record StepResult(
    CircuitState Next,
    ImmutableArray<Reading> Readings,
    ImmutableArray<Refusal> Refusals,
    ImmutableArray<RecordEntry> Entries,
    ImmutableArray<SeriesRenamed> Renamed,
    ImmutableArray<Outcome> Outcomes);

/// <summary>A series has a new key.</summary>
/// <param name="From">Old series key.</param>
/// <param name="To">New series key.</param>
public readonly record struct SeriesRenamed(string From, string To);
