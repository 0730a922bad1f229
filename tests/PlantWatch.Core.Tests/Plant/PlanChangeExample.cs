using System.Collections.Immutable;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Tests.Plant;

/// <summary>A circuit with everything in it, and a state in which every part has something to lose.</summary>
internal static class PlanChangeExample
{
    public static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12);

    public static CircuitPlan Plan { get; } = new()
    {
        Id = "main",
        Name = "Main circuit",
        TimeZone = "Europe/London",
        BalanceTankCubicMetres = 30,
        Pools = [Pool("pool"), Pool("learner")],
        Probes =
        [
            Probe("ph", Measurand.Ph, "pool"),
            Probe("orp", Measurand.Orp, "pool") with { ReferenceElectrode = "Ag/AgCl 3 M", Range = new(0, 1000) },
            Probe("flow", Measurand.SampleFlow, null) with { FlowSwitchId = null, Range = new(0, 1) },
        ],
        Pumps = [Pump("hypo-pump", "hypo"), Pump("acid-pump", "acid")],
    };

    public static CircuitState State { get; } = Known(Plan);

    /// <summary>A state in which every probe, pump and pool of a plan is known, each by other figures.</summary>
    public static CircuitState Known(CircuitPlan plan) => CircuitState.Of(plan) with
    {
        Watermark = Noon,
        Ledger = new Ledger { Messages = 7, Received = 7, StoredByDeviceTime = 7 },
        Probes = [.. plan.Probes.Select((probe, i) => Heard(probe.Id, i))],
        Pumps = [.. plan.Pumps.Select((pump, i) => new PumpState { Id = pump.Id, Activity = PumpActivity.Running, Since = Noon + TimeSpan.FromSeconds(i) })],
        Tanks = [.. plan.Pumps.Select((pump, i) => new TankState { PumpId = pump.Id, Book = i, Days = [new(new DateOnly(2026, 3, 1), i, 24)] })],
        Pools = [.. plan.Pools.Select((pool, i) => new PoolState { Id = pool.Id, Bathers = i, DutyDoneAt = [Noon, Noon + TimeSpan.FromMinutes(i)] })],
        Alarms = Sorted(plan.Probes.Select(probe => Alarm("R-010", probe.Id)).Append(Alarm("R-001", plan.Id)).Concat(plan.Pools.Select(pool => Alarm("R-020", pool.Id)))),
        Jobs = ImmutableSortedDictionary<Guid, JobWatch>.Empty.AddRange(plan.Pumps.Select((pump, i) => KeyValuePair.Create(Number(i), Fault(i, pump.Id)))),
        Calibrations = [.. plan.Probes.Select((probe, i) => new Calibration { Id = Number(i), ProbeId = probe.Id, ProposedBy = "Sam", Offset = i })],
    };

    public static PoolPlan Pool(string id) => new()
    {
        Id = id,
        Name = "Pool " + id,
        Kind = PoolKind.Swimming,
        Setting = Setting.Indoor,
        Disinfectant = Disinfectant.Chlorine,
        VolumeCubicMetres = 425,
        Limits = [new(Measurand.Ph, 7.2, 7.6, "the plant's own")],
        Duties = [new([Measurand.FreeChlorine, Measurand.Ph], [new(7, 0)]), new([Measurand.TotalAlkalinity], [new(7, 0)])],
    };

    public static ProbePlan Probe(string id, Measurand measurand, string? pool) => new()
    {
        Id = id,
        Name = "Probe " + id,
        PoolId = pool,
        Measurand = measurand,
        Topic = "hall/" + id,
        Range = new(0, 14),
        FlowSwitchId = "flow",
    };

    public static PumpPlan Pump(string id, string product) => new() { Id = id, Name = "Pump " + id, PoolId = "pool", ProductId = product, StateTopic = "hall/" + id };

    public static CircuitPlan WithProbe(this CircuitPlan plan, string id, Func<ProbePlan, ProbePlan> change) =>
        plan with { Probes = [.. plan.Probes.Select(probe => probe.Id == id ? change(probe) : probe)] };

    public static CircuitPlan WithPool(this CircuitPlan plan, string id, Func<PoolPlan, PoolPlan> change) =>
        plan with { Pools = [.. plan.Pools.Select(pool => pool.Id == id ? change(pool) : pool)] };

    public static CircuitPlan WithPump(this CircuitPlan plan, string id, Func<PumpPlan, PumpPlan> change) =>
        plan with { Pumps = [.. plan.Pumps.Select(pump => pump.Id == id ? change(pump) : pump)] };

    private static ProbeState Heard(string id, int i) => new()
    {
        Id = id,
        Last = new(Noon, Noon, 7 + i, 7.1 + i, Quality.Received),
        Signal = SignalHealth.New with { Standing = Standing.Good, LagSeconds = i },
        Trust = ProbeTrust.New with { Standing = Standing.Good, Bias = new(0.1 + i, 0.05) },
    };

    private static AlarmRecord Alarm(string rule, string subject) => new()
    {
        Id = Number(subject.Length),
        Key = $"{rule}/{subject}",
        Rule = rule,
        Subject = subject,
        Cause = Reason.Of("probe.reads_high", subject),
        Active = true,
        IsAcknowledged = false,
        RaisedAt = Noon,
    };

    private static JobWatch Fault(int i, string asset) => new(new Job(Number(i), asset, "drips", null, JobState.Open, null, "Sam", Noon));

    private static Guid Number(int i) => new(i + 1, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 0);

    private static ImmutableSortedDictionary<string, AlarmRecord> Sorted(IEnumerable<AlarmRecord> alarms) =>
        ImmutableSortedDictionary<string, AlarmRecord>.Empty.WithComparers(StringComparer.Ordinal).AddRange(alarms.Select(alarm => KeyValuePair.Create(alarm.Key, alarm)));
}
