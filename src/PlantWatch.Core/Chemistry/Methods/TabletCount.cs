using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>Alkalinity and hardness by counting tablets into a sample until the colour turns: mg/L as CaCO3.</summary>
/// <remarks>
/// Common practice: n x 40 - 20 for a sample of 50 mL, n x 20 - 10 for 100 mL. In general a tablet is 2000/V mg/L and the middle of the last one is taken: (2000 n - 1000)/V.
/// One stored page prints 80 for five tablets in 100 mL; by its own formula it is 90.
/// </remarks>
public static class TabletCount
{
    /// <summary>The sample that is taken when nothing else is said, mL.</summary>
    public const double UsualMillilitres = 50;

    private const double MilligramsPerTablet = 2000;

    private static readonly ValueRange Tablets = new(1, 100);
    private static readonly ValueRange Millilitres = new(10, 500);

    /// <summary>What one tablet stands for: the step of the method in mg/L.</summary>
    /// <param name="millilitres">Sample in mL, 10 to 500.</param>
    public static Figure Step(double millilitres) => new InputCheck()
        .Within("sample_volume", millilitres, Millilitres, "mL").Then(() => MilligramsPerTablet / millilitres);

    /// <summary>The result in mg/L as CaCO3.</summary>
    /// <param name="tablets">Tablets until the colour turned, 1 to 100.</param>
    /// <param name="millilitres">Sample in mL, 10 to 500.</param>
    public static Figure Result(int tablets, double millilitres) => new InputCheck()
        .Within("tablets", tablets, Tablets, "").Within("sample_volume", millilitres, Millilitres, "mL")
        .Then(() => ((MilligramsPerTablet * tablets) - (MilligramsPerTablet / 2)) / millilitres);

    /// <summary>Standard uncertainty of a count with that step: the truth lies anywhere in the last tablet.</summary>
    /// <param name="step">Step in mg/L.</param>
    public static double Uncertainty(double step) => Rectangular.OfStep(step);
}
