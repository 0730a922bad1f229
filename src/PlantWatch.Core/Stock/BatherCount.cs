using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Stock;

/// <summary>How many people bathed in a pool on a day, as somebody counted or read it from the till. Of several for a day the newest counts; none is changed.</summary>
/// <param name="Id">UUIDv7 made where it was entered.</param>
/// <param name="PoolId">The pool.</param>
/// <param name="Day">The day of the site.</param>
/// <param name="Number">How many.</param>
/// <param name="By">Who says so.</param>
public sealed record BatherCount(Guid Id, string PoolId, DateOnly Day, int Number, string By)
{
    /// <summary>When it was said; never before the circuit took it.</summary>
    public Instant SaidAt { get; init; }
}
