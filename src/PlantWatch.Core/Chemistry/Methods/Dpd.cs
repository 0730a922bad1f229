using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>What is known of the DPD test for chlorine. mg/L are those in the cell, before any dilution factor.</summary>
public static class Dpd
{
    /// <summary>ISO 7393-2:2017 has 0.03 to 5 (published, scope); above it the sample is to be diluted.</summary>
    public static ValueRange Range { get; } = new(0.03, 5);

    /// <summary>From here on the dye may bleach and the reading may be anything, down to nil: 10 mg/L for tablets, 4 for liquid reagents (published, photometer manuals).</summary>
    public const double Bleaches = 10;

    /// <summary>Monochloramine that reads as free chlorine when the colour is read within a minute: under 0.1 mg/L of 3 (published, colorimeter manual). Later, more.</summary>
    public const double MonochloramineAsFree = 0.1 / 3;

    /// <summary>From so much combined chlorine on, that is worth a word, mg/L.</summary>
    public const double MuchMonochloramine = 3;
}
