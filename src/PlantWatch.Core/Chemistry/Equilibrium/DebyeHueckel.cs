namespace PlantWatch.Core.Chemistry;

/// <summary>The two constants of the Debye-Hueckel law in water at a temperature: A in (kg/mol)^0.5, B in (kg/mol)^0.5 per angstrom. The default is the ideal water, in which charges do not feel each other.</summary>
/// <remarks>
/// A = 1.82483e6 sqrt(rho)/(eps T)^1.5 and B = 50.2916 sqrt(rho/(eps T)). Density of water in g/mL after Kell (J. Chem. Eng. Data 20:97, 1975), permittivity after Bradley and Pitzer
/// (J. Phys. Chem. 83:1599, 1979) at 1 atm; coefficients from memory, held by a test to the values that USGS PHREEQC 3.8.9 prints from 5 to 40 degC.
/// </remarks>
public readonly record struct DebyeHueckel(double A, double B)
{
    /// <summary>In water at a temperature in degC, 0 to 100.</summary>
    public static DebyeHueckel At(double celsius)
    {
        var kelvin = celsius + 273.15;
        var (density, permittivity) = (Density(celsius), Permittivity(kelvin));
        return new(1.82483e6 * Math.Sqrt(density) / Math.Pow(permittivity * kelvin, 1.5), 50.2916 * Math.Sqrt(density / (permittivity * kelvin)));
    }

    /// <summary>Density of water in g/mL at a temperature in degC.</summary>
    public static double Density(double t) =>
        ((999.83952 + (t * (16.945176 + (t * (-7.9870401e-3 + (t * (-46.170461e-6 + (t * (105.56302e-9 + (t * -280.54253e-12)))))))))) / (1 + (16.879850e-3 * t))) / 1000;

    /// <summary>Relative permittivity of water at a temperature in kelvin.</summary>
    public static double Permittivity(double kelvin)
    {
        const double bar = 1.01325;
        var at1000Bar = 342.79 * Math.Exp((-5.0866e-3 * kelvin) + (9.4690e-7 * kelvin * kelvin));
        var c = -2.0525 + (3115.9 / (-182.89 + kelvin));
        var b = -8032.5 + (4.2142e6 / kelvin) + (2.1417 * kelvin);
        return at1000Bar + (c * Math.Log((b + bar) / (b + 1000)));
    }
}
