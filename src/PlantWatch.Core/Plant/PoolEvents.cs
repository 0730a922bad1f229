using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant;

/// <summary>A person says how a pool is run from now on. Closing is always possible; opening has to pass the gate.</summary>
/// <param name="At">When.</param>
/// <param name="ActId">Id of this act, UUIDv7.</param>
/// <param name="PoolId">The pool.</param>
/// <param name="State">How it is to be run.</param>
/// <param name="By">Who.</param>
/// <param name="Why">Why; needed when it is for cause, and to open after that.</param>
/// <param name="ForCause">Something was wrong.</param>
/// <param name="Refilled">It holds new water: nothing tested before is of it.</param>
public sealed record PoolStateSet(Instant At, Guid ActId, string PoolId, OperatingState State, string By, string? Why = null, bool ForCause = false, bool Refilled = false) : PlantEvent(At);

/// <summary>How a pool is run changed.</summary>
/// <param name="Before">How it was run.</param>
/// <param name="Operation">How it is run now, by whom and why.</param>
/// <param name="ByIncident">An incident closed it, in its own water or in that which it shares.</param>
/// <param name="Refilled">It holds new water.</param>
public sealed record PoolStateEntry(OperatingState Before, PoolOperation Operation, bool ByIncident, bool Refilled) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "pool_state";
}
