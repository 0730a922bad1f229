namespace PlantWatch.Simulator.Water;

/// <summary>Where the chlorine of a circuit came from and went, in grams as Cl2. It must close: dosed = spent + discharged + what is still there.</summary>
internal sealed class ChlorineBook
{
    /// <summary>Delivered by pumps and by hand.</summary>
    public double Dosed { get; set; }

    /// <summary>Turned to chloride: by bathers, sun, lamp and time.</summary>
    public double Spent { get; set; }

    /// <summary>Gone with the water that make-up displaced.</summary>
    public double Discharged { get; set; }
}
