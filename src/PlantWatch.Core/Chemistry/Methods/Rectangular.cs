namespace PlantWatch.Core.Chemistry;

/// <summary>Standard uncertainty of what is only known to lie somewhere in an interval (GUM, rectangular distribution).</summary>
public static class Rectangular
{
    /// <summary>Anywhere within +- a half width: half width/sqrt(3).</summary>
    public static double OfHalfWidth(double halfWidth) => Math.Abs(halfWidth) / Math.Sqrt(3);

    /// <summary>Anywhere within one step of a scale: step/sqrt(12).</summary>
    public static double OfStep(double step) => OfHalfWidth(step / 2);
}
