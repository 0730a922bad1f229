using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

// The shapes that leave and enter the server under /api/v1 and on the live hub. Names are camelCase, enums snake_case,
// times ISO 8601 in UTC. Reasons arrive as sentences: the words stand in Words/en.

/// <summary>A sentence with the code it was made from.</summary>
/// <param name="Code">Stable key.</param>
/// <param name="Text">The sentence.</param>
public sealed record Said(string Code, string Text);

/// <summary>A remark beside a field.</summary>
/// <param name="Field">JSON path, such as <c>results[1].value</c>.</param>
/// <param name="Code">Stable key.</param>
/// <param name="Text">The sentence.</param>
public sealed record FieldSaid(string Field, string Code, string Text);

/// <summary>A value with its expanded uncertainty.</summary>
/// <param name="Value">Best value.</param>
/// <param name="U">Expanded uncertainty, k = 2.</param>
public sealed record WithU(double Value, double U);

// ---- GET /api/v1/site : what changes only with the plant file

/// <summary>The plant as the screens need it. Units are those its people measure out in; figures under /api/v1 are in SI whatever they are.</summary>
public sealed record SiteView(string Name, string TimeZone, UnitSystem Units, IReadOnlyList<CircuitInfo> Circuits, IReadOnlyList<ProductPlan> Products);

/// <summary>A circuit's fixed facts.</summary>
public sealed record CircuitInfo(
    string Id, string Name, double? BalanceTankM3, double? TurnoverHours,
    IReadOnlyList<PoolInfo> Pools, IReadOnlyList<ProbeInfo> Probes, IReadOnlyList<PumpInfo> Pumps);

/// <summary>A pool's fixed facts.</summary>
public sealed record PoolInfo(
    string Id, string Name, PoolKind Kind, Setting Setting, Disinfectant Disinfectant, IReadOnlyList<SecondaryTreatment> Secondary,
    double VolumeM3, IReadOnlyList<LimitPlan> Limits, IReadOnlyList<CheckDuty> Duties);

/// <summary>A probe's fixed facts.</summary>
public sealed record ProbeInfo(
    string Id, string Name, string? PoolId, Measurand Measurand, string Unit, int Decimals, SignalOrigin Origin, double RangeLow, double RangeHigh,
    double EverySeconds, string? ReferenceElectrode);

/// <summary>A pump's fixed facts.</summary>
public sealed record PumpInfo(string Id, string Name, string? PoolId, string ProductId, string ProductName, double? TankLitres, double TankLowPercent, string StateSeries, string? TankSeries);

// ---- hub /live, message "circuit" (on connect for each circuit, then whenever it changed, at most twice a second);
//      also GET /api/v1/circuits/{id}

/// <summary>All that is live of a circuit.</summary>
/// <param name="Id">Circuit.</param>
/// <param name="Version">Rises with every change; a lower one is stale.</param>
/// <param name="At">Server time of the view.</param>
public sealed record CircuitView(
    string Id, long Version, Instant At,
    IReadOnlyList<PoolView> Pools, IReadOnlyList<ProbeView> Probes, IReadOnlyList<PumpView> Pumps,
    IReadOnlyList<AlarmView> Alarms, IReadOnlyList<JobView> Jobs, IReadOnlyList<CalibrationView> Proposals, LedgerView Ledger);

