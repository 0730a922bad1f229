namespace PlantWatch.Core.Stock;

/// <summary>What was used of a product on a day, as a row of the record says it. Rows of one day add up; what is put right later is a row of its own, which may be negative.</summary>
/// <param name="ProductId">The product.</param>
/// <param name="PumpId">The pump that dosed it; null for what people gave.</param>
/// <param name="Day">The day of the site.</param>
/// <param name="Amount">How much, in <paramref name="Unit"/>.</param>
/// <param name="Unit">What it counts.</param>
/// <param name="Hours">For how many hours of the day it is known; 0 for what people gave.</param>
/// <param name="Source">How it is known.</param>
/// <param name="UnitPrice">Price of a unit on that day, in the plant's money; null when none was known.</param>
public sealed record UseRow(string ProductId, string? PumpId, DateOnly Day, double Amount, StockUnit Unit, double Hours, UseSource Source, double? UnitPrice)
{
    /// <summary>What that cost; null when no price was known.</summary>
    public double? Cost => UnitPrice is { } price ? Amount * price : null;
}
