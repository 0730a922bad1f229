using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant;

/// <summary>The whole plant file, understood: the site and its circuits.</summary>
/// <param name="Site">Where the plant stands and which clock its people live by.</param>
/// <param name="Products">Chemical products in use, by id.</param>
/// <param name="Circuits">The circuits; each is one unit of state.</param>
public sealed record PlantPlan(SitePlan Site, ImmutableArray<ProductPlan> Products, ImmutableArray<CircuitPlan> Circuits);

/// <summary>The site.</summary>
/// <param name="Name">Shown at the top of every screen and sheet.</param>
/// <param name="TimeZone">IANA zone such as Europe/London: it decides what "a day" and "07:30" mean.</param>
public sealed record SitePlan(string Name, string TimeZone);

/// <summary>A chemical product at hand.</summary>
/// <param name="Id">Key in the plant file.</param>
/// <param name="Name">As on the drum.</param>
/// <param name="Kind">What it is chemically.</param>
/// <param name="Strength">Strength in per cent as the label gives it; null when unknown.</param>
public sealed record ProductPlan(string Id, string Name, ProductKind Kind, double? Strength);

/// <summary>Chemical products a plant doses.</summary>
public enum ProductKind
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Liquid sodium hypochlorite.</summary>
    SodiumHypochlorite,
    /// <summary>Calcium hypochlorite.</summary>
    CalciumHypochlorite,
    /// <summary>Sodium dichloroisocyanurate.</summary>
    Dichlor,
    /// <summary>Trichloroisocyanuric acid.</summary>
    Trichlor,
    /// <summary>Hydrochloric acid.</summary>
    HydrochloricAcid,
    /// <summary>Sulfuric acid.</summary>
    SulfuricAcid,
    /// <summary>Sodium bisulfate.</summary>
    SodiumBisulfate,
    /// <summary>Carbon dioxide.</summary>
    CarbonDioxide,
    /// <summary>Sodium bicarbonate.</summary>
    SodiumBicarbonate,
    /// <summary>Sodium carbonate.</summary>
    SodiumCarbonate,
    /// <summary>Calcium chloride.</summary>
    CalciumChloride,
    /// <summary>A bromine product.</summary>
    Bromine,
    /// <summary>Coagulant.</summary>
    Coagulant,
}

/// <summary>The pools that share treatment, with their balance tank, filters, probes and pumps: the unit of state, journal and storage.</summary>
public sealed record CircuitPlan
{
    /// <summary>Stable key, also the partition key of storage.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Former id when this circuit was renamed; its history follows.</summary>
    public string? Was { get; init; }

    /// <summary>IANA time zone of the site.</summary>
    public required string TimeZone { get; init; }

    /// <summary>Volume of the balance tank in m3; null when there is none or it is not known.</summary>
    public double? BalanceTankCubicMetres { get; init; }

    /// <summary>Design turnover period in hours.</summary>
    public double? TurnoverHours { get; init; }

    /// <summary>Filters of the circuit.</summary>
    public ImmutableArray<FilterPlan> Filters { get; init; } = [];

    /// <summary>Pools served by the circuit.</summary>
    public ImmutableArray<PoolPlan> Pools { get; init; } = [];

    /// <summary>Probes; their order is the order of <see cref="CircuitState.Probes"/>.</summary>
    public ImmutableArray<ProbePlan> Probes { get; init; } = [];

    /// <summary>Dosing pumps; their order is the order of <see cref="CircuitState.Pumps"/>.</summary>
    public ImmutableArray<PumpPlan> Pumps { get; init; } = [];

    /// <summary>The plan of a partition that holds nothing: what arrives on a topic that no circuit claims is refused there, and kept.</summary>
    public static CircuitPlan Nowhere { get; } = new() { Id = "unclaimed", Name = "Topics that no circuit claims", TimeZone = "UTC" };
}

/// <summary>A filter.</summary>
/// <param name="Id">Key in the plant file.</param>
/// <param name="Name">What people call it.</param>
/// <param name="AreaSquareMetres">Filter area in m2.</param>
public sealed record FilterPlan(string Id, string Name, double? AreaSquareMetres);

/// <summary>What a pool is for; decides which advice and limits make sense.</summary>
public enum PoolKind
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Public swimming pool.</summary>
    Swimming,
    /// <summary>Teaching or learner pool.</summary>
    Teaching,
    /// <summary>Leisure pool with features.</summary>
    Leisure,
    /// <summary>Hydrotherapy pool.</summary>
    Therapy,
    /// <summary>Spa or hot tub.</summary>
    Spa,
    /// <summary>Plunge pool.</summary>
    Plunge,
    /// <summary>Paddling pool or splash pad.</summary>
    Paddling,
}

/// <summary>Where the pool lies.</summary>
public enum Setting
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Under a roof.</summary>
    Indoor,
    /// <summary>In the open.</summary>
    Outdoor,
}

/// <summary>The residual disinfectant.</summary>
public enum Disinfectant
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Chlorine without stabiliser.</summary>
    Chlorine,
    /// <summary>Chlorine with cyanuric acid.</summary>
    StabilisedChlorine,
    /// <summary>Chlorine made from salt in the water.</summary>
    SaltElectrolysis,
    /// <summary>Bromine.</summary>
    Bromine,
}

