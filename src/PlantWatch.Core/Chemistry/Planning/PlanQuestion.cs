using System.Collections.Immutable;

namespace PlantWatch.Core.Chemistry;

/// <summary>What a dosing plan is asked from.</summary>
public sealed record PlanQuestion
{
    /// <summary>The water as tested.</summary>
    public required TestedWater Water { get; init; }

    /// <summary>Volume of the circuit's water, balance tank included, m3.</summary>
    public required double CubicMetres { get; init; }

    /// <summary>Volume of the pool itself, m3: what is poured into it must be borne by this water until it has mixed. Null when the pool is all the water there is.</summary>
    public double? PoolCubicMetres { get; init; }

    /// <summary>The bands.</summary>
    public required ImmutableArray<Band> Bands { get; init; }

    /// <summary>Products that may be used here: what is refused has been left out before.</summary>
    public ImmutableArray<ProductAtHand> Products { get; init; } = [];

    /// <summary>Turnover time in h; null when not known.</summary>
    public double? TurnoverHours { get; init; }

    /// <summary>The fill water; null when not known.</summary>
    public Water? Fill { get; init; }

    /// <summary>What counts beside safety.</summary>
    public PlanWish Wish { get; init; }

    /// <summary>The most in one go.</summary>
    public StepCaps Caps { get; init; } = StepCaps.Usual;
}

/// <summary>What counts in a plan beside safety.</summary>
public enum PlanWish
{
    /// <summary>Low cost, but not at the price of many goes.</summary>
    FewerGoes = 0,
    /// <summary>The least cost of products, however many goes it takes.</summary>
    LeastCost,
}
