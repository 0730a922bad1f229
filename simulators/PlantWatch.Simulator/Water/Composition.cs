namespace PlantWatch.Simulator.Water;

/// <summary>What is in a litre of water. Everything here mixes in proportion; pH does not and is worked out.</summary>
/// <param name="Free">Free chlorine, mg/L as Cl2.</param>
/// <param name="Combined">Combined chlorine, mg/L as Cl2.</param>
/// <param name="Alkalinity">mmol/L of charge, hypochlorite ion included.</param>
/// <param name="Carbon">Total inorganic carbon, mmol/L.</param>
/// <param name="Hardness">Calcium hardness, mg/L as CaCO3.</param>
/// <param name="Solids">Dissolved solids, mg/L.</param>
/// <param name="Celsius">Temperature.</param>
internal readonly record struct Composition(
    double Free, double Combined, double Alkalinity, double Carbon, double Hardness, double Solids, double Celsius)
{
    /// <summary>mg of Cl2 a mmol.</summary>
    public const double ChlorineMass = 70.906;

    /// <summary>mg of CaCO3 a mmol of charge.</summary>
    public const double CarbonateEquivalent = 50.043;

    /// <summary>HOCl and its ion, mmol/L.</summary>
    public double Hypochlorite => Free / ChlorineMass;

    /// <summary>This water with a share (0 to 1) of it replaced by another.</summary>
    public Composition Blend(in Composition other, double share) => new(
        Free + ((other.Free - Free) * share),
        Combined + ((other.Combined - Combined) * share),
        Alkalinity + ((other.Alkalinity - Alkalinity) * share),
        Carbon + ((other.Carbon - Carbon) * share),
        Hardness + ((other.Hardness - Hardness) * share),
        Solids + ((other.Solids - Solids) * share),
        Celsius + ((other.Celsius - Celsius) * share));

    /// <summary>This water after a share of it flowed out as <paramref name="gone"/> and as much came in as <paramref name="come"/>.</summary>
    public Composition Add(in Composition come, in Composition gone, double share) => new(
        Free + ((come.Free - gone.Free) * share),
        Combined + ((come.Combined - gone.Combined) * share),
        Alkalinity + ((come.Alkalinity - gone.Alkalinity) * share),
        Carbon + ((come.Carbon - gone.Carbon) * share),
        Hardness + ((come.Hardness - gone.Hardness) * share),
        Solids + ((come.Solids - gone.Solids) * share),
        Celsius + ((come.Celsius - gone.Celsius) * share));

    /// <summary>Chlorine turned to chloride: each mmol leaves one of acid behind.</summary>
    public Composition Spend(double free, double combined) => this with
    {
        Free = Free - free,
        Combined = Combined - combined,
        Alkalinity = Alkalinity - ((free + combined) / ChlorineMass),
    };

    /// <summary>Water as a person would describe it, by pH and alkalinity as CaCO3.</summary>
    public static Composition Of(double free, double combined, double ph, double alkalinityAsCaCO3, double hardness, double solids, double celsius)
    {
        var charge = alkalinityAsCaCO3 / CarbonateEquivalent;
        var equilibrium = new Equilibrium(celsius, solids, hardness);
        var withoutCarbon = equilibrium.Alkalinity(ph, 0, free / ChlorineMass);
        var chargeOfOneCarbon = equilibrium.Alkalinity(ph, 1, 0) - equilibrium.Alkalinity(ph, 0, 0);
        return new(free, combined, charge, (charge - withoutCarbon) / chargeOfOneCarbon, hardness, solids, celsius);
    }
}
