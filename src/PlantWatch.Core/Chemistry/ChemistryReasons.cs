using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What keeps a figure of the chemistry from being given, or has to be said beside it, as reasons for people.</summary>
public static class ChemistryReasons
{
    /// <summary>What has to be said of a saturation index; null when nothing.</summary>
    public static Reason? Saying(this IndexResult result)
    {
        var table = HandbookIndex.TableOf(result.Failure);
        return result.Failure switch
        {
            IndexFailure.TemperatureOutsideTable => Reason.Of("balance.temperature_outside_table", table.Low, table.High),
            IndexFailure.CalciumOutsideTable => Reason.Of("balance.calcium_outside_table", table.Low, table.High),
            IndexFailure.AlkalinityOutsideTable => Reason.Of("balance.alkalinity_outside_table", table.Low, table.High),
            IndexFailure.None when result.CyanurateIgnored => Reason.Of("balance.cyanurate_not_taken_off"),
            _ => null,
        };
    }

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
