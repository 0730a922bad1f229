using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>Combined chlorine of a check, from its free and total chlorine.</summary>
public static class CombinedOfCheck
{
    /// <summary>Total less free with the uncertainty of the methods used; false when one of the two is missing, only a bound, or no possible number.</summary>
    public static bool TryOf(ManualCheck check, out CombinedResult combined)
    {
        combined = default;
        if (check.Result(Measurand.FreeChlorine) is not { Censoring: Censoring.None } free) return false;
        if (check.Result(Measurand.TotalChlorine) is not { Censoring: Censoring.None } total) return false;
        if (!Quantity.TryFrom(free.Value, out FreeChlorine f) || !Quantity.TryFrom(total.Value, out TotalChlorine t)) return false;
        combined = CombinedCalculation.Of(t, MethodUncertainty.Parts(total).Total, f, MethodUncertainty.Parts(free).Total);
        return true;
    }
}
