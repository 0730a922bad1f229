namespace PlantWatch.Core.Chemistry;

/// <summary>Bromine water tested with the chlorine programme of an instrument.</summary>
public static class Bromine
{
    /// <summary>Readings of the chlorine programme times this are bromine as Br2: 159.808 g/mol over 70.906, in the trade 2.25.</summary>
    public const double PerChlorine = 2.25;

    /// <summary>Bromine in mg/L as Br2 of a reading in mg/L as Cl2.</summary>
    public static double OfChlorineReading(double milligramsPerLitre) => PerChlorine * milligramsPerLitre;
}
