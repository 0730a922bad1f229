namespace PlantWatch.Core.Chemistry;

/// <summary>An equilibrium constant over temperature: log K = A1 + A2 T + A3/T + A4 log10 T + A5/T^2 + A6 T^2, T in kelvin.</summary>
/// <remarks>The form in which the public-domain databases of the USGS print it. A constant alone is A1: then it is what it is at 25 degC.</remarks>
internal readonly record struct LogK(double A1, double A2 = 0, double A3 = 0, double A4 = 0, double A5 = 0, double A6 = 0)
{
    private const double Kelvin = 273.15;

    /// <summary>log K at a temperature in degC.</summary>
    public double At(double celsius)
    {
        var t = celsius + Kelvin;
        return A1 + (A2 * t) + (A3 / t) + (A4 * Math.Log10(t)) + (A5 / (t * t)) + (A6 * t * t);
    }

    /// <summary>Two reactions one after the other.</summary>
    public static LogK operator +(LogK a, LogK b) => new(a.A1 + b.A1, a.A2 + b.A2, a.A3 + b.A3, a.A4 + b.A4, a.A5 + b.A5, a.A6 + b.A6);
}
