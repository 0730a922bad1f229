using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>Conductivity of pool water: referred to 25 degC, and as dissolved solids.</summary>
public static class ConductivityMeter
{
    /// <summary>Conductivity rises by 2 % of its value at 25 degC for each kelvin (common practice).</summary>
    public const double PerKelvin = 0.02;

    /// <summary>Dissolved solids over conductivity at 25 degC in waters of common salt and bicarbonate, mg/L per uS/cm: 0.53 to 0.56 (computed with PHREEQC 3.8.9). Hand meters take 0.5 to 0.7 (common practice).</summary>
    public static ValueRange SolidsFactor { get; } = new(0.53, 0.56);

    /// <summary>Hand meters' factors: what a reading may be off by when nobody knows which the meter takes (common practice).</summary>
    public static ValueRange MeterFactor { get; } = new(0.5, 0.7);

    private static readonly ValueRange Conductivity = new(0, 200_000);
    private static readonly ValueRange Temperatures = new(0, 50);

    /// <summary>Conductivity referred to 25 degC, uS/cm.</summary>
    /// <param name="microsiemens">As measured, uS/cm, 0 to 200 000.</param>
    /// <param name="celsius">Temperature of the water, 0 to 50 degC.</param>
    public static Figure At25(double microsiemens, double celsius) => new InputCheck()
        .Within("conductivity", microsiemens, Conductivity, "uS/cm").Within("temperature", celsius, Temperatures, "degC")
        .Then(() => microsiemens / (1 + (PerKelvin * (celsius - 25))));

    /// <summary>Dissolved solids in mg/L of a conductivity at 25 degC, with the doubt of the factor; unknown outside the range, and for none.</summary>
    /// <param name="microsiemensAt25">uS/cm at 25 degC.</param>
    public static Estimate Solids(double microsiemensAt25)
    {
        if (!Conductivity.Contains(microsiemensAt25) || microsiemensAt25 == 0) return default;
        var (middle, half) = ((SolidsFactor.Low + SolidsFactor.High) / 2, (SolidsFactor.High - SolidsFactor.Low) / 2);
        return new(middle * microsiemensAt25, Rectangular.OfHalfWidth(half) * microsiemensAt25);
    }
}