/// <summary>A pool now.</summary>
/// <param name="Id">Pool.</param>
/// <param name="State">One word for the worst that holds: normal, due, attention, alarm, stop, unknown.</param>
/// <param name="Why">The sentences behind the word, worst first.</param>
/// <param name="Manual">Newest manual results with their age.</param>
/// <param name="Combined">Combined chlorine of the newest check that has free and total.</param>
/// <param name="Balance">Saturation index from live pH and temperature with the latest manual values; or what is missing.</param>
/// <param name="HoclShare">Share of free chlorine present as HOCl, 0 to 1, at the live pH and temperature; null when not known or not meaningful.</param>
/// <param name="Due">Checks that are due or overdue.</param>
/// <param name="BottomVisible">At the last look.</param>
/// <param name="Bathers">At the last count.</param>
/// <param name="Incidents">Open contamination incidents, oldest first, with their clocks.</param>
public sealed record PoolView(
    string Id, PoolWord State, IReadOnlyList<Said> Why, IReadOnlyList<ManualView> Manual, CombinedView? Combined, BalanceView Balance,
    double? HoclShare, IReadOnlyList<DueView> Due, bool? BottomVisible, int? Bathers, IReadOnlyList<IncidentView> Incidents,
    PoolLimitsView Limits, OperationView Operation);

/// <summary>What can be said of a pool's limits.</summary>
/// <param name="Word">None, unconfirmed, own only, or in force.</param>
/// <param name="Unconfirmed">Rows of the picked pack that concern the pool and wait to be confirmed.</param>
/// <param name="Pack">The pack; null when none is picked.</param>
/// <param name="Bands">What the values of the pool are held against now, of the pack and of the plant, a measurand each.</param>
public sealed record PoolLimitsView(LimitsWord Word, int Unconfirmed, string? Pack, IReadOnlyList<LimitBand> Bands);

/// <summary>The ends a measurand has to lie within.</summary>
public sealed record LimitBand(Measurand Measurand, double? Low, double? High);

/// <summary>One word for a pool, worst last.</summary>
public enum PoolWord
{
    /// <summary>Nothing is known yet.</summary>
    Unknown = 0,
    /// <summary>In limits, probes trusted, nothing due.</summary>
    Normal,
    /// <summary>A check is due.</summary>
    Due,
    /// <summary>Something wants attention within the shift.</summary>
    Attention,
    /// <summary>An alarm stands.</summary>
    Alarm,
    /// <summary>A stop that always holds: bathers should not be in the water.</summary>
    Stop,
}

/// <summary>A manual result the pool remembers.</summary>
public sealed record ManualView(Measurand Measurand, double Value, double U, Censoring Censoring, TestMethod Method, Instant SampledAt, bool Suspect, Guid CheckId);

/// <summary>Combined chlorine, mg/L as Cl2.</summary>
/// <param name="Value">Total less free; null when the pair was rejected or means nothing in this water.</param>
/// <param name="U">Expanded uncertainty, k = 2.</param>
/// <param name="SampledAt">When the sample was taken.</param>
/// <param name="Remark">What has to be said of it.</param>
public sealed record CombinedView(double? Value, double U, Instant SampledAt, Said? Remark)
{
    /// <summary>What oxidising it would take, by the equation and by the rule of thumb, and what comes first instead. Empty when it cannot be told from none.</summary>
    public IReadOnlyList<Said> Breakpoint { get; init; } = [];
}

/// <summary>A check that is due.</summary>
/// <param name="PoolId">Where.</param>
/// <param name="What">What to test.</param>
/// <param name="DueAt">Since when, or from when.</param>
/// <param name="Overdue">True once the allowance has passed.</param>
public sealed record DueView(string PoolId, IReadOnlyList<Measurand> What, Instant DueAt, bool Overdue);

