using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>How much of its strength a hypochlorite solution keeps in store.</summary>
/// <remarks>
/// Hypochlorite turns into chlorate and chloride by a reaction of the second order (Lister, Can. J. Chem. 34:465, 1956: 24.8 kcal/mol, faster with ionic strength; abstract seen). The rate is
/// log k2 = 0.149 I + log(2.083e10 T exp(-1.018e5/(R T)) exp(-56.5/R)) in L/(mol s), after Gordon, Adam and Bubnis 1995, from memory: at 25 degC it halves 15 % in about 100 days and 10 % in about 220,
/// as the trade's table has it (from memory). Light and metals hasten it, a weak start slows it: what is lost is known to a factor of about two. An assay is always better.
/// </remarks>
public static class HypochloriteDecay
{
    /// <summary>Store temperature in degC where the plant file gives none (common practice).</summary>
    public const double UsualStore = 20;

    /// <summary>Standard uncertainty of the loss, as a part of the loss.</summary>
    public const double UncertaintyOfLoss = 0.5;

    /// <summary>Ages in days the estimate is used for; an older product wants an assay.</summary>
    public static ValueRange ValidDays { get; } = new(0, 365);

    /// <summary>Store temperatures in degC the estimate is used for.</summary>
    public static ValueRange ValidCelsius { get; } = new(0, 45);

    /// <summary>Strengths in g of available chlorine a litre the estimate is used for.</summary>
    public static ValueRange ValidGramsPerLitre { get; } = new(1, 200);

    /// <summary>The part of the strength that is left, 0 to 1.</summary>
    /// <param name="gramsPerLitre">Available chlorine at the start, g/L.</param>
    /// <param name="days">Days in store.</param>
    /// <param name="celsius">Temperature of the store.</param>
    public static Figure Left(double gramsPerLitre, double days, double celsius) => new InputCheck()
        .Within("strength", gramsPerLitre, ValidGramsPerLitre, "g/L").Within("days_in_store", days, ValidDays, "d").Within("store_temperature", celsius, ValidCelsius, "degC")
        .Then(() => 1 / (1 + (Rate(gramsPerLitre / Masses.Chlorine, celsius) * gramsPerLitre / Masses.Chlorine * days * 86400)));

    // Chloride, chlorate and hypochlorite are all single charges: the ionic strength stays while it decays.
    private static double Rate(double moles, double celsius)
    {
        const double gas = 8.314462618;
        var kelvin = celsius + 273.15;
        var ionic = (2 * moles) + 0.1;
        return Math.Pow(10, 0.149 * ionic) * 2.083e10 * kelvin * Math.Exp(-1.018e5 / (gas * kelvin)) * Math.Exp(-56.5 / gas);
    }
}
