using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>Constants of a simpler model of cyanurate and chlorine that are known over temperature, at zero ionic strength. They are never mixed into the full set: they only tell how far 25 degC is from a water.</summary>
/// <remarks>
/// Wahman, Environ. Sci.: Water Res. Technol. 4:1522 (2018), and Wahman and Alexander, Environ. Eng. Sci. 36:283 (2019), published in their abstracts. Of pK9a only 5.83 at 25 degC is known
/// here, so it has no function.
/// </remarks>
public static class SimplerCyanurate
{
    /// <summary>Temperatures the equations hold for, degC.</summary>
    public static ValueRange ValidCelsius { get; } = new(5, 35);

    private const double Kelvin = 273.15;
    private const double Reference = 25;

    // How the release of chlorine from dichlorocyanurate goes with 1/T.
    private const double Release = 2028;

    /// <summary>pK of the first proton of cyanuric acid: 1743/T + 1.12.</summary>
    /// <param name="celsius">5 to 35 degC.</param>
    public static Figure AcidPk(double celsius) => In(celsius).Then(() => (1743 / (celsius + Kelvin)) + 1.12);

    /// <summary>pK of the release of chlorine from dichlorocyanurate: 2028/T - 2.15.</summary>
    /// <param name="celsius">5 to 35 degC.</param>
    public static Figure ReleasePk(double celsius) => In(celsius).Then(() => (Release / (celsius + Kelvin)) - 2.15);

    /// <summary>By what part more chlorine is set free than at 25 degC, as that one step goes: 0.11 at 27 degC, negative in colder water.</summary>
    /// <param name="celsius">5 to 35 degC.</param>
    public static Figure MoreThanAt25(double celsius) => In(celsius)
        .Then(() => Math.Pow(10, (Release / (Reference + Kelvin)) - (Release / (celsius + Kelvin))) - 1);

    private static InputCheck In(double celsius) => new InputCheck().Within("temperature", celsius, ValidCelsius, "degC");
}