/// <summary>A probe now.</summary>
/// <param name="Id">Probe.</param>
/// <param name="At">Time of the newest reading; null before the first.</param>
/// <param name="Raw">As received.</param>
/// <param name="Value">Corrected.</param>
/// <param name="Good">It may be judged against limits.</param>
/// <param name="Stale">It has been silent for longer than it should.</param>
/// <param name="Standing">NE 107 category, the worse of signal and checks.</param>
/// <param name="Reasons">Why, in sentences.</param>
/// <param name="Bias">Reads less what it should; null before there is an estimate.</param>
/// <param name="Believed">Best present estimate of the water: value less bias; null when there is none.</param>
/// <param name="Verdict">Newest verdict.</param>
/// <param name="JudgedAt">Sample time of that check.</param>
/// <param name="Pairs">How many checks the estimate rests on.</param>
/// <param name="Calibration">The calibration in force.</param>
/// <param name="CalibrationDueAt">When the next calibration is due by the plant file; null for what is not calibrated. A date to plan by, never an alarm.</param>
/// <param name="CalibrationOverdue">True when that is past.</param>
/// <param name="Work">The newest time of work on it; null before the first.</param>
public sealed record ProbeView(
    string Id, Instant? At, double? Raw, double? Value, bool Good, bool Stale, Standing Standing, IReadOnlyList<Said> Reasons,
    WithU? Bias, WithU? Believed, Verdict Verdict, Instant? JudgedAt, int Pairs, CalibrationView? Calibration, Instant? CalibrationDueAt, bool CalibrationOverdue, WorkView? Work);

/// <summary>A pump now.</summary>
public sealed record PumpView(string Id, PumpActivity Activity, Instant? Since, Instant? HeardAt, double? TankPercent, Instant? TankAt, bool Stale);

/// <summary>An alarm.</summary>
public sealed record AlarmView(
    Guid Id, string Rule, string Subject, string? PoolId, Priority Priority, AlarmState State, bool Active, bool Acknowledged,
    string Title, string Cause, string Consequence, string Action, string TimeToRespond,
    Instant RaisedAt, Instant? ClearedAt, string? AcknowledgedBy, Instant? AcknowledgedAt, string? Comment, string? ShelvedBy, Instant? ShelvedUntil,
    string? ShelvedWhy, bool OneShot, bool Shelvable, bool Latches, bool LatchHeld, string? SuppressedBy,
    string? OutOfServiceBy, Instant? OutOfServiceAt, string? OutOfServiceWhy, Instant? OutOfServiceUntil, long Order, Guid? ConsequenceOf, int ReAlarms, bool Annunciates, Instant? AnnunciatedAt,
    bool MustBeMadeSafe, MadeSafeView? MadeSafe)
{
    /// <summary>What people call its subject: a channel, a filter, a reagent stand in no other view.</summary>
    public string SubjectName { get; init; } = "";

    /// <summary>A person may take it out of service: its rule allows it, and the plant file still names its subject.</summary>
    public bool MayLeaveService { get; init; }
}

/// <summary>A calibration.</summary>
public sealed record CalibrationView(
    Guid Id, string ProbeId, CalibrationKind Kind, CalibrationStatus Status, double Slope, double Offset, IReadOnlyList<Guid> Checks,
    string ProposedBy, Instant ProposedAt, string? Note, string? DecidedBy, Instant? DecidedAt, string? Decision, Instant? HoldsFrom,
    CalibrationBasis Basis, IReadOnlyList<ProbeWork> Work, SheetView? Sheet, bool WaitsForReview, string? ReviewedBy, Instant? ReviewedAt, string? Review, bool Objected);

/// <summary>The closing sums: received = stored + duplicates + refused + in flight.</summary>
public sealed record LedgerView(
    long Received, long Stored, long Duplicates, long Refused, long InFlight, long StoredByDeviceTime, long StoredByPacket, long StoredAtLeastOnce, long Messages);

// ---- hub message "readings": at most ten times a second, coalesced to the newest of each probe

/// <summary>Newest readings.</summary>
/// <param name="Circuit">Circuit.</param>
/// <param name="Readings">One for each series that moved.</param>
public sealed record ReadingsDelta(string Circuit, IReadOnlyList<ReadingPoint> Readings);

/// <summary>A reading on its way to the page.</summary>
/// <param name="S">Series.</param>
/// <param name="T">Measured at, Unix milliseconds.</param>
/// <param name="R">Raw.</param>
/// <param name="V">Corrected.</param>
/// <param name="G">Good.</param>
public readonly record struct ReadingPoint(string S, long T, double R, double V, bool G);

