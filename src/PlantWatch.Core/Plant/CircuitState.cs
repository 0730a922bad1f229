using System.Collections.Immutable;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Stock;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Plant;

/// <summary>All that PlantWatch knows of one circuit now. Immutable, serialisable, refers to nothing outside itself.</summary>
public sealed record CircuitState
{
    /// <summary>Version of the fold that made it; a snapshot of another version is not trusted but rebuilt from the journal.</summary>
    public const int CurrentFoldVersion = 15;

    /// <summary>Version of the fold that made it.</summary>
    public int FoldVersion { get; init; } = CurrentFoldVersion;

    /// <summary>The circuit as the plant file describes it.</summary>
    public required CircuitPlan Plan { get; init; }

    /// <summary>Accepted sample time, clamped to receive time and moved on by ticks: timers run on this.</summary>
    public Instant Watermark { get; init; }

    /// <summary>Since when time went on without a gap: while nobody listened no probe was silent.</summary>
    public Instant ListeningSince { get; init; }

    /// <summary>Counts the ids given out, so that a replay gives the same ones.</summary>
    public long Serial { get; init; }

    /// <summary>The closing sums.</summary>
    public Ledger Ledger { get; init; } = new();

    /// <summary>Probes in the order of the plan.</summary>
    public ImmutableArray<ProbeState> Probes { get; init; } = [];

    /// <summary>Pumps in the order of the plan.</summary>
    public ImmutableArray<PumpState> Pumps { get; init; } = [];

    /// <summary>Supervision of dosing pumps, in the order of the waters that the plan lets supervise.</summary>
    public ImmutableArray<DosingWatch> Dosing { get; init; } = [];

    /// <summary>Pools in the order of the plan.</summary>
    public ImmutableArray<PoolState> Pools { get; init; } = [];

    /// <summary>Filters in the order of the plan.</summary>
    public ImmutableArray<FilterState> Filters { get; init; } = [];

    /// <summary>The circulation hour by hour.</summary>
    public FlowHour Flow { get; init; }

    /// <summary>How the handover between two shifts stands.</summary>
    public HandoverStanding Handover { get; init; }

    /// <summary>Reagents in the order of the plan.</summary>
    public ImmutableArray<ReagentState> Reagents { get; init; } = [];

    /// <summary>Instruments in the order of the plan.</summary>
    public ImmutableArray<InstrumentState> Instruments { get; init; } = [];

    /// <summary>How the rounds through the plant room stand.</summary>
    public RoundStanding Round { get; init; } = RoundStanding.None;

    /// <summary>Alarms that are not simply normal, or are pending, by key.</summary>
    public ImmutableSortedDictionary<string, AlarmRecord> Alarms
    {
        get;
        // Whoever made it: read from a snapshot it would sort by the culture of the machine, and the hash with it.
        init => field = value.WithComparers(StringComparer.Ordinal);
    } = ImmutableSortedDictionary<string, AlarmRecord>.Empty.WithComparers(StringComparer.Ordinal);

    /// <summary>Breaches that are open, oldest first by when they became known.</summary>
    public ImmutableArray<ExceptionLine> Exceptions { get; init; } = [];

    /// <summary>The breaches that were closed last: what closed them may yet be corrected.</summary>
    public ImmutableArray<ExceptionLine> ClosedExceptions { get; init; } = [];

    /// <summary>Jobs that are not over, by id.</summary>
    public ImmutableSortedDictionary<Guid, JobWatch> Jobs { get; init; } = ImmutableSortedDictionary<Guid, JobWatch>.Empty;

    /// <summary>Planned tasks in the order of the plan.</summary>
    public ImmutableArray<TaskState> Tasks { get; init; } = [];

    /// <summary>Doses given that wait for a retest of a figure they move, oldest first.</summary>
    public ImmutableArray<GivenDose> Doses { get; init; } = [];

    /// <summary>Ids and content hashes of recent doses, so that sending one twice is harmless.</summary>
    public ImmutableArray<KnownCheck> KnownDoses { get; init; } = [];

    /// <summary>Ids and content hashes of recent laboratory results, so that sending one twice is harmless.</summary>
    public ImmutableArray<KnownCheck> KnownLabResults { get; init; } = [];

    /// <summary>Tanks of the pumps, in the order of the plan.</summary>
    public ImmutableArray<TankState> Tanks { get; init; } = [];

    /// <summary>What is known here of the products in the store, in the order in which they were first met.</summary>
    public ImmutableArray<StoreState> Stores { get; init; } = [];

