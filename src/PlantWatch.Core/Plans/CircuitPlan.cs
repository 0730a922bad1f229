using System.Collections.Immutable;
using System.Text.Json.Serialization;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plans.Telling;

namespace PlantWatch.Core.Plans;

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

    /// <summary>Who confirmed that the balance tank is as stated, or that there is none; null when nobody did.</summary>
    public VolumeConfirmation? BalanceTankConfirmed { get; init; }

    /// <summary>Design turnover period in hours.</summary>
    public double? TurnoverHours { get; init; }

    /// <summary>Circulation in m3/h under which it is low, where the plant file names it; null leaves it to <see cref="CirculationLow"/>.</summary>
    public double? CirculationLowStated { get; init; }

    /// <summary>Water of the pools in m3, without the balance tank: what a turnover time is of (common practice).</summary>
    [JsonIgnore]
    public double PoolCubicMetres => Pools.Sum(p => p.VolumeCubicMetres);

    /// <summary>Circulation in m3/h that the turnover time asks for: the water of the pools by its hours; null when no turnover time is stated.</summary>
    [JsonIgnore]
    public double? DesignFlow => TurnoverHours is > 0 and var hours ? PoolCubicMetres / hours : null;

    /// <summary>Circulation in m3/h under which it is low: as stated, else three quarters of the design flow (common practice); null when neither is known.</summary>
    [JsonIgnore]
    public double? CirculationLow => CirculationLowStated ?? (0.75 * DesignFlow);

    /// <summary>Area of all the beds in m2; null when there is none, or one is not stated.</summary>
    [JsonIgnore]
    public double? FilterArea => Filters.Where(f => f.Kind == FilterKind.Media).ToArray() is { Length: > 0 } beds && beds.All(f => f.AreaSquareMetres is not null)
        ? beds.Sum(f => f.AreaSquareMetres!.Value) : null;

    /// <summary>Circulation in m3/h under which the water stands: a tenth of what is low, half a cubic metre where nothing is known (common practice; flow meters creep about nil).</summary>
    [JsonIgnore]
    public double CirculationLost => CirculationLow is > 0 and var low ? 0.1 * low : 0.5;

    /// <summary>Filters of the circuit.</summary>
    public ImmutableArray<FilterPlan> Filters { get; init; } = [];

    /// <summary>Work that comes round.</summary>
    public ImmutableArray<TaskPlan> Tasks { get; init; } = [];

    /// <summary>The limit pack that the plant has picked, whole; null when it has picked none and only its own limits hold.</summary>
    public LimitPack? Pack { get; init; }

    /// <summary>The people of the plant.</summary>
    public ImmutableArray<PersonPlan> People { get; init; } = [];

    /// <summary>How the people of the plant are told of alarms outside the browser.</summary>
    public TellingPlan Telling { get; init; } = TellingPlan.None;

    /// <summary>The stops that the plant has edited; the others hold as usual.</summary>
    public ImmutableArray<StopPlan> Stops { get; init; } = [];

    /// <summary>The reagents that the plant tests with.</summary>
    public ImmutableArray<ReagentPlan> Reagents { get; init; } = [];

    /// <summary>The instruments that the plant tests with.</summary>
    public ImmutableArray<InstrumentPlan> Instruments { get; init; } = [];

    /// <summary>The daily round through the plant room as the plant file names it; null leaves it to what the plan knows.</summary>
    public RoundPlan? Round { get; init; }

    /// <summary>The round as it is walked.</summary>
    [JsonIgnore]
    public RoundPlan RoundInForce => Round ?? RoundPlan.UsualOf(this);

    /// <summary>The products of the plant; none in plans read before they were kept here.</summary>
    public ImmutableArray<ProductPlan> Products { get; init; } = [];

    /// <summary>Pools served by the circuit.</summary>
    public ImmutableArray<PoolPlan> Pools { get; init; } = [];

    /// <summary>Probes; their order is the order of the circuit's state.</summary>
    public ImmutableArray<ProbePlan> Probes { get; init; } = [];

    /// <summary>Dosing pumps; their order is the order of the circuit's state.</summary>
    public ImmutableArray<PumpPlan> Pumps { get; init; } = [];

    /// <summary>The plan of a partition that holds nothing: what arrives on a topic that no circuit claims is refused there, and kept.</summary>
    public static CircuitPlan Nowhere { get; } = new() { Id = "unclaimed", Name = "Topics that no circuit claims", TimeZone = "UTC" };
}
