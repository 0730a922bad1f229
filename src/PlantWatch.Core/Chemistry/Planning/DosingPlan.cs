using System.Collections.Immutable;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>How a plan ended.</summary>
public enum PlanOutcome
{
    /// <summary>Not worked out.</summary>
    Unknown = 0,
    /// <summary>Every tested figure is inside its band, or outside by less than its test can tell: nothing to do.</summary>
    NothingToDo,
    /// <summary>The steps bring every tested figure inside its band.</summary>
    Planned,
    /// <summary>Products alone cannot; after the dilution the steps do.</summary>
    PlannedAfterDilution,
    /// <summary>For some band there is nothing at hand; the steps do the rest.</summary>
    PlannedInPart,
    /// <summary>Nothing at hand brings the water inside its bands.</summary>
    NoPlan,
    /// <summary>Too little is known of the water.</summary>
    Missing,
    /// <summary>The bands exclude each other, whatever is added.</summary>
    ContradictoryBands,
    /// <summary>The tested figures cannot belong to one water, or lie outside what the equilibrium is good for.</summary>
    ImpossibleWater,
    /// <summary>The amounts exist, but in no order can they be added without passing a limit on the way.</summary>
    NoSafeOrder,
    /// <summary>Something stands before any plan: volume, tests, bathers, the person. No steps are given.</summary>
    Refused,
}

/// <summary>From a tested water to inside every band. Advice, never a command: closed to the air, nothing precipitated, and only as good as the tests.</summary>
public sealed record DosingPlan
{
    /// <summary>How it ended.</summary>
    public required PlanOutcome Outcome { get; init; }

    /// <summary>Each band with the figure as it is.</summary>
    public ImmutableArray<Aim> Aims { get; init; } = [];

    /// <summary>The water now; null when it cannot be worked out.</summary>
    public Speciation? Now { get; init; }

    /// <summary>The dilution that comes first; null for none.</summary>
    public Dilution? Dilution { get; init; }

    /// <summary>The steps in order.</summary>
    public ImmutableArray<PlanStep> Steps { get; init; } = [];

    /// <summary>True when more goes would follow: only the first ones are given, and the rest is planned anew from a full test.</summary>
    public bool IsOnlyTheStart { get; init; }

    /// <summary>The water at the end; null without steps.</summary>
    public Speciation? End { get; init; }

    /// <summary>Cost in the plant's money, or kg where a product has no price; null without steps.</summary>
    public double? Cost { get; init; }

    /// <summary>True when the cost is counted in kg because a product that may be used has no price.</summary>
    public bool CostIsMass { get; init; }

    /// <summary>Bands that nothing at hand reaches.</summary>
    public ImmutableArray<PlannedFigure> OutOfReach { get; init; } = [];

    /// <summary>What has to be said: why there is no plan, what is missing, what was assumed.</summary>
    public ImmutableArray<Reason> Says { get; init; } = [];

    /// <summary>How often the equilibrium was solved for it.</summary>
    public int SolverCalls { get; init; }
}

/// <summary>One step.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="Product">The product; null where none is added.</param>
/// <param name="Kilograms">kg of it, as delivered; 0 where none is added.</param>
/// <param name="Part">Which go of this product.</param>
/// <param name="Parts">Of how many.</param>
/// <param name="Before">The water before.</param>
/// <param name="After">The water once mixed, closed to the air.</param>
/// <param name="WaitHours">Hours of circulation before the retest; null when the turnover is not known.</param>
/// <param name="Says">What has to be said of it.</param>
public sealed record PlanStep(
    MeansKind Kind, ProductAtHand? Product, double Kilograms, int Part, int Parts, Speciation Before, Speciation After, double? WaitHours, ImmutableArray<Reason> Says);

/// <summary>Replacing a part of the water by fill water.</summary>
/// <param name="Part">The smallest part that makes a plan possible, rounded up to a per cent, 0 to 1.</param>
/// <param name="CubicMetres">The same in m3, drained before it is filled up.</param>
/// <param name="OverflowCubicMetres">m3 to run in instead while mixed water overflows.</param>
/// <param name="Drains">In how many drains of at most a third.</param>
/// <param name="After">The water after it; null when the fill water is not known.</param>
public sealed record Dilution(double Part, double CubicMetres, double OverflowCubicMetres, int Drains, Speciation? After)
{
    internal static Dilution Of(double part, double cubicMetres, Speciation? after) => new(
        part, part * cubicMetres, -Math.Log(1 - part) * cubicMetres, (int)Math.Ceiling((Math.Log(1 - part) / Math.Log(1 - PartialDrain.MostAtOnce)) - 1e-9), after);
}
