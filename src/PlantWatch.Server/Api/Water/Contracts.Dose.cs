using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- POST /api/v1/pools/{id}/dose-advice  DoseAdviceRequest -> DoseAdviceView (a refusal of the advice is an answer too)
//      PUT  /api/v1/doses/{id}              GivenDoseRequest  -> GivenDoseView
//      GET  /api/v1/pools/{id}/doses        DosesView

/// <summary>What a dose is asked for.</summary>
/// <param name="ProductId">Product of the plant file.</param>
/// <param name="Target">The figure to move.</param>
/// <param name="Value">Where to, in its unit.</param>
/// <param name="BathersOut">The person says that nobody is in the water; null when not said.</param>
/// <param name="Closed">The person says that the pool stays closed until the retest.</param>
public sealed record DoseAdviceRequest(string? ProductId, Measurand Target, double? Value, bool? BathersOut = null, bool Closed = false);

/// <summary>Advice on one dose. Never an order.</summary>
/// <param name="At">Server time.</param>
/// <param name="Product">The product as it stands in the store.</param>
/// <param name="Target">The figure to move.</param>
/// <param name="From">The test it starts from; null without.</param>
/// <param name="Value">Where to.</param>
/// <param name="Refused">Why there is no dose; empty when there is one.</param>
/// <param name="Volume">The water of the circuit, balance tank included.</param>
/// <param name="FirstVolume">What it goes into first; equal to <paramref name="Volume"/> when it is fed to all of it.</param>
/// <param name="Dose">The dose; null when refused.</param>
/// <param name="Says">Assumptions, and what does not apply here.</param>
/// <param name="How">Where and in which order.</param>
/// <param name="Equipment">What to wear and have at hand.</param>
/// <param name="Precautions">How to handle it and what it must not meet.</param>
/// <param name="RetestHours">Hours until a retest shows it.</param>
public sealed record DoseAdviceView(
    Instant At, DoseProductView Product, Measurand Target, double? From, double Value, IReadOnlyList<Said> Refused, Amount Volume, Amount FirstVolume, DoseView? Dose,
    IReadOnlyList<Said> Says, IReadOnlyList<Said> How, IReadOnlyList<Said> Equipment, IReadOnlyList<Said> Precautions, double RetestHours);

/// <summary>A dose and its first go.</summary>
/// <param name="Total">All of it, as mass.</param>
/// <param name="TotalVolume">The same as volume, for a liquid.</param>
/// <param name="First">The cap for one go, as mass.</param>
/// <param name="FirstVolume">The same as volume, for a liquid.</param>
/// <param name="Whole">True when the first go is all of it.</param>
/// <param name="UncertaintyPercent">Expanded uncertainty (k = 2) of its effect by strength and volume, in per cent.</param>
/// <param name="Cost">Cost of the first go in the plant's money; null without a price.</param>
/// <param name="Because">What holds the first go back.</param>
/// <param name="Before">The water now; null when it cannot be worked out.</param>
/// <param name="AtOnce">The water after the first go, mixed.</param>
/// <param name="Spent">The water once the added chlorine has done its work; null for a product without.</param>
/// <param name="SideEffects">What it does besides.</param>
public sealed record DoseView(
    Amount Total, Amount? TotalVolume, Amount First, Amount? FirstVolume, bool Whole, double UncertaintyPercent, double? Cost, IReadOnlyList<Said> Because,
    DoseFigures? Before, DoseFigures? AtOnce, DoseFigures? Spent, IReadOnlyList<Said> SideEffects);

/// <summary>A worked-out water, mg/L on the basis of each figure.</summary>
public sealed record DoseFigures(double Ph, double? Saturation, double FreeChlorine, double? HypochlorousAcid, double Alkalinity, double Calcium, double Cyanurate, double Solids);

