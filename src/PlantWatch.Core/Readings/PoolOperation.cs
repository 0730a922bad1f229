using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>How a pool is run at the moment. An incident is not among them: it is open beside it, and closes the pool whatever this says.</summary>
public enum OperatingState
{
    /// <summary>Nobody has said: it is watched as an open pool is.</summary>
    NotStated = 0,
    /// <summary>Bathers may be in it.</summary>
    Open,
    /// <summary>Filled and treated, without bathers.</summary>
    Closed,
    /// <summary>Closed and covered, for the night or the season.</summary>
    Covered,
    /// <summary>Without water.</summary>
    Drained,
}

/// <summary>The operating state of a pool with who set it and why. The default is not stated.</summary>
/// <param name="State">How it is run.</param>
/// <param name="Since">Since when.</param>
/// <param name="By">Who said so; null while nobody did.</param>
/// <param name="Why">Why it was closed, or what was signed on opening.</param>
/// <param name="ForCause">It was closed because something was wrong: opening it again needs the signature of someone entitled.</param>
/// <param name="ActId">The act, or the incident, that set it.</param>
/// <param name="TestsFrom">Only what was sampled from then on speaks for opening: since it was closed for cause, or filled anew. Never when all does.</param>
public readonly record struct PoolOperation(OperatingState State, Instant Since, string? By, string? Why, bool ForCause, Guid ActId = default, Instant TestsFrom = default)
{
    /// <summary>Bathers may be in the water, or nobody has said that they may not.</summary>
    public bool MayBatheIn => State is OperatingState.NotStated or OperatingState.Open;
}
