namespace PlantWatch.Core.Chemistry;

/// <summary>What is left of total alkalinity for carbonate when cyanurate and borate have taken their share: only that can scale.</summary>
/// <remarks>
/// A titration to pH 4.5 counts what cyanurate and borate give off on the way. Cyanurate: f = (50.043/129.07)(alpha(pH) - alpha(4.5)) with pK 6.88 at 25 degC (O'Brien set, US EPA ORD);
/// it meets the trade's correction table within 0.015 and the flat third at pH 7.6 only. Borate: pK 9.24 less the effect of a pool's ionic strength, 9.0; the trade's 0.17 mg/L per mg/L B at pH 7.6.
/// </remarks>
public static class CarbonateAlkalinity
{
    private const double CyanuratePk = 6.88;
    private const double BoratePk = 9.0;
    private const double Endpoint = 4.5;

    /// <summary>mg/L as CaCO3 of alkalinity in a mg/L of cyanuric acid, 0 to 0.39.</summary>
    public static double CyanurateFactor(double ph) =>
        Masses.AlkalinityEquivalent / Masses.CyanuricAcid * (Ionised(ph, CyanuratePk) - Ionised(Endpoint, CyanuratePk));

    /// <summary>mg/L as CaCO3 of alkalinity in a mg/L of boron, 0 to 4.6.</summary>
    public static double BorateFactor(double ph) => Masses.AlkalinityEquivalent / Masses.Boron * (Ionised(ph, BoratePk) - Ionised(Endpoint, BoratePk));

    /// <summary>The carbonate alkalinity of a water in mg/L as CaCO3. At or under 0 the tests contradict each other: cyanurate and borate alone would hold more than was measured.</summary>
    public static double Of(Water water)
    {
        ArgumentNullException.ThrowIfNull(water);
        return water.Alkalinity.MilligramsPerLitre - Taken(water);
    }

    /// <summary>What cyanurate and borate hold of the alkalinity, in mg/L as CaCO3.</summary>
    public static double Taken(Water water)
    {
        ArgumentNullException.ThrowIfNull(water);
        return ((water.Cyanurate?.MilligramsPerLitre ?? 0) * CyanurateFactor(water.Ph.Value)) + (water.BoronMilligramsPerLitre * BorateFactor(water.Ph.Value));
    }

    private static double Ionised(double ph, double pk) => 1 / (1 + Math.Pow(10, pk - ph));
}
