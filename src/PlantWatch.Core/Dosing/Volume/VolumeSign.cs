using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Volume;

/// <summary>What one retest of one figure after a dose says of the water that the dose ended up in.</summary>
/// <param name="DoseId">The dose.</param>
/// <param name="Measurand">The figure.</param>
/// <param name="ProductId">The product: an error of its strength is in all its doses alike.</param>
/// <param name="At">When the retest was sampled.</param>
/// <param name="CubicMetres">The water that the change was predicted for, m3.</param>
/// <param name="Ratio">Measured change by predicted change: 1 where the water is as much as was thought, less where it is more.</param>
/// <param name="TestU">Standard uncertainty of the ratio by both tests.</param>
/// <param name="StrengthU">Relative standard uncertainty of the product's strength.</param>
public readonly record struct VolumeSign(Guid DoseId, Measurand Measurand, string ProductId, Instant At, double CubicMetres, double Ratio, double TestU, double StrengthU)
{
    /// <summary>Figures that water keeps: nothing in a pool consumes them within a day beyond what a test can tell. Chlorine is not among them: what the water consumes looks like more water.</summary>
    public static bool IsKept(Measurand measurand) =>
        measurand is Measurand.TotalAlkalinity or Measurand.CalciumHardness or Measurand.CyanuricAcid or Measurand.DissolvedSolids;

    /// <summary>The sign that an answered prediction gives; null where it gives none: consumed, disturbed by another dose, or given before it was kept for how much water it was predicted.</summary>
    /// <param name="dose">The dose.</param>
    /// <param name="at">When the retest was sampled.</param>
    /// <param name="answer">What it found of one figure.</param>
    public static VolumeSign? Of(GivenDose dose, Instant at, in FigureResponse answer)
    {
        ArgumentNullException.ThrowIfNull(dose);
        var measurand = answer.Measurand;
        if (!IsKept(measurand) || answer.Word is ResponseWord.NotComparable or ResponseWord.Unknown || dose is not { PredictedFor: > 0 and var volume, StrengthUncertainty: { } strength }) return null;
        foreach (var predicted in dose.Predicted)
            if (predicted.Measurand == measurand && !predicted.Disturbed && predicted.Change != 0) return Of(dose, at, answer, predicted, volume, strength);
        return null;
    }

    private static VolumeSign Of(GivenDose dose, Instant at, in FigureResponse answer, in PredictedChange predicted, double volume, double strength)
    {
        var tests = Math.Sqrt(Math.Max(0, (answer.Uncertainty * answer.Uncertainty) - (predicted.ChangeUncertainty * predicted.ChangeUncertainty)));
        return new(dose.Id, answer.Measurand, dose.ProductId, at, volume, (answer.Measured - predicted.Before) / predicted.Change, tests / Math.Abs(predicted.Change), strength);
    }
}
