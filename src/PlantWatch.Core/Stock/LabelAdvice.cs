using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Stock;

/// <summary>What a label is worth saying of, though nothing about it is wrong.</summary>
public static class LabelAdvice
{
    // Labels are good to 3 % (common practice): a tenth apart is another grade or an old drum.
    private const double Apart = 0.1;

    /// <summary>What there is to say; mostly nothing.</summary>
    /// <param name="product">The product as the plant file has it.</param>
    /// <param name="move">The row with the label.</param>
    /// <param name="day">The day it came.</param>
    public static ImmutableArray<Reason> Of(ProductPlan product, StockMove move, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(product);
        ArgumentNullException.ThrowIfNull(move);
        if (move.Act == StockAct.Counted || move.Strength is not { } label) return [];
        var says = ImmutableArray.CreateBuilder<Reason>();
        if (product.Strength is > 0 and { } plan && Math.Abs(label - plan) > Apart * plan) says.Add(Reason.Of("stock.strength_differs", product.Name, label, plan));
        if (move.MadeOn is { } made && TankMix.Aged(product, label, made, day) is var left && left < (1 - Apart) * label)
            says.Add(Reason.Of("stock.aged", product.Name, label, left, day.DayNumber - made.DayNumber));
        return says.ToImmutable();
    }
}
