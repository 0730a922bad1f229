namespace PlantWatch.Core.Chemistry;

/// <summary>The species table at one temperature, in the flat form the solver runs over.</summary>
internal sealed class Tableau
{
    /// <summary>Number of components.</summary>
    public const int Components = 8;

    /// <summary>Number of species, the components first.</summary>
    public static readonly int Species = SpeciesTable.All.Length;

    // How many of each component a species holds, species by species.
    private static readonly sbyte[] CountsOf = FlatCounts();

    private readonly double[] _lnK;

    private Tableau(double[] lnK, double lnCalcite, DebyeHueckel water)
    {
        _lnK = lnK;
        LnCalcite = lnCalcite;
        Water = water;
    }

    /// <summary>Natural logarithm of each formation constant.</summary>
    public ReadOnlySpan<double> LnK => _lnK;

    /// <summary>Natural logarithm of the solubility product of calcite.</summary>
    public double LnCalcite { get; }

    /// <summary>What charges feel; the default in the ideal water.</summary>
    public DebyeHueckel Water { get; }

    /// <summary>The table at a temperature in degC, with or without the effect of ionic strength.</summary>
    public static Tableau At(double celsius, bool ideal)
    {
        var lnK = new double[Species];
        for (var i = Components; i < lnK.Length; i++) lnK[i] = Math.Log(10) * SpeciesTable.All[i].Formation.At(celsius);
        return new(lnK, Math.Log(10) * SpeciesTable.Calcite.At(celsius), ideal ? default : DebyeHueckel.At(celsius));
    }

    /// <summary>The same table with another constant for one species, where a published set brings its own.</summary>
    public Tableau With(string species, double logK)
    {
        var lnK = (double[])_lnK.Clone();
        lnK[SpeciesTable.IndexOf(species)] = Math.Log(10) * logK;
        return new(lnK, LnCalcite, Water);
    }

    /// <summary>Charge number of each species.</summary>
    public static readonly int[] Charges = [.. SpeciesTable.All.Select(s => s.Charge)];

    /// <summary>Molecules of water that forming each species sets free.</summary>
    public static readonly int[] WaterFreed = [.. SpeciesTable.All.Select(s => s.Water)];

    /// <summary>Rule of the activity coefficient of each species.</summary>
    public static readonly ActivityRule[] Rules = [.. SpeciesTable.All.Select(s => s.Activity)];

    /// <summary>How many of each component a species holds.</summary>
    public static ReadOnlySpan<sbyte> Counts(int species) => CountsOf.AsSpan(species * Components, Components);

    private static sbyte[] FlatCounts()
    {
        var flat = new sbyte[SpeciesTable.All.Length * Components];
        for (var i = 0; i < SpeciesTable.All.Length; i++)
            foreach (var (component, count) in SpeciesTable.All[i].Parts) flat[(i * Components) + (int)component] = (sbyte)count;
        return flat;
    }
}
