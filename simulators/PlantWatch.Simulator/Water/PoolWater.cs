using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.Water;

/// <summary>One pool as a well-mixed body of water, and what bathers, air, sun and heater do to it.</summary>
/// <remarks>Rates are assumptions of this simulator, of the size the trade reports (from memory): they make the plant lively, nobody doses by them.</remarks>
internal sealed class PoolWater
{
    // Grams of salts a bather and hour; share of the bather's chlorine demand that ends as combined chlorine.
    private const double BatherSalts = 5;
    private const double CombinedShare = 0.10;
    // Carbon dioxide in water at rest with hall air, mmol/L: Henry's law at about 800 ppm.
    private const double CarbonDioxideAtRest = 0.027;

    private double _ph = 7.4;

    /// <summary>A pool as the scenario starts it.</summary>
    public PoolWater(PoolSetup setup)
    {
        Setup = setup;
        var s = setup.Start;
        Now = Composition.Of(s.Free, s.Combined, s.Ph, s.Alkalinity, s.Hardness, s.DissolvedSolids, s.Temperature);
    }

    /// <summary>Fixed facts.</summary>
    public PoolSetup Setup { get; }

    /// <summary>What is in it.</summary>
    public Composition Now { get; set; }

    /// <summary>Bathers in the water.</summary>
    public int Bathers { get; set; }

    /// <summary>What instruments and people would find, were they perfect.</summary>
    public WaterView View()
    {
        var equilibrium = new Equilibrium(Now.Celsius, Now.Solids, Now.Hardness);
        _ph = equilibrium.Ph(Now.Alkalinity, Now.Carbon, Now.Hypochlorite, _ph);
        return new(_ph, Now.Free, Now.Combined, Now.Free * equilibrium.HypochlorousShare(_ph), Now.Celsius,
            Now.Alkalinity * Composition.CarbonateEquivalent, Now.Hardness, Now.Solids, equilibrium.CarbonDioxideShare(_ph));
    }

    /// <summary>Lets time pass. <paramref name="sun"/> is 0 at night and 1 at a clear noon.</summary>
    public void Pass(double hours, double sun, in WaterView view, ChlorineBook book)
    {
        var demand = Bathers * Setup.BatherGrams / Setup.VolumeM3 * hours;
        var taken = Math.Min(demand, Now.Free * 0.5);
        var bound = taken * CombinedShare;
        var faded = Now.Free * (Setup.DecayPerHour + (sun * Setup.SunPerHour)) * hours;
        var aired = Now.Combined * Setup.CombinedLossPerHour * hours;
        book.Spent += (taken - bound + faded + aired) * Setup.VolumeM3;
        var water = (Now with { Free = Now.Free - bound, Combined = Now.Combined + bound }).Spend(taken - bound + faded, aired);
        Now = water with
        {
            Carbon = water.Carbon - (Setup.OutgassingPerHour * hours * ((view.CarbonDioxideShare * water.Carbon) - CarbonDioxideAtRest)),
            Solids = water.Solids + (Bathers * BatherSalts / Setup.VolumeM3 * hours),
            Celsius = water.Celsius + Warmed(hours),
        };
    }

    // Heat: loss to the air against a heater that works harder the colder the water is, with an end to its power.
    private double Warmed(double hours)
    {
        var heater = Math.Clamp((Setup.TemperatureSet - Now.Celsius) * 2, 0, 1) * Setup.HeaterDegreesPerHour;
        return (heater - ((Now.Celsius - Setup.AirTemperature) * Setup.HeatLossPerHour)) * hours;
    }

    /// <summary>A dose arrives, spread over the pool.</summary>
    public void Dose(double litres, ProductSetup product, ChlorineBook book)
    {
        if (litres <= 0) return;
        var chlorine = litres * product.ChlorineGramsPerLitre / Setup.VolumeM3;
        book.Dosed += litres * product.ChlorineGramsPerLitre;
        Now = Now with
        {
            Free = Now.Free + chlorine,
            Alkalinity = Now.Alkalinity + (litres * product.ChargePerLitre / Setup.VolumeM3),
            Carbon = Now.Carbon + (litres * product.CarbonPerLitre / Setup.VolumeM3),
            Solids = Now.Solids + (litres * product.SaltGramsPerLitre / Setup.VolumeM3),
        };
    }
}

/// <summary>The truth about a pool at one moment.</summary>
/// <param name="Ph">pH.</param>
/// <param name="Free">Free chlorine, mg/L.</param>
/// <param name="Combined">Combined chlorine, mg/L.</param>
/// <param name="Hypochlorous">Free chlorine present as HOCl, mg/L as Cl2.</param>
/// <param name="Celsius">Temperature.</param>
/// <param name="Alkalinity">mg/L as CaCO3.</param>
/// <param name="Hardness">mg/L as CaCO3.</param>
/// <param name="Solids">mg/L.</param>
/// <param name="CarbonDioxideShare">Share of inorganic carbon that can leave to the air.</param>
internal readonly record struct WaterView(
    double Ph, double Free, double Combined, double Hypochlorous, double Celsius, double Alkalinity, double Hardness, double Solids, double CarbonDioxideShare);