/// <summary>A second treatment beside the residual disinfectant.</summary>
public enum SecondaryTreatment
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary>Ultraviolet.</summary>
    Uv,
    /// <summary>Ozone.</summary>
    Ozone,
}

/// <summary>One pool.</summary>
public sealed record PoolPlan
{
    /// <summary>Stable key.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Former id when it was renamed.</summary>
    public string? Was { get; init; }

    /// <summary>What it is for.</summary>
    public PoolKind Kind { get; init; }

    /// <summary>Indoor or outdoor.</summary>
    public Setting Setting { get; init; }

    /// <summary>Residual disinfectant.</summary>
    public Disinfectant Disinfectant { get; init; }

    /// <summary>Second treatments.</summary>
    public ImmutableArray<SecondaryTreatment> Secondary { get; init; } = [];

    /// <summary>Water volume in m3.</summary>
    public double VolumeCubicMetres { get; init; }

    /// <summary>Limits the plant has set for this pool.</summary>
    public ImmutableArray<LimitPlan> Limits { get; init; } = [];

    /// <summary>Manual checks that are due by the clock.</summary>
    public ImmutableArray<CheckDuty> Duties { get; init; } = [];
}

/// <summary>A limit on one measurand of a pool. At least one end is set.</summary>
/// <param name="Measurand">What is limited.</param>
/// <param name="Low">Lowest acceptable value.</param>
/// <param name="High">Highest acceptable value.</param>
/// <param name="Source">Document and clause the plant took it from.</param>
/// <param name="ReferenceElectrode">Reference electrode that an ORP limit is against; null for every other measurand.</param>
public sealed record LimitPlan(Measurand Measurand, double? Low, double? High, string Source, string? ReferenceElectrode = null);

/// <summary>Manual checks due at set times of the site's day.</summary>
/// <param name="What">What is tested.</param>
/// <param name="At">Times of day on the site's clock, in order.</param>
public sealed record CheckDuty(ImmutableArray<Measurand> What, ImmutableArray<TimeOnly> At);

/// <summary>Whose calibration a probe's number carries.</summary>
public enum SignalOrigin
{
    /// <summary>The probe's own signal; PlantWatch may hold a calibration for it.</summary>
    Raw = 0,
    /// <summary>What the plant's controller shows and doses by; a correction belongs on the panel, never here as well.</summary>
    PanelScaled,
}

/// <summary>How a topic's payload is read.</summary>
public enum PayloadFormat
{
    /// <summary>A plain decimal number as text.</summary>
    Number = 0,
    /// <summary>SenML JSON (RFC 8428).</summary>
    SenmlJson,
}

/// <summary>One inline probe.</summary>
public sealed record ProbePlan
{
    /// <summary>Stable key, unique in the plant; also the series key.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Former id when it was renamed; its history follows.</summary>
    public string? Was { get; init; }

    /// <summary>The pool whose water it sees; null when it sees the mixed return of the circuit.</summary>
    public string? PoolId { get; init; }

    /// <summary>What it measures.</summary>
    public required Measurand Measurand { get; init; }

    /// <summary>Raw or as scaled by the plant's panel.</summary>
    public SignalOrigin Origin { get; init; }

    /// <summary>MQTT topic.</summary>
    public required string Topic { get; init; }

    /// <summary>How the payload is read.</summary>
    public PayloadFormat Format { get; init; }

    /// <summary>The resolved SenML record name that is this probe's; null for a plain number.</summary>
    public string? RecordName { get; init; }

    /// <summary>Unit of the incoming number, one of <see cref="Readings.Units"/>; null means the measurand's own unit.</summary>
    public string? Unit { get; init; }

    /// <summary>Physical range of the instrument in the measurand's own unit; outside it a number is refused and kept.</summary>
    public required ValueRange Range { get; init; }

    /// <summary>How often a reading is expected.</summary>
    public TimeSpan Every { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>Time the water takes from the pool to the sample cell.</summary>
    public TimeSpan SampleDelay { get; init; }

    /// <summary>Reference electrode of an ORP probe, such as "Ag/AgCl 3 M"; an ORP figure without it is incomplete.</summary>
    public string? ReferenceElectrode { get; init; }

    /// <summary>The flow switch that guards this probe's sample cell; null when it has none.</summary>
    public string? FlowSwitchId { get; init; }
}

/// <summary>A dosing pump.</summary>
public sealed record PumpPlan
{
    /// <summary>Stable key, unique in the plant.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Former id when it was renamed.</summary>
    public string? Was { get; init; }

    /// <summary>The pool it doses; null when it doses the common return.</summary>
    public string? PoolId { get; init; }

    /// <summary>The product it delivers.</summary>
    public required string ProductId { get; init; }

    /// <summary>Topic of its state: the words stopped, running, fault, or the codes 0, 1, 2.</summary>
    public required string StateTopic { get; init; }

    /// <summary>Topic of its tank level in per cent; null when not measured.</summary>
    public string? TankTopic { get; init; }

    /// <summary>Content of the full tank in litres.</summary>
    public double? TankLitres { get; init; }

    /// <summary>Tank level in per cent under which it is time to refill.</summary>
    public double TankLowPercent { get; init; } = 15;

    /// <summary>Series key of the state.</summary>
    public string StateSeries => Id + "/state";

    /// <summary>Series key of the tank level.</summary>
    public string TankSeries => Id + "/tank";
}
