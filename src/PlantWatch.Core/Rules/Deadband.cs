using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Rules;

/// <summary>How far a value must come back inside a limit before its alarm may clear.</summary>
/// <remarks>Starting points: about one per cent of the operating range for pH and temperature, 10 mV for ORP. Common practice.</remarks>
public static class Deadband
{
    /// <summary>The deadband in the measurand's unit.</summary>
    public static double Of(Measurand measurand) => measurand switch
    {
        Measurand.Ph => 0.05,
        Measurand.Orp => 10,
        Measurand.Temperature => 0.3,
        Measurand.FreeChlorine => 0.05,
        Measurand.Conductivity => 50,
        _ => 0,
    };
}
