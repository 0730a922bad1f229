using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>How long the circulation takes for the volume of a pool, and how much of the water has been through it by then.</summary>
/// <remarks>
/// The purification law of a well-mixed pool: after n turnovers the part 1 - e^-n has passed the filter (Gage and Bidwell 1926, by way of Simmonds et al., Water 13:2350, 2021, and a tracer
/// study in J. Water Health 16:449, 2018; published). A filter that holds back only the part E of what reaches it is 1 - e^(-E n).
/// </remarks>
public static class Turnover
{
    /// <summary>Volumes the formulas are used for, in m3.</summary>
    public static ValueRange ValidCubicMetres { get; } = new(0.1, 100_000);

    /// <summary>Flows the formulas are used for, in m3/h.</summary>
    public static ValueRange ValidFlow { get; } = new(0.01, 50_000);

    /// <summary>Numbers of turnovers the law is used for.</summary>
    public static ValueRange ValidTurnovers { get; } = new(0, 1000);

    /// <summary>Parts of the water that can be asked for: all of it never passes.</summary>
    public static ValueRange ValidPart { get; } = new(0, 0.9999);

    private static readonly ValueRange Efficiency = new(0.01, 1);

    /// <summary>Hours for one turnover: volume through flow.</summary>
    /// <param name="cubicMetres">Volume of the circuit's water in m3, balance tank included.</param>
    /// <param name="cubicMetresPerHour">Circulation in m3/h.</param>
    public static Figure Hours(double cubicMetres, double cubicMetresPerHour) => new InputCheck()
        .Within("volume", cubicMetres, ValidCubicMetres, "m3").Within("flow", cubicMetresPerHour, ValidFlow, "m3/h")
        .Then(() => cubicMetres / cubicMetresPerHour);

    /// <summary>Circulation in m3/h that a turnover time asks for.</summary>
    /// <param name="cubicMetres">Volume in m3.</param>
    /// <param name="hours">Turnover time in h, 0.05 to 100.</param>
    public static Figure Flow(double cubicMetres, double hours) => new InputCheck()
        .Within("volume", cubicMetres, ValidCubicMetres, "m3").Within("turnover", hours, MixingTime.ValidTurnover, "h")
        .Then(() => cubicMetres / hours);

    /// <summary>The part of the water, 0 to 1, that has been cleaned after so many turnovers.</summary>
    /// <param name="turnovers">Number of turnovers.</param>
    /// <param name="efficiency">The part of a matter that one passage holds back, 0.01 to 1; 1 counts passages alone.</param>
    public static Figure PartPassed(double turnovers, double efficiency = 1) => new InputCheck()
        .Within("turnovers", turnovers, ValidTurnovers, "").Within("efficiency", efficiency, Efficiency, "")
        .Then(() => -double.ExpM1(-efficiency * turnovers));

    /// <summary>Turnovers until a part of the water has been cleaned.</summary>
    /// <param name="part">The part asked for, 0 to 0.9999.</param>
    /// <param name="efficiency">As above.</param>
    public static Figure Until(double part, double efficiency = 1) => new InputCheck()
        .Within("part", part, ValidPart, "").Within("efficiency", efficiency, Efficiency, "")
        .Then(() => -double.LogP1(-part) / efficiency);
}
