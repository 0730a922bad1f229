using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>What is to be said of a combined chlorine.</summary>
public enum CombinedRemark
{
    /// <summary>Nothing was computed.</summary>
    NotComputed = 0,
    /// <summary>Nothing: total less free.</summary>
    None,
    /// <summary>Free read above total by no more than two readings of one sample may differ: reported as 0.</summary>
    ZeroWithinRepeatability,
    /// <summary>Free read above total by more than that: one of the two is wrong, and the pair is rejected.</summary>
    FreeAboveTotal,
}

/// <summary>Combined chlorine with its standard uncertainty, or the rejection of the pair. The default is not computed.</summary>
public readonly record struct CombinedResult
{
    private readonly CombinedChlorine _value;

    internal CombinedResult(CombinedChlorine value, double standardUncertainty, CombinedRemark remark)
    {
        _value = value;
        StandardUncertainty = standardUncertainty;
        Remark = remark;
    }

    /// <summary>What is to be said of it.</summary>
    public CombinedRemark Remark { get; }

    /// <summary>False when the pair was rejected or nothing was computed.</summary>
    public bool IsKnown => Remark is CombinedRemark.None or CombinedRemark.ZeroWithinRepeatability;

    /// <summary>Standard uncertainty in mg/L, also of a rejected pair.</summary>
    public double StandardUncertainty { get; }

    /// <summary>True when the difference is larger than its expanded uncertainty (k = 2). A photometer tells 0.2 mg/L from none just so.</summary>
    public bool IsToldFromZero => Remark == CombinedRemark.None && _value.MilligramsPerLitre > 2 * StandardUncertainty;

    /// <summary>Combined chlorine, mg/L as Cl2.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public CombinedChlorine Value => IsKnown ? _value : throw new InvalidOperationException($"no combined chlorine: {Remark}");
}

/// <summary>Combined chlorine as operators work it out: total less free, both of the same sample (DPD 1, then DPD 3).</summary>
public static class CombinedCalculation
{
    /// <summary>Two readings of one sample differ by more than this multiple of the standard deviation of their difference one time in twenty (ISO 5725: r = 1.96 x sqrt(2) x s, the 2.8 s of a single reading).</summary>
    private const double RepeatabilityFactor = 1.96;

    /// <summary>Total less free.</summary>
    /// <param name="total">Total chlorine.</param>
    /// <param name="totalUncertainty">Its standard uncertainty in mg/L, positive.</param>
    /// <param name="free">Free chlorine of the same sample.</param>
    /// <param name="freeUncertainty">Its standard uncertainty in mg/L, positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">An uncertainty is not positive and finite.</exception>
    public static CombinedResult Of(TotalChlorine total, double totalUncertainty, FreeChlorine free, double freeUncertainty)
    {
        var u = Math.Sqrt((Claimed(totalUncertainty) * totalUncertainty) + (Claimed(freeUncertainty) * freeUncertainty));
        return Of(total, free, u, RepeatabilityFactor * u);
    }

    /// <summary>The most by which two readings of one sample differ, nineteen times in twenty: r = 1.96 x sqrt(2) x s, the 2.8 s of ISO 5725-6 (from memory).</summary>
    /// <param name="repeatability">Standard deviation s of a single reading.</param>
    public static double RepeatabilityLimit(double repeatability) => RepeatabilityFactor * Math.Sqrt(2) * repeatability;

    /// <summary>Total less free with a repeatability limit of the operator's own method.</summary>
    /// <param name="total">Total chlorine.</param>
    /// <param name="free">Free chlorine of the same sample.</param>
    /// <param name="standardUncertainty">Standard uncertainty of the difference in mg/L.</param>
    /// <param name="repeatabilityLimit">The most by which two readings of one sample may differ, mg/L.</param>
    public static CombinedResult Of(TotalChlorine total, FreeChlorine free, double standardUncertainty, double repeatabilityLimit)
    {
        var difference = total.MilligramsPerLitre - free.MilligramsPerLitre;
        if (difference >= 0) return new(CombinedChlorine.From(difference), standardUncertainty, CombinedRemark.None);
        // 2.0 - 2.1 is -0.10000000000000009: a figure on the limit is within it.
        return difference >= -repeatabilityLimit - 1e-9
            ? new(CombinedChlorine.From(0), standardUncertainty, CombinedRemark.ZeroWithinRepeatability)
            : new(default, standardUncertainty, CombinedRemark.FreeAboveTotal);
    }

    private static double Claimed(double uncertainty) =>
        double.IsFinite(uncertainty) && uncertainty > 0
            ? uncertainty
            : throw new ArgumentOutOfRangeException(nameof(uncertainty), uncertainty, "a standard uncertainty is positive and finite");
}
