using System.Collections.Immutable;

namespace PlantWatch.Core.Stock;

/// <summary>What a circuit knows of a product in the plant's store. The store is common: what is in it is the sum over the circuits.</summary>
/// <remarks>Each row is kept by one circuit: that of the tank or pool it concerns. Sums do not mind the order, so that what comes late and what is corrected comes out the same.</remarks>
public sealed record StoreState
{
    /// <summary>The product's id.</summary>
    public required string ProductId { get; init; }

    /// <summary>What the rows of this circuit add up to, in the product's unit; below nothing where it takes more from the store than it brings.</summary>
    public double Amount { get; init; }

    /// <summary>A delivery into the store or a count of it was written down here: only then is its amount known.</summary>
    public bool IsOpened { get; init; }

    /// <summary>The newest label that was written down of a delivery into the store; null while there is none.</summary>
    public StoreLabel? Label { get; init; }

    /// <summary>Price of a unit by the newest delivery that has one; null while there is none.</summary>
    public UnitPrice? Price { get; init; }

    /// <summary>Doses given by hand that were taken off, newest last: what is corrected is put back.</summary>
    public ImmutableArray<HandTaken> Taken { get; init; } = [];

    /// <summary>What was given by hand, by day.</summary>
    public ImmutableArray<DayUse> Days { get; init; } = [];
}

/// <summary>The label of a delivery.</summary>
/// <param name="Strength">Per cent.</param>
/// <param name="On">The day it held.</param>
/// <param name="Batch">Batch; null when nobody said.</param>
/// <param name="At">When it came.</param>
public sealed record StoreLabel(double Strength, DateOnly On, string? Batch, Quantities.Instant At);

/// <summary>Price of a unit.</summary>
/// <param name="Amount">In the plant's money.</param>
/// <param name="At">When it was paid.</param>
public readonly record struct UnitPrice(double Amount, Quantities.Instant At);

/// <summary>A dose that was taken from the store.</summary>
/// <param name="DoseId">The dose.</param>
/// <param name="Amount">How much, in the product's unit.</param>
/// <param name="Day">On which day of the site.</param>
public readonly record struct HandTaken(Guid DoseId, double Amount, DateOnly Day);
