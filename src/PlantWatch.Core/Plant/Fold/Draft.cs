using System.Collections.Immutable;
using System.Runtime.InteropServices;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Stock;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A circuit's state while a batch is folded: mutable inside, never seen outside. Sealing it gives the next state.</summary>
internal sealed class Draft
{
    private readonly CircuitState _before;
    private readonly HashSet<int> _mine = [];
    private long _serial;
    private ImmutableArray<Refusal>.Builder? _refusals;
    private ImmutableArray<RecordEntry>.Builder? _entries;
    private ImmutableArray<SeriesRenamed>.Builder? _renamed;
    private List<TestFinding>? _findings;

    /// <param name="before">The circuit before.</param>
    /// <param name="events">How many events come: readings are about as many.</param>
    public Draft(CircuitState before, int events)
    {
        _before = before;
        _serial = before.Serial;
        Plan = before.Plan;
        Readings = ImmutableArray.CreateBuilder<Reading>(events);
        // Before its plan was loaded a circuit has no place for anything: nothing is claimed, and what arrives is refused and kept.
        Index = PlanIndex.Of(before.IsLoaded ? Plan : CircuitPlan.Nowhere);
        Watermark = before.Watermark;
        ListeningSince = before.ListeningSince;
        Sums = new LedgerSums(before.Ledger);
        Probes = [.. before.Probes];
        Pumps = [.. before.Pumps];
        Pools = [.. before.Pools];
        Dosing = [.. before.Dosing];
        Filters = before.Filters;
        Flow = before.Flow;
        Handover = before.Handover;
        Reagents = before.Reagents;
        Instruments = before.Instruments;
        Round = before.Round;
        Jobs = before.Jobs;
        Tasks = before.Tasks;
        Tanks = before.Tanks;
        Stores = before.Stores;
        Moves = before.Moves;
        Bathers = before.Bathers;
        Notes = before.Notes;
        Doses = before.Doses;
        KnownDoses = before.KnownDoses;
        KnownLabResults = before.KnownLabResults;
        Incidents = before.Incidents;
        ClosedIncidents = before.ClosedIncidents;
        Calibrations = new CalibrationShelf(before.Calibrations, Plan);
        Corrections = before.Corrections;
        Confirmations = before.Confirmations;
        Packets = new PacketBook(before.Packets);
        KnownChecks = before.KnownChecks;
        Alarms = new AlarmDesk(before.Alarms, this);
        Exceptions = new ExceptionDesk(before.Exceptions, before.ClosedExceptions, this);
    }

    /// <summary>How many ids were given out.</summary>
    public long Serial => _serial;

    public CircuitPlan Plan { get; private set; }
    public PlanIndex Index { get; private set; }
    public Instant Watermark { get; set; }
    public Instant ListeningSince { get; set; }
    public LedgerSums Sums { get; }
    public ProbeState[] Probes { get; private set; }
    public PumpState[] Pumps { get; private set; }
    public PoolState[] Pools { get; private set; }
    public DosingWatch[] Dosing { get; private set; }
    public ImmutableArray<FilterState> Filters { get; set; }
    public FlowHour Flow { get; set; }
    public HandoverStanding Handover { get; set; }
    public ImmutableArray<ReagentState> Reagents { get; set; }
    public ImmutableArray<InstrumentState> Instruments { get; set; }
    public RoundStanding Round { get; set; }
    public AlarmDesk Alarms { get; }
    public ExceptionDesk Exceptions { get; }
    public ImmutableSortedDictionary<Guid, JobWatch> Jobs { get; set; }
    public ImmutableArray<TaskState> Tasks { get; set; }
    public ImmutableArray<TankState> Tanks { get; set; }
    public ImmutableArray<StoreState> Stores { get; set; }
    public ImmutableArray<StockMove> Moves { get; set; }
    public ImmutableArray<BatherCount> Bathers { get; set; }

    public ImmutableArray<SpanNote> Notes { get; set; }
    public ImmutableArray<GivenDose> Doses { get; set; }
    public ImmutableArray<KnownCheck> KnownDoses { get; set; }
    public ImmutableArray<KnownCheck> KnownLabResults { get; set; }
    public ImmutableSortedDictionary<Guid, Incident> Incidents { get; set; }
    public ImmutableArray<Guid> ClosedIncidents { get; set; }
    public CalibrationShelf Calibrations { get; private set; }
    public ImmutableArray<RecordCorrection> Corrections { get; set; }
    public ImmutableArray<RowConfirmation> Confirmations { get; set; }
    public PacketBook Packets { get; }
    public ImmutableArray<KnownCheck> KnownChecks { get; set; }

    // Most batches have none of the last three: what they are built in is made when there is one.
    public ImmutableArray<Reading>.Builder Readings { get; }
    public ImmutableArray<Refusal>.Builder Refusals => _refusals ??= ImmutableArray.CreateBuilder<Refusal>();
    public ImmutableArray<RecordEntry>.Builder Entries => _entries ??= ImmutableArray.CreateBuilder<RecordEntry>();
    public ImmutableArray<SeriesRenamed>.Builder Renamed => _renamed ??= ImmutableArray.CreateBuilder<SeriesRenamed>();

    /// <summary>How many rows of the record there are so far.</summary>
    public int EntryCount => _entries?.Count ?? 0;

    /// <summary>What tests said of limits in this event.</summary>
    public List<TestFinding> Findings => _findings ??= [];

    /// <summary>Tests said something of limits in this event.</summary>
    public bool HasFindings => _findings is { Count: > 0 };