// ---- hub message "health": every five seconds, so that the page knows it is live

/// <summary>Sign of life.</summary>
/// <param name="At">Server time.</param>
/// <param name="Broker">State of the broker connection: embedded, connected, connecting, with words.</param>
/// <param name="PlantFile">Errors of a plant file that was not taken; empty when the newest is in force.</param>
/// <param name="Ledger">The closing sums of the whole site.</param>
public sealed record HealthView(Instant At, string Broker, IReadOnlyList<string> PlantFile, LedgerView Ledger);

// ---- GET /api/v1/series?probe=&from=&to=&width=

/// <summary>A series in columns, ready for a chart. A gap is a null in every column.</summary>
/// <param name="Series">Which.</param>
/// <param name="Tier">The tier that answered.</param>
/// <param name="T">Unix milliseconds.</param>
/// <param name="Min">Raw minimum.</param>
/// <param name="Mean">Raw mean.</param>
/// <param name="Max">Raw maximum.</param>
/// <param name="Corrected">Corrected mean; null when no calibration ever held.</param>
public sealed record SeriesView(
    string Series, Tier Tier, IReadOnlyList<long> T, IReadOnlyList<double?> Min, IReadOnlyList<double?> Mean, IReadOnlyList<double?> Max, IReadOnlyList<double?>? Corrected);

// ---- PUT /api/v1/checks/{id} : request CheckRequest, answer CheckAnswer (200, also when sent again) or Problem (400/409)
//      GET /api/v1/checks/{id} : CheckAnswer     GET /api/v1/checks?pool=&from=&to= : CheckAnswer[] newest first; of every pool where none is named

/// <summary>A check as the form sends it. The id is in the address.</summary>
public sealed record CheckRequest
{
    /// <summary>Pool.</summary>
    public string? PoolId { get; init; }
    /// <summary>Sample time.</summary>
    public Instant SampledAt { get; init; }
    /// <summary>Entry time.</summary>
    public Instant EnteredAt { get; init; }
    /// <summary>Who.</summary>
    public string? Who { get; init; }
    /// <summary>Sample point.</summary>
    public SamplePoint Point { get; init; }
    /// <summary>Exact place.</summary>
    public string? Place { get; init; }
    /// <summary>Results.</summary>
    public IReadOnlyList<TestResult> Results { get; init; } = [];
    /// <summary>Panel readings.</summary>
    public IReadOnlyList<PanelReading> Panel { get; init; } = [];
    /// <summary>Bottom visible.</summary>
    public bool? BottomVisible { get; init; }
    /// <summary>Bathers.</summary>
    public int? Bathers { get; init; }
    /// <summary>Note.</summary>
    public string? Note { get; init; }
    /// <summary>Check that it corrects.</summary>
    public Guid? Corrects { get; init; }
    /// <summary>Why it was corrected.</summary>
    public string? CorrectionReason { get; init; }
}

/// <summary>A check as kept, with what it says of each probe.</summary>
/// <param name="Check">The check.</param>
/// <param name="ArrivedAt">When it reached the server.</param>
/// <param name="Combined">Combined chlorine, where free and total were tested.</param>
/// <param name="Remarks">What is unlikely about it, beside the field.</param>
/// <param name="Judgements">What it says of each probe, in words.</param>
public sealed record CheckAnswer(ManualCheck Check, Instant ArrivedAt, CombinedView? Combined, IReadOnlyList<FieldSaid> Remarks, IReadOnlyList<JudgementView> Judgements);

