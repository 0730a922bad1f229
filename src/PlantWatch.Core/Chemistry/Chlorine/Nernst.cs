namespace PlantWatch.Core.Chemistry;

/// <summary>The Nernst equation's figures. R and F are exact since the SI of 2019 (CODATA).</summary>
public static class Nernst
{
    /// <summary>Gas constant, J/(mol K).</summary>
    private const double Gas = 8.31446261815324;

    /// <summary>Faraday constant, C/mol.</summary>
    private const double Faraday = 96485.33212331001;

    private const double Kelvin = 273.15;

    /// <summary>mV for a factor e and one electron: RT/F.</summary>
    internal static double Natural(double celsius) => 1000 * Gas * (celsius + Kelvin) / Faraday;

    /// <summary>mV a decade and electron, which is what a pH electrode gives a pH: 59.159 at 25 degC.</summary>
    /// <param name="celsius">Temperature, degC.</param>
    public static double Slope(double celsius) => Math.Log(10) * Natural(celsius);
}
