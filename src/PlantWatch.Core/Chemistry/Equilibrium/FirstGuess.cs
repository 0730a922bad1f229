using static PlantWatch.Core.Chemistry.Component;

namespace PlantWatch.Core.Chemistry;

/// <summary>Where the solver starts: a pool at the given pH, most of each amount in its commonest form.</summary>
internal static class FirstGuess
{
    private static readonly int Bicarbonate = SpeciesTable.IndexOf("HCO3-");
    private static readonly int Monobasic = SpeciesTable.IndexOf("H2Cy-");

    /// <summary>Writes the logarithms of the activities, and the ions that make the ionic strength.</summary>
    public static void Make(Composition c, Tableau tableau, double ph, Span<double> ln, Span<double> molality)
    {
        molality.Clear();
        molality[(int)Component.Calcium] = c.Calcium;
        molality[(int)Sodium] = c.Sodium;
        molality[(int)Sulfate] = c.Sulfate;
        molality[Bicarbonate] = Math.Max(c.StrongCharge, 0);
        var h = -Math.Log(10) * ph;
        ln[(int)Hydrogen] = h;
        ln[(int)Carbonate] = Ln(c.Carbon > 0 ? c.Carbon : Math.Max(c.StrongCharge, 1e-5)) - tableau.LnK[Bicarbonate] - h;
        ln[(int)Component.Calcium] = Ln(0.6 * c.Calcium);
        ln[(int)Sodium] = Ln(c.Sodium);
        ln[(int)Sulfate] = Ln(0.6 * c.Sulfate);
        ln[(int)Component.Cyanurate] = Ln(0.5 * c.Cyanurate) - tableau.LnK[Monobasic] - (2 * h);
        // Cyanurate binds nearly all chlorine as long as there is enough of it.
        ln[(int)HypochlorousAcid] = Ln(c.Cyanurate > c.Chlorine ? 0.02 * c.Chlorine : 0.3 * c.Chlorine);
        ln[(int)BoricAcid] = Ln(c.Boron);
    }

    private static double Ln(double amount) => Math.Log(Math.Max(amount, 1e-300));
}
