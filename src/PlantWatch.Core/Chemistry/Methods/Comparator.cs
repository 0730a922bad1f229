namespace PlantWatch.Core.Chemistry;

/// <summary>A colour held against standards by eye.</summary>
public static class Comparator
{
    /// <summary>A colour between two standards is called half a step, and eyes and light are no surer than that (common practice): half a step as standard uncertainty.</summary>
    /// <param name="step">From one standard to the next, in the unit of the scale.</param>
    public static double Uncertainty(double step) => Math.Abs(step) / 2;
}
