using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>Turns an incoming number into the measurand's own unit: own = factor x number + offset. The default is no conversion at all and is never returned.</summary>
/// <param name="Factor">Factor.</param>
/// <param name="Offset">Offset.</param>
public readonly record struct UnitScale(double Factor, double Offset)
{
    /// <summary>The same unit.</summary>
    public static UnitScale Same => new(1, 0);

    /// <summary>Converts a number.</summary>
    public double Apply(double value) => (value * Factor) + Offset;
}

/// <summary>The units that payloads and the plant file may name, a measurand at a time. SenML names (RFC 8428, RFC 8798) stand beside the trade's.</summary>
public static class ReadingUnits
{
    /// <summary>Half a mole of calcium carbonate, g.</summary>
    private const double AlkalinityPerMillimole = 50.04345;

    /// <summary>Finds the conversion for a unit, or says that the measurand has no such unit.</summary>
    public static bool TryScale(Measurand measurand, string unit, out UnitScale scale)
    {
        UnitScale? found = (measurand, unit) switch
        {
            (Measurand.Ph, "pH") => UnitScale.Same,
            (Measurand.Orp, "mV") => UnitScale.Same,
            (Measurand.Orp, "V") => new UnitScale(1000, 0),
            (Measurand.Temperature, "degC" or "Cel") => UnitScale.Same,
            (Measurand.Temperature, "degF") => new UnitScale(5.0 / 9.0, -160.0 / 9.0),
            (Measurand.Temperature, "K") => new UnitScale(1, -273.15),
            (Measurand.Conductivity, "uS/cm") => UnitScale.Same,
            (Measurand.Conductivity, "mS/cm") => new UnitScale(1000, 0),
            (Measurand.Conductivity, "S/m") => new UnitScale(10_000, 0),
            (Measurand.SampleFlow, "" or "/") => UnitScale.Same,
            (Measurand.CirculationFlow, "m3/h") => UnitScale.Same,
            (Measurand.CirculationFlow, "L/s" or "l/s") => new UnitScale(3.6, 0),
            (Measurand.CirculationFlow, "m3/s") => new UnitScale(3600, 0),
            (Measurand.Turbidity, "NTU" or "FNU") => UnitScale.Same,
            (Measurand.FilterPressure, "kPa") => UnitScale.Same,
            (Measurand.FilterPressure, "Pa") => new UnitScale(0.001, 0),
            (Measurand.FilterPressure, "bar") => new UnitScale(100, 0),
            // Bases of other countries: 1 degree of general hardness dH is 10 mg/L CaO, fH 10 mg/L CaCO3, Clark one grain an imperial gallon (definitions from memory).
            (Measurand.TotalAlkalinity or Measurand.CalciumHardness, "dH") => new UnitScale(17.848, 0),
            (Measurand.TotalAlkalinity or Measurand.CalciumHardness, "fH") => new UnitScale(10, 0),
            (Measurand.TotalAlkalinity or Measurand.CalciumHardness, "Clark") => new UnitScale(14.254, 0),
            // Acid capacity takes one acid an equivalent of alkalinity; a mole of calcium is two equivalents.
            (Measurand.TotalAlkalinity, "mmol/L") => new UnitScale(AlkalinityPerMillimole, 0),
            (Measurand.CalciumHardness, "mmol/L") => new UnitScale(2 * AlkalinityPerMillimole, 0),
            // mg/L and ppm are the same in dilute water; ppm is the trade's habit.
            (>= Measurand.FreeChlorine and <= Measurand.DissolvedSolids, "mg/L" or "mg/l" or "ppm") => UnitScale.Same,
            _ => null,
        };
        scale = found ?? default;
        return found is not null;
    }

    /// <summary>The units a measurand may be given in, for error messages.</summary>
    public static IReadOnlyList<string> Of(Measurand measurand) => measurand switch
    {
        Measurand.Ph => ["pH"],
        Measurand.Orp => ["mV", "V"],
        Measurand.Temperature => ["degC", "Cel", "degF", "K"],
        Measurand.Conductivity => ["uS/cm", "mS/cm", "S/m"],
        Measurand.SampleFlow => ["/"],
        Measurand.CirculationFlow => ["m3/h", "L/s", "m3/s"],
        Measurand.FilterPressure => ["kPa", "Pa", "bar"],
        Measurand.Turbidity => ["NTU", "FNU"],
        Measurand.None => [],
        Measurand.TotalAlkalinity or Measurand.CalciumHardness => ["mg/L", "ppm", "mmol/L", "dH", "fH", "Clark"],
        _ => ["mg/L", "ppm"],
    };
}
