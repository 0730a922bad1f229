using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- POST /api/v1/pools/{id}/dosing-plan  DosingPlanRequest -> DosingPlanView (200; a refusal is an answer too) or Problem (400/404). Nothing is recorded, no pump is told.

/// <summary>What a plan is asked for.</summary>
/// <param name="Water">Figures a person states in place of the newest tests; null for none.</param>
/// <param name="Fill">The fill water; null when not known. It counts when pH, temperature, alkalinity, hardness and solids are given.</param>
/// <param name="BathersOut">The person says that nobody is in the water; null when not said.</param>
/// <param name="Wish">What counts beside safety.</param>
public sealed record DosingPlanRequest(WhatIfWater? Water = null, WhatIfWater? Fill = null, bool? BathersOut = null, PlanWish Wish = PlanWish.FewerGoes);

/// <summary>A dosing plan. Advice, never an order.</summary>
/// <param name="At">Server time.</param>
/// <param name="Outcome">How it ended.</param>
/// <param name="Headline">The same in a sentence.</param>
/// <param name="Refused">Why no plan is given; empty when one is.</param>
/// <param name="Figures">Each band with the figure as it is and as it will be.</param>
/// <param name="Inputs">Where the figures come from.</param>
/// <param name="Volume">Water of the circuit.</param>
/// <param name="Dilution">What is drained and filled up first; null for nothing.</param>
/// <param name="Steps">The steps in order.</param>
/// <param name="Cost">Cost of the products in the plant's money; null without, or where it is counted by mass.</param>
/// <param name="Mass">All products together.</param>
/// <param name="Says">Why there is no plan, what is missing, what was assumed.</param>
/// <param name="LeftOut">Products that may not go into this pool, and why.</param>
/// <param name="Always">Cautions that stand under every plan.</param>
public sealed record DosingPlanView(
    Instant At, PlanOutcome Outcome, string Headline, IReadOnlyList<Said> Refused, IReadOnlyList<PlanFigureView> Figures, IReadOnlyList<BalanceInput> Inputs, Amount Volume,
    PlanDilutionView? Dilution, IReadOnlyList<PlanStepView> Steps, double? Cost, Amount? Mass, IReadOnlyList<Said> Says, IReadOnlyList<PlanLeftOutView> LeftOut, IReadOnlyList<Said> Always);

/// <summary>A band with its figure.</summary>
/// <param name="Figure">Which.</param>
/// <param name="Now">As tested; null when it was not.</param>
/// <param name="U">Expanded uncertainty, k = 2; null without a figure.</param>
/// <param name="Low">Lower end; null when open.</param>
/// <param name="High">Upper end; null when open.</param>
/// <param name="LowSource">Where the lower end is from; null for a handbook aim (common practice).</param>
/// <param name="HighSource">The same for the upper end.</param>
/// <param name="Standing">How the figure stands to it.</param>
/// <param name="Then">As worked out for the end of the plan; null without one.</param>
public sealed record PlanFigureView(
    PlannedFigure Figure, double? Now, double? U, double? Low, double? High, string? LowSource, string? HighSource, BandStanding Standing, double? Then);

/// <summary>A dilution.</summary>
/// <param name="Percent">Part of the water, per cent.</param>
/// <param name="Drain">Water to drain and fill up again.</param>
/// <param name="Overflow">Water to run in instead while it overflows.</param>
/// <param name="Drains">In how many drains.</param>
/// <param name="After">The water after it.</param>
public sealed record PlanDilutionView(double Percent, Amount Drain, Amount Overflow, int Drains, DoseFigures? After);

/// <summary>One step.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="Product">The product; null where none is added.</param>
/// <param name="Mass">How much.</param>
/// <param name="Litres">The same as volume, for a liquid.</param>
/// <param name="Part">Which go of this product.</param>
/// <param name="Parts">Of how many.</param>
/// <param name="Before">The water before.</param>
/// <param name="After">The water after, mixed.</param>
/// <param name="WaitHours">Hours of circulation before the retest; null where the test itself says when.</param>
/// <param name="Says">What has to be said of this step.</param>
/// <param name="Equipment">What to wear.</param>
/// <param name="Precautions">How to handle it and what it must not meet.</param>
public sealed record PlanStepView(
    MeansKind Kind, DoseProductView? Product, Amount? Mass, Amount? Litres, int Part, int Parts, DoseFigures Before, DoseFigures After, double? WaitHours, IReadOnlyList<Said> Says,
    IReadOnlyList<Said> Equipment, IReadOnlyList<Said> Precautions);

/// <summary>A product left out.</summary>
/// <param name="Name">As on the drum.</param>
/// <param name="Because">Why.</param>
public sealed record PlanLeftOutView(string Name, IReadOnlyList<Said> Because);
