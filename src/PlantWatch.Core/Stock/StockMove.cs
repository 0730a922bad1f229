using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Stock;

/// <summary>What a person did with chemicals in stock.</summary>
public enum StockAct
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>They came to the plant: into a tank, or into the store.</summary>
    Delivered,
    /// <summary>Taken from the store and put into a tank.</summary>
    Refilled,
    /// <summary>Counted, weighed or dipped: the book is put right by the difference, and nothing before it is changed.</summary>
    Counted,
}

/// <summary>What the stock of a product is counted in.</summary>
public enum StockUnit
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Litres: liquids.</summary>
    Litre,
    /// <summary>Kilograms: everything else.</summary>
    Kilogram,
}

/// <summary>A delivery, a refill or a count, as people wrote it down. A correction is a new one that names the old.</summary>
public sealed record StockMove
{
    /// <summary>UUIDv7 made where it was entered, so that sending it twice is harmless.</summary>
    public required Guid Id { get; init; }

    /// <summary>What was done.</summary>
    public StockAct Act { get; init; }

    /// <summary>The product by its label.</summary>
    public required string ProductId { get; init; }

    /// <summary>Its name at the time.</summary>
    public string Product { get; init; } = "";

    /// <summary>What it is chemically.</summary>
    public ProductKind Kind { get; init; }

    /// <summary>The pump whose tank it went into, or was counted in; null for the store.</summary>
    public string? PumpId { get; init; }

    /// <summary>How much, in <see cref="Unit"/>; of a count what was found.</summary>
    public required double Amount { get; init; }

    /// <summary>What <see cref="Amount"/> counts.</summary>
    public StockUnit Unit { get; init; }

    /// <summary>How many containers that was; null when nobody said.</summary>
    public int? Containers { get; init; }

    /// <summary>Batch as printed; null when nobody said.</summary>
    public string? Batch { get; init; }

    /// <summary>Strength on the label in per cent, of the meaning that the plant file gives for the product; null when nobody said.</summary>
    public double? Strength { get; init; }

    /// <summary>The day it was made, as printed; null when nobody said: then it counts as made on the day it came.</summary>
    public DateOnly? MadeOn { get; init; }

    /// <summary>What the delivery cost, in the plant's money; null when nobody said.</summary>
    public double? Price { get; init; }

    /// <summary>Of a count, what the book said there.</summary>
    public double? Book { get; init; }

    /// <summary>When it was done.</summary>
    public required Instant HappenedAt { get; init; }

    /// <summary>Who received, filled or counted.</summary>
    public required string By { get; init; }

    /// <summary>Who read label and tank beside them: somebody else.</summary>
    public string CheckedBy { get; init; } = "";

    /// <summary>Product and tank differ, and it has been put in all the same: that is told, and not only refused.</summary>
    public bool WentIn { get; init; }

    /// <summary>A remark.</summary>
    public string? Note { get; init; }

    /// <summary>The row that this one corrects; null for a new one.</summary>
    public Guid? Corrects { get; init; }

    /// <summary>Why it was corrected; required with <see cref="Corrects"/>.</summary>
    public string? CorrectionReason { get; init; }

    /// <summary>It fills a tank: two people have read label and tank.</summary>
    public bool FillsTank => PumpId is not null && Act is (StockAct.Delivered or StockAct.Refilled);

    /// <summary>What it adds to the store; a refill takes away, and a count puts the book right.</summary>
    public double ToStore => Act switch
    {
        StockAct.Delivered when PumpId is null => Amount,
        StockAct.Refilled => -Amount,
        StockAct.Counted when PumpId is null => Amount - (Book ?? 0),
        _ => 0,
    };

    /// <summary>Price of a unit, where the delivery has one; null for next to nothing, whose price has no end.</summary>
    public double? UnitPrice => Act == StockAct.Delivered && Price is { } price && Amount > 0 && double.IsFinite(price / Amount) ? price / Amount : null;
}
