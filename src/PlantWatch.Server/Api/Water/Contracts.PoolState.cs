using PlantWatch.Core.Plant.Opening;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Server.Api;

//      GET /api/v1/pools/{id}/gate              -> GateView: what has to be so before the pool opens
//      PUT /api/v1/pools/{id}/state/{actId}     PoolStateRequest -> GateView: a person opens, closes, covers or drains a pool
//      GET /api/v1/pool-states[?pool=]          -> PoolStateChangeView[]: how pools were run, newest first, at most 200

/// <summary>How a pool is run.</summary>
/// <param name="State">Its state.</param>
/// <param name="Since">Since when; null while nobody said.</param>
/// <param name="By">Who said so.</param>
/// <param name="Why">Why.</param>
/// <param name="ForCause">It was closed because something was wrong.</param>
public sealed record OperationView(OperatingState State, Instant? Since, string? By, string? Why, bool ForCause);

/// <summary>A person says how a pool is run from now on.</summary>
/// <param name="State">How.</param>
/// <param name="By">Who.</param>
/// <param name="Why">Why; needed when it is for cause, and to open after that.</param>
/// <param name="ForCause">Something was wrong.</param>
/// <param name="Refilled">It holds new water.</param>
public sealed record PoolStateRequest(OperatingState State, string? By, string? Why = null, bool ForCause = false, bool Refilled = false);

/// <summary>The gate of a pool.</summary>
/// <param name="PoolId">The pool.</param>
/// <param name="Operation">How it is run.</param>
/// <param name="Passed">Every line is passed.</param>
/// <param name="Lines">Line by line.</param>
/// <param name="Signers">Who may sign that it opens after a cause; null when it was closed for none and needs no signature.</param>
public sealed record GateView(string PoolId, OperationView Operation, bool Passed, IReadOnlyList<GateLineView> Lines, IReadOnlyList<string>? Signers);

/// <summary>A line of the gate.</summary>
/// <param name="Code">What is asked.</param>
/// <param name="Word">How it stands.</param>
/// <param name="Why">Why.</param>
public sealed record GateLineView(string Code, GateWord Word, Said Why);

/// <summary>A change in how a pool is run, as the record has it.</summary>
/// <param name="At">When.</param>
/// <param name="PoolId">The pool.</param>
/// <param name="Before">How it was run before.</param>
/// <param name="State">How it was run from then on.</param>
/// <param name="By">Who said so.</param>
/// <param name="Why">Why, or what was signed on opening.</param>
/// <param name="ForCause">It was closed because something was wrong.</param>
/// <param name="ByIncident">An incident closed it.</param>
/// <param name="Refilled">It held new water from then on.</param>
public sealed record PoolStateChangeView(Instant At, string PoolId, OperatingState Before, OperatingState State, string? By, string? Why, bool ForCause, bool ByIncident, bool Refilled);
