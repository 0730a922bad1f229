namespace PlantWatch.Simulator.Setup;

/// <summary>A scenario file, as written. Keys are described in simulators/README.md.</summary>
internal sealed class Scenario
{
    public string Name { get; set; } = "";
    public string About { get; set; } = "";
    public int Seed { get; set; } = 1;
    /// <summary>Longest step of the physics, seconds.</summary>
    public double StepSeconds { get; set; } = 5;
    /// <summary>IANA zone that the people's clock follows.</summary>
    public string TimeZone { get; set; } = "UTC";
    /// <summary>Another scenario whose products, circuits and people hold where this file names none.</summary>
    public string PlantOf { get; set; } = "";
    /// <summary>Multiplies every pool's bathers.</summary>
    public double BathersFactor { get; set; } = 1;
    public List<ProductSetup> Products { get; set; } = [];
    public List<CircuitSetup> Circuits { get; set; } = [];
    public PeopleSetup People { get; set; } = new();
    public List<FaultSetup> Faults { get; set; } = [];
    public List<PanelTurn> PanelTurns { get; set; } = [];
    public List<WashSetup> Washes { get; set; } = [];

    /// <summary>A product by its key.</summary>
    public ProductSetup Product(string id) => Products.Single(p => p.Id == id);
}

/// <summary>What a pump delivers, by what a litre of it brings into the water.</summary>
internal sealed class ProductSetup
{
    public string Id { get; set; } = "";
    /// <summary>Available chlorine, grams as Cl2 a litre.</summary>
    public double ChlorineGramsPerLitre { get; set; }
    /// <summary>Charge a litre, mol: plus for a base (hypochlorite counts as one), minus for an acid.</summary>
    public double ChargePerLitre { get; set; }
    /// <summary>Inorganic carbon a litre, mol.</summary>
    public double CarbonPerLitre { get; set; }
    /// <summary>Salts that stay, grams a litre.</summary>
    public double SaltGramsPerLitre { get; set; }
    /// <summary>Per cent on the label of a delivery; 0 leaves it unsaid.</summary>
    public double LabelPercent { get; set; }
    /// <summary>Price of a litre.</summary>
    public double PricePerLitre { get; set; }
}

/// <summary>How a gateway writes its packs.</summary>
internal enum PackForm
{
    /// <summary>SenML in JSON.</summary>
    Json,
    /// <summary>SenML in CBOR.</summary>
    Cbor,
}

/// <summary>Pools that share treatment.</summary>
internal sealed class CircuitSetup
{
    public string Id { get; set; } = "";
    public double BalanceTankM3 { get; set; } = 10;
    public double TurnoverHours { get; set; } = 4;
    /// <summary>A lamp that breaks combined chlorine.</summary>
    public bool Uv { get; set; }
    public MakeUpSetup MakeUp { get; set; } = new();
    /// <summary>SenML base name of the gateway, such as <c>urn:dev:ops:site-circuit:</c>.</summary>
    public string BaseName { get; set; } = "";
    /// <summary>What its packs are written in.</summary>
    public PackForm Packs { get; set; }
    public List<PoolSetup> Pools { get; set; } = [];
    public List<ProbeSetup> Probes { get; set; } = [];
    public List<PumpSetup> Pumps { get; set; } = [];
    public List<FilterSetup> Filters { get; set; } = [];
    /// <summary>Pressure of the circulation pump against a shut valve, kPa.</summary>
    public double PumpShutOffKpa { get; set; } = 220;
    /// <summary>Pressure across the clean filters at the design flow, kPa.</summary>
    public double FilterCleanKpa { get; set; } = 30;
}

/// <summary>A filter. All filters of a circuit stand side by side.</summary>
internal sealed class FilterSetup
{
    public string Id { get; set; } = "";
    /// <summary>What it has caught at the start: resistance over the clean one, in shares of it.</summary>
    public double Caught { get; set; }
    /// <summary>What a bather brings in an hour, in shares of the clean resistance, where its filter gets its even part of the flow.</summary>
    public double CaughtPerBatherHour { get; set; } = 0.001;
    /// <summary>What a day brings without bathers.</summary>
    public double CaughtPerDay { get; set; } = 0.03;
}

/// <summary>Somebody washes a filter.</summary>
internal sealed class WashSetup
{
    public string Circuit { get; set; } = "";
    public string Filter { get; set; } = "";
    public string After { get; set; } = "0m";
    public string For { get; set; } = "8m";
    public string Who { get; set; } = "M. Okafor";
}

/// <summary>Fresh water.</summary>
internal sealed class MakeUpSetup
{
    public double Free { get; set; } = 0.2;
    public double Ph { get; set; } = 7.6;
    public double Alkalinity { get; set; } = 160;
    public double Hardness { get; set; } = 220;
    public double DissolvedSolids { get; set; } = 380;
    public double Temperature { get; set; } = 14;
    public double LitresPerBatherHour { get; set; } = 30;
    public double PercentPerDay { get; set; } = 0.8;
}

/// <summary>One pool.</summary>
internal sealed class PoolSetup
{
    public string Id { get; set; } = "";
    public double VolumeM3 { get; set; } = 100;
    public WaterStart Start { get; set; } = new();
    /// <summary>The pool's own line of ORP: mV at 1 mg/L HOCl, and mV more a tenfold of it.</summary>
    public double OrpAtOne { get; set; } = 740;
    public double OrpPerDecade { get; set; } = 65;
    public double TemperatureSet { get; set; } = 28;
    /// <summary>Temperature towards which the water cools; lower than the hall's air, since evaporation is left out.</summary>
    public double AirTemperature { get; set; } = 24;
    public double HeatLossPerHour { get; set; } = 0.004;
    public double HeaterDegreesPerHour { get; set; } = 0.4;
    public double DecayPerHour { get; set; } = 0.02;
    /// <summary>Free chlorine lost to a clear noon sun, share an hour; 0 under a roof.</summary>
    public double SunPerHour { get; set; }
    public double CombinedLossPerHour { get; set; } = 0.01;
    public double OutgassingPerHour { get; set; } = 0.008;
    /// <summary>Chlorine that a bather uses up in an hour, grams.</summary>
    public double BatherGrams { get; set; } = 4;
    public BatherSetup Bathers { get; set; } = new();
}

/// <summary>What the water is like at the start.</summary>
internal sealed class WaterStart
{
    public double Free { get; set; } = 1.4;
    public double Combined { get; set; } = 0.3;
    public double Ph { get; set; } = 7.4;
    public double Alkalinity { get; set; } = 110;
    public double Hardness { get; set; } = 240;
    public double DissolvedSolids { get; set; } = 1100;
    public double Temperature { get; set; } = 28;
}

/// <summary>Who comes when.</summary>
internal sealed class BatherSetup
{
    /// <summary>Bathers in the fullest hour of an ordinary weekday.</summary>
    public double Peak { get; set; }
    public double WeekendFactor { get; set; } = 1.4;
    public string Opens { get; set; } = "07:00";
    public string Closes { get; set; } = "21:30";
}
