namespace PlantWatch.Server.Units;

/// <summary>What the trade's other units are in SI. Each is exact by definition; the definitions stand here from memory (NIST SP 811; UK Units of Measurement Regulations).</summary>
internal static class ExactUnits
{
    public const double KilogramsPerPound = 0.45359237;
    public const double OuncesPerPound = 16;
    public const double KilogramsPerOunce = KilogramsPerPound / OuncesPerPound;

    /// <summary>231 cubic inches. Taking it for the imperial gallon is an error of a fifth.</summary>
    public const double LitresPerUsGallon = 3.785411784;

    /// <summary>A US gallon has 128 of them.</summary>
    public const double LitresPerUsFluidOunce = LitresPerUsGallon / 128;

    public const double LitresPerImperialGallon = 4.54609;

    /// <summary>An imperial gallon has 160 of them: smaller than the US one although its gallon is larger.</summary>
    public const double LitresPerImperialFluidOunce = LitresPerImperialGallon / 160;

    public const double LitresPerCubicMetre = 1000;
    public const double MetresPerFoot = 0.3048;
    public const double MinutesPerHour = 60;

    /// <summary>m3/h in one gallon a minute.</summary>
    public static double CubicMetresPerHour(double litresPerGallon) => litresPerGallon * MinutesPerHour / LitresPerCubicMetre;

    /// <summary>m/h in one gallon a minute and square foot.</summary>
    public static double MetresPerHour(double litresPerGallon) => CubicMetresPerHour(litresPerGallon) / (MetresPerFoot * MetresPerFoot);

    public static double Fahrenheit(double celsius) => (celsius * 9 / 5) + 32;

    public static double Celsius(double fahrenheit) => (fahrenheit - 32) * 5 / 9;
}
