using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Plant;

/// <summary>A person wrote down a delivery, a refill or a count, or corrects one.</summary>
/// <param name="At">When.</param>
/// <param name="Move">What was done.</param>
public sealed record StockMoved(Instant At, StockMove Move) : PlantEvent(At);

/// <summary>A person said how many bathed in a pool on a day.</summary>
public sealed record BathersCounted(Instant At, BatherCount Count) : PlantEvent(At);

/// <summary>How long a product lasts, over all circuits and the store, as the shell worked it out. A circuit tells of it.</summary>
/// <param name="At">When it was said.</param>
/// <param name="ProductId">The product.</param>
/// <param name="RunsOut">It may be used up before an order would come.</param>
/// <param name="Days">Days until it may be used up, rounded down.</param>
public sealed record StockOutlookSaid(Instant At, string ProductId, bool RunsOut, int Days) : PlantEvent(At);

/// <summary>A delivery, a refill or a count.</summary>
public sealed record StockEntry(StockMove Move, Instant ArrivedAt) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "stock";
}

/// <summary>What was used of a product on a day.</summary>
public sealed record UseEntry(UseRow Use) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "chemical_use";
}

/// <summary>How many bathed in a pool on a day.</summary>
public sealed record BathersEntry(BatherCount Count) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "bathers";
}
