using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing;

/// <summary>A dose that a person gave, as it was entered, with what it was predicted to do. A correction is a new one that names the old.</summary>
public sealed record GivenDose
{
    /// <summary>UUIDv7 made where it was entered, so that sending it twice is harmless.</summary>
    public required Guid Id { get; init; }

    /// <summary>The pool.</summary>
    public required string PoolId { get; init; }

    /// <summary>The product of the plant file.</summary>
    public required string ProductId { get; init; }

    /// <summary>Its name at the time.</summary>
    public required string Product { get; init; }

    /// <summary>What it is chemically.</summary>
    public ProductKind Kind { get; init; }

    /// <summary>How much, in kg.</summary>
    public required double Kilograms { get; init; }

    /// <summary>Its strength that day as a fraction by weight.</summary>
    public double Strength { get; init; }

    /// <summary>When it was given.</summary>
    public required Instant GivenAt { get; init; }

    /// <summary>From when a retest can show it.</summary>
    public Instant MixedAt { get; init; }

    /// <summary>Who gave it.</summary>
    public required string By { get; init; }

    /// <summary>A remark.</summary>
    public string? Note { get; init; }

    /// <summary>The water that the prediction was worked out for, m3; null in entries of before that was kept.</summary>
    public double? PredictedFor { get; init; }

    /// <summary>Relative standard uncertainty of its strength; null likewise.</summary>
    public double? StrengthUncertainty { get; init; }

    /// <summary>What it was predicted to do, by figure; empty when nothing could be predicted.</summary>
    public ImmutableArray<PredictedChange> Predicted { get; init; } = [];

    /// <summary>The entry that this one corrects; null for a new one.</summary>
    public Guid? Corrects { get; init; }

    /// <summary>Why it was corrected; required with <see cref="Corrects"/>.</summary>
    public string? CorrectionReason { get; init; }
}

/// <summary>What a dose is predicted to do to one figure.</summary>
/// <param name="Measurand">The figure.</param>
/// <param name="Before">The test before, in its unit.</param>
/// <param name="BeforeUncertainty">Standard uncertainty of that test.</param>
/// <param name="Change">Predicted change.</param>
/// <param name="ChangeUncertainty">Standard uncertainty of the predicted change: strength and volume.</param>
/// <param name="TestedAt">When the test before was sampled.</param>
/// <param name="Disturbed">Another dose moves the same figure between the two tests: the response cannot be told apart.</param>
public readonly record struct PredictedChange(
    Measurand Measurand, double Before, double BeforeUncertainty, double Change, double ChangeUncertainty, Instant TestedAt, bool Disturbed = false)
{
    /// <summary>The predicted figure.</summary>
    public double After => Before + Change;
}

/// <summary>How a retest answered a prediction.</summary>
public enum ResponseWord
{
    /// <summary>Not judged.</summary>
    Unknown = 0,
    /// <summary>As predicted, within what tests, strength and volume can tell.</summary>
    AsPredicted,
    /// <summary>Less than predicted.</summary>
    Less,
    /// <summary>More than predicted.</summary>
    More,
    /// <summary>It went the other way.</summary>
    OtherWay,
    /// <summary>Another dose came between that moves the same figure.</summary>
    NotComparable,
}

/// <summary>What a retest says of one predicted figure.</summary>
/// <param name="Measurand">The figure.</param>
/// <param name="Predicted">What was predicted.</param>
/// <param name="Measured">What the retest found.</param>
/// <param name="Uncertainty">Standard uncertainty of their difference: both tests, strength and volume.</param>
/// <param name="Word">The answer.</param>
public readonly record struct FigureResponse(Measurand Measurand, double Predicted, double Measured, double Uncertainty, ResponseWord Word);

/// <summary>The measured response to a dose.</summary>
/// <param name="DoseId">The dose.</param>
/// <param name="CheckId">The retest.</param>
/// <param name="SampledAt">When it was sampled.</param>
/// <param name="Figures">What it says of each figure it tested.</param>
public sealed record DoseResponse(Guid DoseId, Guid CheckId, Instant SampledAt, ImmutableArray<FigureResponse> Figures);