/// <summary>A product at hand.</summary>
/// <param name="Id">Key of the plant file.</param>
/// <param name="Name">As on the drum.</param>
/// <param name="Kind">What it is.</param>
/// <param name="StrengthPercent">Strength today, per cent by weight.</param>
/// <param name="AsChlorine">The per cent counts available chlorine.</param>
/// <param name="AgeDays">Days since label or assay; null when not known.</param>
/// <param name="Density">kg/L of a liquid; null for anything else.</param>
/// <param name="ByPump">It goes in through a pump, feeder or doser.</param>
/// <param name="Says">What has to be said of its strength.</param>
/// <param name="Unfit">Why it may not go into this pool; empty when nothing is known against it.</param>
/// <param name="Targets">What it is used for here.</param>
public sealed record DoseProductView(
    string Id, string Name, ProductKind Kind, double StrengthPercent, bool AsChlorine, int? AgeDays, double? Density, bool ByPump, IReadOnlyList<Said> Says, IReadOnlyList<Said> Unfit,
    IReadOnlyList<DoseTargetView> Targets);

/// <summary>A figure that a product moves.</summary>
/// <param name="Measurand">The figure.</param>
/// <param name="Direction">1 when it is raised, -1 when it is lowered.</param>
/// <param name="Now">The newest test; null without.</param>
/// <param name="TestedAt">When it was sampled.</param>
/// <param name="Low">Low limit in force.</param>
/// <param name="High">High limit in force.</param>
public sealed record DoseTargetView(Measurand Measurand, int Direction, double? Now, Instant? TestedAt, double? Low, double? High);

/// <summary>What a dose page begins with, and what was given lately.</summary>
/// <param name="Products">Products of the plant file.</param>
/// <param name="Given">Doses given, newest first.</param>
/// <param name="Bathers">Bathers at the last count.</param>
/// <param name="Hold">What an incident asks that is open in this water; null when none is.</param>
public sealed record DosesView(IReadOnlyList<DoseProductView> Products, IReadOnlyList<GivenDoseView> Given, int? Bathers, DoseHoldView? Hold);

/// <summary>What the plan of an open incident asks of the chlorine in a pool.</summary>
/// <param name="IncidentId">The incident.</param>
/// <param name="PoolId">The pool it happened in.</param>
/// <param name="StartAt">Residual through the pool that starts its clock, mg/L; null while the plan has no figure for this water.</param>
/// <param name="Highest">Highest that a dose is worked out for, mg/L.</param>
/// <param name="Why">Why there is no figure; null when there is one.</param>
/// <param name="MayBatheIn">Pools of this water that are not closed.</param>
public sealed record DoseHoldView(Guid IncidentId, string PoolId, double? StartAt, double? Highest, Said? Why, IReadOnlyList<string> MayBatheIn);

/// <summary>A dose as a person enters it: the amount in kg or in L.</summary>
public sealed record GivenDoseRequest(
    string? PoolId, string? ProductId, double? Kilograms, double? Litres, Instant GivenAt, string? By, string? Note = null, Guid? Corrects = null, string? CorrectionReason = null);

/// <summary>A dose given, with what came of it.</summary>
/// <param name="Dose">As entered, with its prediction.</param>
/// <param name="Amount">How much, in the units of the plant.</param>
/// <param name="ArrivedAt">When it reached the server.</param>
/// <param name="Corrected">A later entry takes its place.</param>
/// <param name="Responses">What retests say of it.</param>
public sealed record GivenDoseView(GivenDose Dose, Amount Amount, Instant ArrivedAt, bool Corrected, IReadOnlyList<DoseResponseView> Responses);

/// <summary>What a retest says of a dose.</summary>
public sealed record DoseResponseView(Guid CheckId, Instant SampledAt, IReadOnlyList<FigureResponseView> Figures);

/// <summary>One figure of a response.</summary>
/// <param name="Measurand">The figure.</param>
/// <param name="Predicted">Predicted.</param>
/// <param name="Measured">Measured.</param>
/// <param name="U">Expanded uncertainty of their difference, k = 2.</param>
/// <param name="Word">The answer.</param>
/// <param name="Text">In words.</param>
public sealed record FigureResponseView(Measurand Measurand, double Predicted, double Measured, double U, ResponseWord Word, string Text);
