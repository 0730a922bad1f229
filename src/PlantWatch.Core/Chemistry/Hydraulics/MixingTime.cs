using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>How long a dose takes to be the same everywhere, from the turnover time.</summary>
/// <remarks>
/// Nobody knows a pool's mixing without a dye test. One turnover before a retest is common practice: by then about two thirds of the water has been through the plant room
/// (purification law, see <see cref="Turnover"/>). After three it is 95 %, and a dose given in the plant room is even. Dead corners take longer.
/// </remarks>
public static class MixingTime
{
    /// <summary>Turnover times in h the rule is used for.</summary>
    public static ValueRange ValidTurnover { get; } = new(0.05, 100);

    /// <summary>Turnovers to wait before a retest after a hand dose (common practice).</summary>
    public const double TurnoversToRetest = 1;

    /// <summary>The part of the water that has passed when a dose is called even.</summary>
    public const double Even = 0.95;

    /// <summary>Hours to wait before a retest that shows a dose.</summary>
    /// <param name="turnoverHours">Turnover time in h.</param>
    public static Figure ToRetest(double turnoverHours) => new InputCheck()
        .Within("turnover", turnoverHours, ValidTurnover, "h").Then(() => TurnoversToRetest * turnoverHours);

    /// <summary>Hours until a dose is even all through, 95 % of the water having passed.</summary>
    /// <param name="turnoverHours">Turnover time in h.</param>
    public static Figure UntilEven(double turnoverHours) => new InputCheck()
        .Within("turnover", turnoverHours, ValidTurnover, "h").Then(() => Turnover.Until(Even).Value * turnoverHours);
}
