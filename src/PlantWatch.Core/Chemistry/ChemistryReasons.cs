using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What keeps a figure of the chemistry from being given, or has to be said beside it, as reasons for people.</summary>
public static class ChemistryReasons
{
    /// <summary>Why a water could not be worked out; null when it was.</summary>
    public static Reason? Saying(this EquilibriumResult result) => result.Failure switch
    {
        EquilibriumFailure.None => null,
        EquilibriumFailure.TemperatureOutsideRange => Reason.Of("water.temperature_outside_range", Equilibrium.ValidCelsius.Low, Equilibrium.ValidCelsius.High),
        EquilibriumFailure.PhOutsideRange => Reason.Of("water.ph_outside_range", Equilibrium.ValidPh.Low, Equilibrium.ValidPh.High),
        EquilibriumFailure.TooSalty => Reason.Of("water.too_salty", Equilibrium.MostSolids),
        EquilibriumFailure.NegativeCarbon => Reason.Of("water.negative_carbon"),
        EquilibriumFailure.NegativeAmount => Reason.Of("water.negative_amount"),
        _ => Reason.Of("water.no_answer"),
    };

    /// <summary>What has to be said of a combined chlorine; null when nothing.</summary>
    public static Reason? Saying(this CombinedResult result) => result.Remark switch
    {
        CombinedRemark.ZeroWithinRepeatability => Reason.Of("combined.zero_within_repeatability"),
        CombinedRemark.FreeAboveTotal => Reason.Of("combined.free_above_total"),
        _ => null,
    };

    /// <summary>Why there is no share of hypochlorous acid; null when there is one.</summary>
    public static Reason? Saying(this ShareResult result) => result.Failure == ShareFailure.TemperatureOutsideRange
        ? Reason.Of("hocl.temperature_outside_range", HoclShare.ValidCelsius.Low, HoclShare.ValidCelsius.High)
        : null;
}
