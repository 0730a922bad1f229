namespace PlantWatch.Core.Chemistry;

/// <summary>Indices made for other waters than a pool's. Shown because people ask for them; nothing acts on them.</summary>
public static class OtherIndices
{
    /// <summary>Ryznar stability index, 2 pHs - pH: made for the scale of town mains and cooling water; about 6 to 7 is near balance (Ryznar 1944, from memory).</summary>
    public static double Ryznar(double saturationPh, double ph) => (2 * saturationPh) - ph;

    /// <summary>Puckorius scaling index, 2 pHs - pHeq with pHeq = 1.465 log10 TA + 4.54: made for cooling towers that breathe out their carbon dioxide (Puckorius and Brooke, from memory).</summary>
    /// <param name="saturationPh">pH of saturation.</param>
    /// <param name="alkalinity">Total alkalinity in mg/L as CaCO3, above 0.</param>
    public static double Puckorius(double saturationPh, double alkalinity) => (2 * saturationPh) - ((1.465 * Math.Log10(alkalinity)) + 4.54);

    /// <summary>
    /// Larson-Skold ratio (chloride + sulfate)/(bicarbonate + carbonate) in equivalents: made for mild steel in lake water; under 0.8 mild, above 1.2 corrosive (from memory).
    /// A salted pool exceeds it always.
    /// </summary>
    /// <param name="strongAnions">Chloride and sulfate in meq/L.</param>
    /// <param name="carbonate">Bicarbonate and carbonate in meq/L, above 0.</param>
    public static double LarsonSkold(double strongAnions, double carbonate) => strongAnions / carbonate;
}
