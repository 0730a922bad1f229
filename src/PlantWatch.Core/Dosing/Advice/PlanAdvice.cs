using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing;

/// <summary>A product that the plan leaves out, and why.</summary>
/// <param name="Product">The product.</param>
/// <param name="Because">Why it may not go into this pool.</param>
public sealed record LeftOut(ProductAtHand Product, ImmutableArray<Reason> Because);

/// <summary>A dosing plan with what stands before it. Advice, never a command; local codes and licensed practice come first.</summary>
public sealed record PlanAdvice
{
    /// <summary>Why no plan is given; empty when one is.</summary>
    public required ImmutableArray<Reason> Refused { get; init; }

    /// <summary>The plan, its steps left out where it is refused.</summary>
    public required DosingPlan Plan { get; init; }

    /// <summary>Water of the circuit, m3.</summary>
    public required double CubicMetres { get; init; }

    /// <summary>Hours to wait after each step.</summary>
    public required double RetestHours { get; init; }

    /// <summary>Products that may not go into this pool.</summary>
    public ImmutableArray<LeftOut> LeftOut { get; init; } = [];

    /// <summary>What has to be said beside it.</summary>
    public ImmutableArray<Reason> Says { get; init; } = [];
}
