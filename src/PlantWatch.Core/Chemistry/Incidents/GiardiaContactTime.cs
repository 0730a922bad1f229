using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>Contact time for Giardia cysts with free chlorine in water without cyanurate: the regression that stands for the tables of the Surface Water Treatment Rule.</summary>
/// <remarks>
/// US EPA, LT1 disinfection profiling and benchmarking manual, after Smith et al. 1995 (coefficients seen). It exceeds the tables by up to 12 % (table 92 at 15 degC, pH 7.5,
/// 1.2 mg/L; regression 100.6). pH 6 to 9 as published; temperature 0.5 to 25 degC and chlorine 0.4 to 3 mg/L are the span of the tables, from memory.
/// It is a figure of drinking water, shown beside the plans for pools and never in their place.
/// </remarks>
public static class GiardiaContactTime
{
    /// <summary>pH it holds for (published).</summary>
    public static ValueRange ValidPh { get; } = new(6, 9);

    /// <summary>Water temperatures of the tables, degC (from memory).</summary>
    public static ValueRange ValidCelsius { get; } = new(0.5, 25);

    /// <summary>Free chlorine of the tables, mg/L (from memory).</summary>
    public static ValueRange ValidChlorine { get; } = new(0.4, 3);

    /// <summary>Log reductions it is used for: one half to three.</summary>
    public static ValueRange ValidLogs { get; } = new(0.5, 3);

    /// <summary>The contact time in mg·min/L.</summary>
    /// <param name="celsius">Water temperature, degC.</param>
    /// <param name="ph">pH.</param>
    /// <param name="chlorine">Free chlorine, mg/L as Cl2.</param>
    /// <param name="logs">Log reduction; 3 is 99.9 per cent.</param>
    public static Figure Of(double celsius, double ph, double chlorine, double logs = 3) => new InputCheck()
        .Within("temperature", celsius, ValidCelsius, "degC").Within("ph", ph, ValidPh, "pH")
        .Within("residual", chlorine, ValidChlorine, "mg/L").Within("logs", logs, ValidLogs, "")
        .Then(() => celsius < 12.5
            ? 0.353 * logs * (12.006 + Math.Exp(2.46 - (0.073 * celsius) + (0.125 * chlorine) + (0.389 * ph)))
            : 0.361 * logs * (-2.261 + Math.Exp(2.69 - (0.065 * celsius) + (0.111 * chlorine) + (0.361 * ph))));
}
