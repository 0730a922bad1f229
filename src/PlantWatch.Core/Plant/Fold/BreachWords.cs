using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The figures of a step: what was tested, given or counted.</summary>
internal static class BreachWords
{
    /// <summary>What a check found of a quantity; null for a ratio, whose parts stand in the check.</summary>
    public static Reason? Tested(ManualCheck check, string key)
    {
        var quantity = key[(key.LastIndexOf('/') + 1)..];
        if (quantity == BreachKeys.Bottom) return Reason.Of("exception.bottom_seen");
        foreach (var result in check.Results)
            if (result.Measurand.Key() == quantity) return Tested(result);
        return quantity == Measurand.CombinedChlorine.Key() && CombinedOfCheck.TryOf(check, out var combined) && combined.IsKnown
            ? Reason.Of("exception.tested", quantity, combined.Value.MilligramsPerLitre, Measurand.CombinedChlorine.Unit()) : null;
    }

    public static Reason Tested(TestResult result) => result.Censoring switch
    {
        Censoring.Below => Reason.Of("exception.tested_below", result.Measurand.Key(), result.Value, result.Measurand.Unit()),
        Censoring.Above => Reason.Of("exception.tested_above", result.Measurand.Key(), result.Value, result.Measurand.Unit()),
        _ => Reason.Of("exception.tested", result.Measurand.Key(), result.Value, result.Measurand.Unit()),
    };

    public static Reason Given(GivenDose dose) => Reason.Of("exception.given", dose.Product, dose.Kilograms);

    public static Reason Counted(LabCount count) => count.Sense == CountSense.NotDetected
        ? Reason.Of("exception.not_detected", count.Organism.Key(), count.Millilitres)
        : Reason.Of(count.Sense == CountSense.Below ? "exception.counted_below" : "exception.counted", count.Organism.Key(), count.PerBasis, count.Organism.BasisMillilitres());
}
