using System.Globalization;

namespace PlantWatch.Server.Units;

/// <summary>Figures as coarse as people can weigh and measure them: rounded to significant digits, never shown as nothing when there is something.</summary>
internal static class Rounding
{
    /// <summary>Nearest value with so many significant digits.</summary>
    public static double Significant(double value, int digits)
    {
        if (value == 0) return 0;
        var step = Math.Pow(10, Math.Floor(Math.Log10(Math.Abs(value))) + 1 - digits);
        return ToStep(value, step);
    }

    /// <summary>Nearest multiple of a step.</summary>
    public static double ToStep(double value, double step) => Math.Round(value / step, MidpointRounding.AwayFromZero) * step;

    /// <summary>The figure with thousands set apart and at most three decimals.</summary>
    public static string Written(double value) => value.ToString("#,0.###", CultureInfo.InvariantCulture);
}
