using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>One point of a curve: where it stands and what the water is there.</summary>
/// <param name="At">pH, or kilograms.</param>
/// <param name="Figures">The water there.</param>
public readonly record struct SweepPoint(double At, WaterFigures Figures);

/// <summary>How a water answers when one thing is moved and the rest is left alone. Closed to the air.</summary>
public static class Sweep
{
    /// <summary>The same water at other pH: alkalinity kept, carbon dioxide moved, as aeration and CO2 dosing move it.</summary>
    /// <param name="water">The water.</param>
    /// <param name="from">First pH.</param>
    /// <param name="to">Last pH.</param>
    /// <param name="points">How many, at least 2.</param>
    /// <returns>The points that are possible, in order: at high pH a water of little alkalinity may have none.</returns>
    public static ImmutableArray<SweepPoint> OverPh(ImaginedWater water, double from, double to, int points)
    {
        ArgumentNullException.ThrowIfNull(water);
        return [.. Steps(from, to, points)
            .Select(ph => (ph, result: (water with { Ph = Ph.From(ph) }).Speciate()))
            .Where(p => p.result.IsKnown)
            .Select(p => new SweepPoint(p.ph, water.FiguresOf(p.result.Value)))];
    }

    /// <summary>A water with more and more of a product in it.</summary>
    /// <param name="water">What is known of the water.</param>
    /// <param name="start">It, worked out.</param>
    /// <param name="perKilogram">What one kilogram changes, in mol per kg of water.</param>
    /// <param name="most">The largest amount in kg, above 0.</param>
    /// <param name="points">How many, at least 2.</param>
    /// <returns>The points that are possible, in order.</returns>
    public static ImmutableArray<SweepPoint> OverDose(ImaginedWater water, Speciation start, Composition perKilogram, double most, int points)
    {
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(start);
        return [.. Steps(0, most, points)
            .Select(kilograms => (kilograms, result: Equilibrium.After(start, start.Composition + (kilograms * perKilogram))))
            .Where(p => p.result.IsKnown)
            .Select(p => new SweepPoint(p.kilograms, water.FiguresOf(p.result.Value)))];
    }

    private static IEnumerable<double> Steps(double from, double to, int points) => points >= 2
        ? Enumerable.Range(0, points).Select(i => from + ((to - from) * i / (points - 1)))
        : throw new ArgumentOutOfRangeException(nameof(points), points, "a curve has at least two points");
}
