namespace PlantWatch.Core.Chemistry;

/// <summary>From the measured figures of a water to what it is made of: calcium chloride and sodium bicarbonate, filled up with common salt to the dissolved solids.</summary>
/// <remarks>
/// The composition that the check values were made with. Real water holds magnesium, potassium and sulfate as well; of what is not measured only the ionic strength matters, and salt
/// stands for it. Where the stated solids are less than what hardness and alkalinity alone weigh, they are raised to that weight, rounded up to the next 50 mg/L.
/// </remarks>
internal static class WaterRecipe
{
    /// <summary>The part of cyanurate that still holds a charge at the end of an alkalinity titration, pH 4.5 (pK 6.88).</summary>
    private static readonly double CyanurateAtEndpoint = 1 / (1 + Math.Pow(10, 6.88 - 4.5));

    /// <summary>The composition without its carbon, which is found from pH.</summary>
    public static Composition WithoutCarbon(Water water)
    {
        var calcium = Masses.Moles(water.Calcium.MilligramsPerLitre, Masses.CalciumCarbonate);
        var cyanurate = Masses.Moles(water.Cyanurate?.MilligramsPerLitre ?? 0, Masses.CyanuricAcid);
        var alkalinity = Masses.Moles(water.Alkalinity.MilligramsPerLitre, Masses.AlkalinityEquivalent);
        var salt = Masses.Moles(Salt(water, calcium, alkalinity), Masses.SodiumChloride);
        return new(
            Carbon: 0, calcium, alkalinity + (CyanurateAtEndpoint * cyanurate) + salt, (2 * calcium) + salt, Sulfate: 0, cyanurate,
            Masses.Moles(water.FreeChlorine?.MilligramsPerLitre ?? 0, Masses.Chlorine), Masses.Moles(water.BoronMilligramsPerLitre, Masses.Boron));
    }

    /// <summary>Total alkalinity in eq/kg of a composition, as a titration to pH 4.5 would find it.</summary>
    public static double Alkalinity(Composition composition) => composition.StrongCharge - (CyanurateAtEndpoint * composition.Cyanurate);

    /// <summary>Dissolved solids in mg/L of a composition, alkalinity counted as bicarbonate.</summary>
    public static double Solids(Composition c) =>
        Masses.Milligrams(c.Calcium, Masses.Calcium) + Masses.Milligrams(c.Sodium, Masses.Sodium) + Masses.Milligrams(c.Chloride, Masses.Chloride)
        + Masses.Milligrams(c.Sulfate, Masses.Sulfate) + Masses.Milligrams(Math.Max(0, Alkalinity(c)), Masses.Bicarbonate);

    private static double Salt(Water water, double calcium, double alkalinity)
    {
        var weight = Masses.Milligrams(calcium, Masses.Calcium + (2 * Masses.Chloride)) + Masses.Milligrams(alkalinity, Masses.Sodium + Masses.Bicarbonate);
        var stated = water.Solids.MilligramsPerLitre;
        return (stated < weight ? 50 * Math.Ceiling(weight / 50) : stated) - weight;
    }
}