/// <summary>What a check says of a probe.</summary>
/// <param name="CheckId">The check.</param>
/// <param name="ProbeId">The probe.</param>
/// <param name="Measurand">The quantity.</param>
/// <param name="Verdict">The answer.</param>
/// <param name="Probe">What the probe read, corrected.</param>
/// <param name="Test">What it should have read.</param>
/// <param name="Difference">Probe less test.</param>
/// <param name="Bias">Estimate after this check.</param>
/// <param name="Standing">Standing after this check.</param>
/// <param name="Reasons">Why.</param>
/// <param name="SampledAt">Sample time of the check.</param>
public sealed record JudgementView(
    Guid CheckId, string ProbeId, Measurand Measurand, Verdict Verdict, WithU? Probe, WithU? Test, WithU? Difference, WithU? Bias, Standing Standing,
    IReadOnlyList<Said> Reasons, Instant SampledAt);

/// <summary>What every refusal of the interface looks like (RFC 9457 with the fields beside).</summary>
public sealed record Problem(string Type, string Title, int Status, IReadOnlyList<FieldSaid> Errors);

/// <summary>A calibration PlantWatch would propose from the checks, for a person to take up or leave.</summary>
/// <param name="Kind">Offset, two-point, or panel adjustment.</param>
/// <param name="Slope">Slope.</param>
/// <param name="Offset">Offset, or for a panel adjustment the amount to add on the panel.</param>
/// <param name="Checks">Checks it rests on.</param>
/// <param name="Why">In words.</param>
public sealed record OfferedCalibration(CalibrationKind Kind, double Slope, double Offset, IReadOnlyList<Guid> Checks, IReadOnlyList<Said> Why);

// ---- PUT  /api/v1/calibrations/{id}            ProposeCalibration   -> CalibrationView
//      POST /api/v1/calibrations/{id}/decision   DecideCalibration    -> CalibrationView
//      GET  /api/v1/calibrations?probe=          CalibrationView[]

/// <summary>A proposal.</summary>
public sealed record ProposeCalibration(string? ProbeId, CalibrationKind Kind, double Slope, double Offset, IReadOnlyList<Guid>? Checks, string? By, string? Note);

/// <summary>A decision: approved, rejected, or adjusted (panel).</summary>
public sealed record DecideCalibration(CalibrationStatus Decision, string? By, string? Why, Instant HoldsFrom);

// ---- POST /api/v1/alarms/{id}/acknowledge  Acknowledge    POST /api/v1/alarms/{id}/shelve  Shelve    POST /api/v1/alarms/{id}/unshelve  Acknowledge
//      POST /api/v1/alarms/{id}/reset  Acknowledge    POST /api/v1/alarms/{id}/made-safe  MakeSafe
//      POST /api/v1/alarms/out-of-service  OutOfService    POST /api/v1/alarms/return-to-service  OutOfService    -> AlarmView; by rule and subject, also of what is normal
//      GET  /api/v1/alarms?from=&to=         AlarmChangeView[] newest first

/// <summary>An acknowledgement.</summary>
public sealed record Acknowledge(string? By, string? Comment);

/// <summary>A change in an alarm's life.</summary>
public sealed record AlarmChangeView(Instant At, AlarmChange Change, string? By, string? Comment, AlarmView Alarm);

// ---- GET /api/v1/refusals : RefusalView[] newest first     GET /api/v1/health-view : HealthView

/// <summary>A refused item.</summary>
public sealed record RefusalView(Guid Id, Instant ReceivedAt, string Circuit, string Topic, string PayloadText, int PayloadBytes, RefusalReason Reason, string Text);

// ---- GET /api/v1/refusals/forgotten : ForgottenView[] most first

/// <summary>Refusals of a reason that are only counted any more: the newest thousand of each are kept with their bytes.</summary>
public sealed record ForgottenView(string Circuit, RefusalReason Reason, long Count);

// ---- GET /api/v1/charts/pools/{id}.png and .svg ?from=&to=&width=&height=&theme=light|dark&look=both|raw|corrected&compare=yesterday|last_week
// ---- GET /api/v1/exports/pools/{id}.csv ?from=&to=&width=
// ---- GET /api/v1/charts/probes/{id}/agreement.png, .svg and regression.png, .svg ?from=&to=&width=&height=&theme=light|dark ; from and to may be left out

