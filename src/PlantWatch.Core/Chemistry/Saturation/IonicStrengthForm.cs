using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>The saturation index with constants over temperature and one activity coefficient, in the style of Standard Methods 2330 B: pHs = pK2 - pKs + p[Ca] + p[HCO3] + 5 pfm.</summary>
/// <remarks>
/// Equations from memory; pK2 as in the USGS databases, pKs after Plummer and Busenberg (1982). Ionic strength is taken as TDS/40000. Against the speciated model of 200 pool waters
/// it is off by -0.07 to +0.12 (computed), hence the claim. Its slopes carry the uncertainty of the tests into every index.
/// </remarks>
public static class IonicStrengthForm
{
    /// <summary>What the method may claim, +-, before the uncertainty of the tests is added.</summary>
    public const double Claim = 0.1;

    /// <summary>Water temperatures, in degC.</summary>
    public static ValueRange ValidCelsius { get; } = new(0, 90);

    /// <summary>Dissolved solids, in mg/L: an ionic strength under 0.5.</summary>
    public static ValueRange ValidSolids { get; } = new(10, 20_000);

    /// <summary>pH for which bicarbonate may stand for alkalinity.</summary>
    public static ValueRange ValidPh { get; } = new(6, 8.5);

    private static readonly LogK SecondDissociation = new(107.8871, 0.03252849, -5151.79, -38.92561, 563713.9);
    private static readonly LogK Solubility = new(171.9065, 0.077993, -2839.319, -71.595);
    private static readonly ValueRange Hardness = new(1, 5000);

    /// <summary>The index, or the first input outside its range.</summary>
    public static IndexResult Of(Water water)
    {
        ArgumentNullException.ThrowIfNull(water);
        var (celsius, calcium, alkalinity, solids) =
            (water.Temperature.Degrees, water.Calcium.MilligramsPerLitre, CarbonateAlkalinity.Of(water), water.Solids.MilligramsPerLitre);
        var check = new InputCheck().Within("ph", water.Ph.Value, ValidPh, "pH").Within("temperature", celsius, ValidCelsius, "degC").Within("calcium", calcium, Hardness, "mg/L")
            .Within("carbonate_alkalinity", alkalinity, Hardness, "mg/L").Within("solids", solids, ValidSolids, "mg/L");
        return new(check.Then(() => water.Ph.Value - SaturationPh(celsius, solids, calcium, alkalinity)), Claim);
    }

    /// <summary>pH of saturation. All in the units of the water: degC, mg/L, hardness and alkalinity as CaCO3.</summary>
    public static double SaturationPh(double celsius, double solids, double calcium, double alkalinity) =>
        SecondPk(celsius) - SolubilityPk(celsius) - Math.Log10(Masses.Moles(calcium, Masses.CalciumCarbonate))
        - Math.Log10(Masses.Moles(alkalinity, Masses.AlkalinityEquivalent)) + (5 * ActivityTerm(celsius, solids));

    /// <summary>pK2 of carbonic acid at a temperature in degC.</summary>
    public static double SecondPk(double celsius) => SecondDissociation.At(celsius);

    /// <summary>pKs of calcite at a temperature in degC (Plummer and Busenberg 1982).</summary>
    public static double SolubilityPk(double celsius) => Solubility.At(celsius);

    /// <summary>The constant A of the activity term: 1.82e6 (E T)^-1.5 with E = 60954/(T + 116) - 68.937.</summary>
    public static double DebyeHueckelA(double celsius)
    {
        var kelvin = celsius + 273.15;
        return 1.82e6 * Math.Pow(((60954 / (kelvin + 116)) - 68.937) * kelvin, -1.5);
    }

    /// <summary>pfm, the logarithm of a single charge's activity coefficient with its sign turned.</summary>
    public static double ActivityTerm(double celsius, double solids)
    {
        var ionic = solids / 40_000;
        return DebyeHueckelA(celsius) * ((Math.Sqrt(ionic) / (1 + Math.Sqrt(ionic))) - (0.3 * ionic));
    }
}
