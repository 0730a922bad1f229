using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>What is known of pH by phenol red, and of what leads it astray.</summary>
public static class PhenolRed
{
    /// <summary>It changes colour between these pH (published, photometer manuals); at the ends and beyond, a result is only a bound.</summary>
    public static ValueRange Range { get; } = new(6.8, 8.4);

    /// <summary>Chlorine above 10 to 15 mg/L turns it purple: a false high (common practice).</summary>
    public const double PurpleFromChlorine = 10;

    /// <summary>Below this alkalinity in mg/L the indicator itself shifts the pH of the sample (from memory).</summary>
    public const double LeastAlkalinity = 50;

    /// <summary>From so much dissolved salt on, in mg/L, it reads off by up to 0.1 to 0.2 (from memory).</summary>
    public const double SaltFrom = 3000;

    /// <summary>How far it reads off in salt water, pH (from memory).</summary>
    public static ValueRange SaltError { get; } = new(0.1, 0.2);
}
