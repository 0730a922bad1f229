using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing;

/// <summary>What a person may be advised about one dose. Never an order; local codes and the safety data sheet come first.</summary>
public sealed record DoseAdvice
{
    /// <summary>Why there is no dose; empty when there is one.</summary>
    public required ImmutableArray<Reason> Refused { get; init; }

    /// <summary>The water it is for.</summary>
    public required DoseVolume Volume { get; init; }

    /// <summary>The product as it stands in the store.</summary>
    public required ProductAtHand Product { get; init; }

    /// <summary>What it moves.</summary>
    public required Measurand Target { get; init; }

    /// <summary>Where to.</summary>
    public required double Value { get; init; }

    /// <summary>Where from; null when not tested.</summary>
    public double? From { get; init; }

    /// <summary>The dose; null when refused.</summary>
    public SingleDose? Dose { get; init; }

    /// <summary>What has to be said: assumptions, what is missing, what does not apply here.</summary>
    public ImmutableArray<Reason> Says { get; init; } = [];

    /// <summary>Where and in which order.</summary>
    public ImmutableArray<Reason> How { get; init; } = [];

    /// <summary>What to wear and have at hand.</summary>
    public ImmutableArray<Reason> Equipment { get; init; } = [];

    /// <summary>Precautions, and what it must not meet of the products at hand.</summary>
    public ImmutableArray<Reason> Precautions { get; init; } = [];

    /// <summary>Hours until a retest shows the dose.</summary>
    public double RetestHours { get; init; }
}

/// <summary>A dose and the part of it for the first go.</summary>
/// <param name="Kilograms">All of it, by stoichiometry or by the equilibrium.</param>
/// <param name="FirstKilograms">The cap for one go; retest before more.</param>
/// <param name="RelativeUncertainty">Standard uncertainty of the effect as a part of it: strength and volume.</param>
/// <param name="Because">What holds the first go back; empty when all of it may go in.</param>
/// <param name="Changes">What the first go changes by stoichiometry, mixed.</param>
/// <param name="Predicted">The water after the first go, mixed; null when it cannot be worked out.</param>
/// <param name="SideEffects">What the first go does besides.</param>
public sealed record SingleDose(
    double Kilograms, double FirstKilograms, double RelativeUncertainty, ImmutableArray<Reason> Because, DoseChanges Changes, DosedWater? Predicted, ImmutableArray<Reason> SideEffects)
{
    /// <summary>Standard uncertainty of a confirmed volume as a part of it (common practice).</summary>
    public const double VolumeUncertainty = 0.05;

    /// <summary>Standard uncertainty of what a dose does as a part of it: strength and volume.</summary>
    public static double Uncertainty(ProductAtHand product)
    {
        ArgumentNullException.ThrowIfNull(product);
        var strength = product.Strength.RelativeUncertainty;
        return Math.Sqrt((strength * strength) + (VolumeUncertainty * VolumeUncertainty));
    }
}
