using PlantWatch.Core.Plans;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Units;

/// <summary>Says amounts in the units of a plant, the SI figure beside them. Gallons and fluid ounces always bear the name of their kind: US or imp.</summary>
/// <param name="units">The units people measure out in.</param>
/// <param name="language">How figures are written.</param>
internal sealed class AmountWords(UnitSystem units, Language language)
{
    private static readonly UnitLadder Kilograms = new("kg", 1, "g", 0.001);
    private static readonly UnitLadder Litres = new("L", 1, "mL", 0.001);
    private static readonly UnitLadder UsVolume = new("US gal", ExactUnits.LitresPerUsGallon, "US fl oz", ExactUnits.LitresPerUsFluidOunce);
    private static readonly UnitLadder ImperialVolume = new("imp gal", ExactUnits.LitresPerImperialGallon, "imp fl oz", ExactUnits.LitresPerImperialFluidOunce);

    // A pool's volume is known to four digits at best, and one of 100,000 gallons should be said as that.
    private static readonly UnitLadder CubicMetres = new("m\u00b3", ExactUnits.LitresPerCubicMetre, "L", 1, 4);
    private static readonly UnitLadder UsWater = UsVolume with { Digits = 4 };
    private static readonly UnitLadder ImperialWater = ImperialVolume with { Digits = 4 };

    /// <summary>The units.</summary>
    public UnitSystem Units => units;

    /// <summary>The language.</summary>
    public Language Language => language;

    /// <summary>Mass of a product, in kg.</summary>
    public Amount Mass(double kilograms) => Make(kilograms, "kg", Kilograms.Say(Some(kilograms)), PoundsAndOunces.Say);

    /// <summary>Volume of a liquid product or of a sample, in L.</summary>
    public Amount Volume(double litres) => Make(litres, "L", Litres.Say(Some(litres)), Choose(UsVolume, ImperialVolume).Say);

    /// <summary>A body of water, in m3.</summary>
    public Amount Water(double cubicMetres)
    {
        var litres = Some(cubicMetres) * ExactUnits.LitresPerCubicMetre;
        return Make(cubicMetres, "m3", CubicMetres.Say(litres), _ => Choose(UsWater, ImperialWater).Say(litres));
    }

    /// <summary>Temperature of water, in degC.</summary>
    public Amount Temperature(double celsius) => Make(celsius, "degC", Degrees(celsius, "degC"), c => Degrees(ExactUnits.Fahrenheit(c), "degF"));

    /// <summary>Concentration, in mg/L; in dilute water one mg/L is one ppm.</summary>
    public Amount Concentration(double milligramsPerLitre) => Make(
        milligramsPerLitre, "mg/L", Figures.Of(milligramsPerLitre, "mg/L") + Figures.After("mg/L"), c => Figures.Of(c, "mg/L") + Figures.After("ppm"));

    /// <summary>Flow of water, in m3/h.</summary>
    public Amount Flow(double cubicMetresPerHour) => Make(
        cubicMetresPerHour, "m3/h", Rate(cubicMetresPerHour, "m\u00b3/h"),
        flow => Rate(flow / ExactUnits.CubicMetresPerHour(LitresPerGallon), Gallon + "/min"));

    /// <summary>Filter rate, in m/h.</summary>
    public Amount FilterRate(double metresPerHour) => Make(
        metresPerHour, "m/h", Rate(metresPerHour, "m/h"),
        rate => Rate(rate / ExactUnits.MetresPerHour(LitresPerGallon), Gallon + "/min per ft\u00b2"));

    private double LitresPerGallon => units == UnitSystem.Us ? ExactUnits.LitresPerUsGallon : ExactUnits.LitresPerImperialGallon;

    private string Gallon => Choose(UsVolume, ImperialVolume).Unit;

    private UnitLadder Choose(UnitLadder us, UnitLadder imperial) => units == UnitSystem.Us ? us : imperial;

    private Amount Make(double value, string unit, string inSi, Func<double, string> other) =>
        new(value, unit, Written(units == UnitSystem.Metric ? inSi : other(value)), Written(inSi));

    private string Written(string amount) => language == Language.English ? amount : language.Write(amount).Replace(UnitLadder.Under, Wording.Of(language).Find("amount.under"), StringComparison.Ordinal);

    private static string Degrees(double value, string unit) => Figures.Of(value, unit) + Figures.After(unit);

    private static string Rate(double value, string unit) => Rounding.Written(Rounding.Significant(Some(value), 3)) + Figures.After(unit);

    private static double Some(double amount) => double.IsFinite(amount) && amount >= 0
        ? amount
        : throw new ArgumentOutOfRangeException(nameof(amount), amount, "an amount is finite and not negative");
}