    /// <summary>An id that a replay gives again: it counts within the circuit, and nothing global.</summary>
    public Guid NewId(Instant at) => TimeOrderedId.Derive(at, $"{Plan.Id}/{++_serial}");

    public void Write(Instant at, Instant happenedAt, string subject, EntryBody body) =>
        Entries.Add(new RecordEntry(NewId(at), at, happenedAt, subject, body));

    public void Refuse(Instant at, string topic, ReadOnlyMemory<byte> payload, RefusalReason reason, string detail)
    {
        Sums.Refused++;
        Refusals.Add(new Refusal(NewId(at), at, topic, payload, reason, detail));
    }

    /// <summary>The operating limit on what a probe measures in its pool, as it holds now; null where there is none.</summary>
    public LimitBound? OperatingLimit(int probe) =>
        Index.PoolOf[probe] is >= 0 and var pool ? Pools[pool].Limits.Find(Index.Limiting[probe], RowGrade.Operating) : null;

    /// <summary>Takes over a state that was carried to another plan.</summary>
    public void Adopt(CircuitState carried, Instant at)
    {
        Plan = carried.Plan;
        Index = PlanIndex.Of(Plan);
        Probes = [.. carried.Probes];
        Pumps = [.. carried.Pumps];
        Pools = [.. carried.Pools];
        Dosing = [.. carried.Dosing];
        _mine.Clear();
        Filters = carried.Filters;
        Flow = carried.Flow;
        Reagents = carried.Reagents;
        Instruments = carried.Instruments;
        Jobs = carried.Jobs;
        Tasks = carried.Tasks;
        Tanks = carried.Tanks;
        Stores = carried.Stores;
        Moves = carried.Moves;
        Bathers = carried.Bathers;
        Notes = carried.Notes;
        Doses = carried.Doses;
        Incidents = carried.Incidents;
        Calibrations = new CalibrationShelf(carried.Calibrations, Plan);
        Corrections = carried.Corrections;
        Exceptions.Adopt(carried.Exceptions, carried.ClosedExceptions);
        Alarms.Adopt(carried.Alarms, at);
    }

    /// <summary>The state as it stands now, for a pure function that wants a whole one.</summary>
    public CircuitState Seal()
    {
        _mine.Clear();
        return With([.. Probes], [.. Pumps], [.. Pools], [.. Dosing]);
    }

    /// <summary>The supervisor of a water, to be told more: a copy of the state's, made once a batch.</summary>
    public PoolSupervisor Supervisor(int water)
    {
        if (_mine.Add(water)) Dosing[water] = Dosing[water] with { Supervisor = Dosing[water].Supervisor!.Copy() };
        return Dosing[water].Supervisor!;
    }

    /// <summary>The state at the end and all that came of the batch. The draft must not be touched afterwards: its own places are the state's.</summary>
    public StepResult Close(Outcome[] outcomes) => new(
        Closed(), Readings.DrainToImmutable(), _refusals?.DrainToImmutable() ?? [], _entries?.DrainToImmutable() ?? [], _renamed?.DrainToImmutable() ?? [],
        ImmutableCollectionsMarshal.AsImmutableArray(outcomes));

    private CircuitState Closed() => With(
        ImmutableCollectionsMarshal.AsImmutableArray(Probes), ImmutableCollectionsMarshal.AsImmutableArray(Pumps), ImmutableCollectionsMarshal.AsImmutableArray(Pools),
        ImmutableCollectionsMarshal.AsImmutableArray(Dosing));

    private CircuitState With(ImmutableArray<ProbeState> probes, ImmutableArray<PumpState> pumps, ImmutableArray<PoolState> pools, ImmutableArray<DosingWatch> dosing) => _before with
    {
        FoldVersion = CircuitState.CurrentFoldVersion,
        Plan = Plan,
        Serial = _serial,
        Watermark = Watermark,
        ListeningSince = ListeningSince,
        Ledger = Sums.Seal(),
        Probes = probes,
        Pumps = pumps,
        Pools = pools,
        Dosing = dosing,
        Alarms = Alarms.Result,
        Exceptions = Exceptions.Open,
        ClosedExceptions = Exceptions.Closed,
        Filters = Filters,
        Flow = Flow,
        Handover = Handover,
        Reagents = Reagents,
        Instruments = Instruments,
        Round = Round,
        Jobs = Jobs,
        Tasks = Tasks,
        Tanks = Tanks,
        Stores = Stores,
        Moves = Moves,
        Bathers = Bathers,
        Notes = Notes,
        Doses = Doses,
        KnownDoses = KnownDoses,
        KnownLabResults = KnownLabResults,
        Incidents = Incidents,
        ClosedIncidents = ClosedIncidents,
        Calibrations = Calibrations.All,
        Corrections = Corrections,
        Confirmations = Confirmations,
        Packets = Packets.Seal(),
        KnownChecks = KnownChecks,
    };
}

/// <summary>The ledger while a batch is folded.</summary>
internal sealed class LedgerSums(Ledger before)
{
    public long Messages = before.Messages;
    public long Received = before.Received;
    public long ByDeviceTime = before.StoredByDeviceTime;
    public long ByPacket = before.StoredByPacket;
    public long AtLeastOnce = before.StoredAtLeastOnce;
    public long Duplicates = before.Duplicates;
    public long Refused = before.Refused;

    public Ledger Seal() => new()
    {
        Messages = Messages,
        Received = Received,
        StoredByDeviceTime = ByDeviceTime,
        StoredByPacket = ByPacket,
        StoredAtLeastOnce = AtLeastOnce,
        Duplicates = Duplicates,
        Refused = Refused,
    };
}
