using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Exceptions;

/// <summary>What was tested, given or counted, with its figures.</summary>
public static class ActFigures
{
    /// <summary>A result of a test, with the side of its method's range that it lies beyond.</summary>
    public static Reason Tested(TestResult result) => result.Censoring switch
    {
        Censoring.Below => Reason.Of("exception.tested_below", result.Measurand.Key(), result.Value, result.Measurand.Unit()),
        Censoring.Above => Reason.Of("exception.tested_above", result.Measurand.Key(), result.Value, result.Measurand.Unit()),
        _ => Reason.Of("exception.tested", result.Measurand.Key(), result.Value, result.Measurand.Unit()),
    };

    /// <summary>A dose: product and kilograms.</summary>
    public static Reason Given(GivenDose dose)
    {
        ArgumentNullException.ThrowIfNull(dose);
        return Reason.Of("exception.given", dose.Product, dose.Kilograms);
    }

    /// <summary>A laboratory's count, on the basis that its limit is written for.</summary>
    public static Reason Counted(LabCount count) => count.Sense == CountSense.NotDetected
        ? Reason.Of("exception.not_detected", count.Organism.Key(), count.Millilitres)
        : Reason.Of(count.Sense == CountSense.Below ? "exception.counted_below" : "exception.counted", count.Organism.Key(), count.PerBasis, count.Organism.BasisMillilitres());
}
