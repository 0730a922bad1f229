using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Rules;

/// <summary>Stops that always hold, whatever limits a plant has set: outside them bathers should not be in the water. Common practice; local codes come first.</summary>
public static class Stops
{
    /// <summary>pH 6.5 to 8.2.</summary>
    public static ValueRange Ph { get; } = new(6.5, 8.2);

    /// <summary>Free chlorine 0.2 to 10 mg/L as Cl2.</summary>
    public static ValueRange FreeChlorine { get; } = new(0.2, 10);

    /// <summary>Water up to 40 degC; no lower stop.</summary>
    public static ValueRange Temperature { get; } = new(-5, 40);

    /// <summary>The stop on a measurand and the rule a live probe breaks by it; false where none holds.</summary>
    public static bool TryOf(Measurand measurand, out ValueRange range, out Rule rule)
    {
        (range, rule) = measurand switch
        {
            Measurand.Ph => (Ph, RuleBook.StopPh),
            Measurand.FreeChlorine => (FreeChlorine, RuleBook.StopFreeChlorine),
            Measurand.Temperature => (Temperature, RuleBook.StopTemperature),
            _ => (default, RuleBook.StopPh),
        };
        return measurand is Measurand.Ph or Measurand.FreeChlorine or Measurand.Temperature;
    }
}