    /// <summary>Recent rows of the stock book, oldest first: sending one twice is harmless, and one can be corrected.</summary>
    public ImmutableArray<StockMove> Moves { get; init; } = [];

    /// <summary>Recent counts of bathers, oldest first.</summary>
    public ImmutableArray<BatherCount> Bathers { get; init; } = [];

    /// <summary>Recent notes about spans of time, oldest first: sending one twice is harmless, and one is corrected once.</summary>
    public ImmutableArray<SpanNote> Notes { get; init; } = [];

    /// <summary>Incidents that are open, by id.</summary>
    public ImmutableSortedDictionary<Guid, Incident> Incidents { get; init; } = ImmutableSortedDictionary<Guid, Incident>.Empty;

    /// <summary>Ids of the incidents that were closed last, so that sending one again opens nothing anew.</summary>
    public ImmutableArray<Guid> ClosedIncidents { get; init; } = [];

    /// <summary>Calibrations: proposals waiting, and for each probe those that held or hold.</summary>
    public ImmutableArray<Calibration> Calibrations { get; init; } = [];

    /// <summary>Corrections of the record, also those withdrawn: a layer that nothing of the live path reads.</summary>
    public ImmutableArray<RecordCorrection> Corrections { get; init; } = [];

    /// <summary>Rows of the picked pack that a person has confirmed.</summary>
    public ImmutableArray<RowConfirmation> Confirmations { get; init; } = [];

    /// <summary>Recent packets, to tell a redelivery from a new reading.</summary>
    public PacketMemory Packets { get; init; } = PacketMemory.Empty;

    /// <summary>Ids and content hashes of recent checks, so that sending one twice is harmless.</summary>
    public ImmutableArray<KnownCheck> KnownChecks { get; init; } = [];

    /// <summary>False until the plan came into force by its event: then there is a state for each thing of the plan.</summary>
    internal bool IsLoaded => Probes.Length == Plan.Probes.Length && Pumps.Length == Plan.Pumps.Length && Pools.Length == Plan.Pools.Length;

    /// <summary>The empty state of a circuit before its plan was loaded.</summary>
    public static CircuitState Of(CircuitPlan plan) => new() { Plan = plan };
}

/// <summary>What is known of one probe.</summary>
public sealed record ProbeState
{
    /// <summary>The probe's id.</summary>
    public required string Id { get; init; }

    /// <summary>Newest reading; quality not received before the first.</summary>
    public LastReading Last { get; init; }

    /// <summary>Since when it is expected: when the plan that names it, or names what it measures now, came into force.</summary>
    public Instant ExpectedSince { get; init; }

    /// <summary>What the signal alone says.</summary>
    public SignalHealth Signal { get; init; } = SignalHealth.New;

    /// <summary>What the checks say.</summary>
    public ProbeTrust Trust { get; init; } = ProbeTrust.New;

    /// <summary>How its value went of late.</summary>
    public ValueTrail Trail { get; init; }

    /// <summary>The newest time in which a person worked on it.</summary>
    public WorkWindow Work { get; init; }
}

/// <summary>The newest reading of a series.</summary>
/// <param name="MeasuredAt">Its time.</param>
/// <param name="ReceivedAt">When it came.</param>
/// <param name="Raw">Raw number.</param>
/// <param name="Value">Corrected number.</param>
/// <param name="Quality">Facts about it.</param>
public readonly record struct LastReading(Instant MeasuredAt, Instant ReceivedAt, double Raw, double Value, Quality Quality);

/// <summary>What is known of one dosing pump.</summary>
public sealed record PumpState
{
    /// <summary>The pump's id.</summary>
    public required string Id { get; init; }

    /// <summary>What it last said it does.</summary>
    public PumpActivity Activity { get; init; }

    /// <summary>Since when.</summary>
    public Instant Since { get; init; }

    /// <summary>Newest state message.</summary>
    public Instant HeardAt { get; init; }

    /// <summary>How much it ran, of late and usually.</summary>
    public PumpRun Run { get; init; }

    /// <summary>Tank level in per cent; quality not received before the first.</summary>
    public LastReading Tank { get; init; }

    /// <summary>Strokes as they were last heard; quality not received before the first.</summary>
    public LastReading Strokes { get; init; }

    /// <summary>Since when the water that it doses into is known to stand; never while it flows, or nothing tells.</summary>
    public Instant StandsSince { get; init; }

    /// <summary>By the strokes that it last told it doses into that standing water.</summary>
    public bool StrokesStanding { get; init; }

    /// <summary>What it was driven to deliver today.</summary>
    public DayDose Today { get; init; }
}
