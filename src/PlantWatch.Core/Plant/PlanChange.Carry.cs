using System.Collections.Immutable;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Plant;

public sealed partial record PlanChange
{
    /// <summary>Takes a state over to a new plan: what is still there is kept in the new order and under its new id, the rest is let go.</summary>
    /// <remarks>
    /// An alarm whose subject is gone, or measures something else now, is missing from the result: the fold writes it into the record as retired.
    /// Jobs on what is gone leave the list; they stay in the record, like everything else.
    /// </remarks>
    public static CircuitState Carry(CircuitState old, CircuitPlan next)
    {
        var lineage = new PlanLineage(old.Plan, next);
        var subjects = new PlanSubjects(lineage, old.Plan, next);
        return old with
        {
            Plan = next,
            Probes = [.. lineage.Probes.Where(pair => pair.Next is not null).Select(pair => Probe(old, pair.Old, pair.Next!, lineage))],
            Pumps = [.. lineage.Pumps.Where(pair => pair.Next is not null).Select(pair => Pump(old, pair.Old, pair.Next!))],
            Pools = [.. lineage.Pools.Where(pair => pair.Next is not null).Select(pair => Pool(old, pair.Old, pair.Next!))],
            Dosing = Dosing(old, next, lineage),
            Filters = [.. next.Filters.Select(f => old.Filters.FirstOrDefault(known => known.Id == f.Id) ?? new FilterState(f.Id, default))],
            Flow = MeterOf(old.Plan) == MeterOf(next) ? old.Flow : default,
            Reagents = [.. next.Reagents.Select(r => old.Reagents.FirstOrDefault(known => known.Id == r.Id) ?? new ReagentState(r.Id, []))],
            Instruments = [.. next.Instruments.Select(i => old.Instruments.FirstOrDefault(known => known.Id == i.Id) ?? new InstrumentState(i.Id, []))],
            Alarms = Alarms(old.Alarms, subjects),
            Exceptions = Lines(old.Exceptions, subjects),
            ClosedExceptions = Lines(old.ClosedExceptions, subjects),
            Jobs = Jobs(old.Jobs, subjects, next),
            Tasks = [.. next.Tasks.Select(t => old.Tasks.FirstOrDefault(known => known.Id == t.Id) ?? new TaskState(t.Id))],
            Tanks = [.. lineage.Pumps.Where(pair => pair.Next is not null).Select(pair => Tank(old, pair.Old, pair.Next!))],
            Moves = [.. old.Moves.Select(m => m.PumpId is null ? m : m with { PumpId = subjects.Named(m.PumpId) ?? m.PumpId })],
            Notes = [.. old.Notes.Select(n => n with { PoolId = subjects.Named(n.PoolId) ?? n.PoolId })],
            Bathers = [.. old.Bathers.Select(b => b with { PoolId = subjects.Named(b.PoolId) ?? b.PoolId })],
            Doses = Doses(old.Doses, subjects),
            Incidents = Incidents(old.Incidents, subjects, lineage.Pools.FirstOrDefault(pair => pair is { Old: not null, Next: not null }).Next?.Id),
            Calibrations = Calibrations(old.Calibrations, lineage),
            Corrections = Corrections(old.Corrections, lineage),
        };
    }

    // What another meter said is no hour of this one.
    private static string? MeterOf(CircuitPlan plan) => plan.Probes.FirstOrDefault(p => p.Measurand == Measurand.CirculationFlow)?.Id;

    private static ProbeState Probe(CircuitState state, ProbePlan? old, ProbePlan next, PlanLineage lineage)
    {
        if (old is null || state.Probes.FirstOrDefault(probe => probe.Id == old.Id) is not { } known) return new() { Id = next.Id };
        var carried = known.Id == next.Id ? known : known with { Id = next.Id };
        if (MeansSomethingElse(old, next))
            return carried with { Last = ForgetNumber(known.Last), ExpectedSince = Instant.Never, Signal = SignalHealth.New, Trust = ProbeTrust.New, Trail = default };
        return LearnsAnew(old, next, lineage) ? carried with { Trust = ProbeTrust.New, Trail = default } : carried;
    }

    // The times stay: they tell the next reading of this series from one that may be stored already.
    private static LastReading ForgetNumber(LastReading last) => last with { Raw = 0, Value = 0, Quality = Quality.NotReceived };

    private static PumpState Pump(CircuitState state, PumpPlan? old, PumpPlan next)
    {
        if (old is null || state.Pumps.FirstOrDefault(pump => pump.Id == old.Id) is not { } known) return new() { Id = next.Id };
        return known.Id == next.Id ? known : known with { Id = next.Id };
    }

    // A tank that is for another product now tells nothing of the one before; that a wrong one went in stays.
    private static TankState Tank(CircuitState state, PumpPlan? old, PumpPlan next)
    {
        if (old is null || state.Tanks.FirstOrDefault(tank => tank.PumpId == old.Id) is not { } known) return new() { PumpId = next.Id };
        if (old.ProductId != next.ProductId || old.TankLitres != next.TankLitres) return new() { PumpId = next.Id, Wrong = known.Wrong };
        return known.PumpId == next.Id ? known : known with { PumpId = next.Id };
    }

    private static PoolState Pool(CircuitState state, PoolPlan? old, PoolPlan next)
    {
        if (old is null || state.Pools.FirstOrDefault(pool => pool.Id == old.Id) is not { } known) return new() { Id = next.Id };
        var carried = known.Id == next.Id ? known : known with { Id = next.Id };
        return SameDuties(old, next) ? carried : carried with { DutyDoneAt = [.. next.Duties.Select(duty => DoneAt(duty, old, known))] };
    }

    /// <summary>A duty was last done when the old one with the same tests was; a new duty was never done.</summary>
    private static Instant DoneAt(CheckDuty duty, PoolPlan old, PoolState known)
    {
        for (var i = 0; i < Math.Min(old.Duties.Length, known.DutyDoneAt.Length); i++)
            if (SameTests(old.Duties[i], duty)) return known.DutyDoneAt[i];
        return Instant.Never;
    }

    private static ImmutableSortedDictionary<string, AlarmRecord> Alarms(ImmutableSortedDictionary<string, AlarmRecord> alarms, PlanSubjects subjects)
    {
        if (alarms.Values.All(alarm => subjects.Now(alarm.Subject) == alarm.Subject)) return alarms;
        var kept = alarms.Clear().ToBuilder();
        // What is nobody's any more gives way to an alarm that somebody looks at.
        foreach (var alarm in alarms.Values.OrderBy(alarm => subjects.IsOf(alarm.Subject) ? 0 : 1))
            if (subjects.Now(alarm.Subject) is { } now) Add(kept, alarm with { Key = KeyFor(alarm, now), Subject = now });
        return kept.ToImmutable();
    }

    /// <summary>Puts an alarm among others. Where its key is taken it stands beside under a longer one: of two that are latched none may be lost.</summary>
    internal static void Add(ImmutableSortedDictionary<string, AlarmRecord>.Builder alarms, AlarmRecord alarm)
    {
        if (!alarms.TryAdd(alarm.Key, alarm)) alarms[$"{alarm.Key}/{alarm.Id:N}"] = alarm with { Key = $"{alarm.Key}/{alarm.Id:N}" };
    }

    // A key is the rule's number and the subject, and may say more behind it.
    private static string KeyFor(AlarmRecord alarm, string now)
    {
        var head = $"{alarm.Rule}/{alarm.Subject}";
        return alarm.Key.StartsWith(head, StringComparison.Ordinal) ? $"{alarm.Rule}/{now}{alarm.Key[head.Length..]}" : alarm.Key;
    }

    // Work on a thing that is gone leaves the list, and so does what could have shown its effect.
    private static ImmutableSortedDictionary<Guid, JobWatch> Jobs(ImmutableSortedDictionary<Guid, JobWatch> jobs, PlanSubjects subjects, CircuitPlan next)
    {
        var kept = jobs.ToBuilder();
        foreach (var (id, watch) in jobs)
            if (subjects.Named(watch.Job.Asset) is not { } now || next.Find(now) == PlantThing.None) kept.Remove(id);
            else if (now != watch.Job.Asset) kept[id] = watch with { Job = watch.Job with { Asset = now }, Signs = Signs(watch.Signs, subjects) };
        return kept.ToImmutable();
    }

    private static ImmutableArray<string> Signs(ImmutableArray<string> keys, PlanSubjects subjects)
    {
        var kept = ImmutableArray.CreateBuilder<string>(keys.Length);
        foreach (var key in keys)
            if (key.IndexOf('/', StringComparison.Ordinal) is var slash && subjects.Now(key[(slash + 1)..]) is { } now) kept.Add(key[..(slash + 1)] + now);
        return kept.ToImmutable();
    }

    private static ImmutableSortedDictionary<Guid, Incident> Incidents(ImmutableSortedDictionary<Guid, Incident> incidents, PlanSubjects subjects, string? stayed)
    {
        var kept = incidents.ToBuilder();
        foreach (var (id, incident) in incidents)
            if (Incident(incident, subjects, stayed) is { } now) kept[id] = now;
            else kept.Remove(id);
        return kept.ToImmutable();
    }

    // Where the pool of an incident is gone, the pools that shared its water still hold that water: it stays open for them.
    private static Incident? Incident(Incident incident, PlanSubjects subjects, string? stayed)
    {
        var now = subjects.Named(incident.PoolId) ?? (incident.ClosesThePool ? stayed : null);
        if (now is null) return null;
        if (now == incident.PoolId && incident.Tests.All(t => t.PoolId is null || subjects.Named(t.PoolId) == t.PoolId)) return incident;
        return incident with { PoolId = now, Tests = [.. incident.Tests.Select(t => t with { PoolId = (subjects.Named(t.PoolId ?? incident.PoolId) ?? t.PoolId ?? incident.PoolId) is var at && at == now ? null : at })] };
    }

    /// <summary>True when an incident lost its pool and stays with another one of the water; a pool that only has another id is the same.</summary>
    internal static bool IsRehomed(CircuitPlan old, CircuitPlan next, Incident was, Incident now) =>
        was.PoolId != now.PoolId && new PlanLineage(old, next).Pools.Any(pair => pair.Old?.Id == was.PoolId && pair.Next is null);

    private static ImmutableArray<Dosing.GivenDose> Doses(ImmutableArray<Dosing.GivenDose> doses, PlanSubjects subjects) =>
        doses.All(dose => subjects.Named(dose.PoolId) == dose.PoolId)
            ? doses
            : [.. doses.Where(dose => subjects.Named(dose.PoolId) is not null).Select(dose => dose with { PoolId = subjects.Named(dose.PoolId)! })];

    // A breach whose pool is gone stays in the list: the fold closes it, and says so.
    private static ImmutableArray<ExceptionLine> Lines(ImmutableArray<ExceptionLine> lines, PlanSubjects subjects) =>
        lines.All(line => (subjects.Named(line.PoolId) ?? line.PoolId) == line.PoolId) ? lines : [.. lines.Select(line => line with { PoolId = subjects.Named(line.PoolId) ?? line.PoolId })];

    private static ImmutableArray<Calibration> Calibrations(ImmutableArray<Calibration> calibrations, PlanLineage lineage)
    {
        var kept = ImmutableArray.CreateBuilder<Calibration>(calibrations.Length);
        foreach (var calibration in calibrations)
        {
            var (old, next) = lineage.Probes.FirstOrDefault(pair => pair.Old?.Id == calibration.ProbeId);
            if (old is null || next is null || MeansSomethingElse(old, next)) continue;
            kept.Add(calibration.ProbeId == next.Id ? calibration : calibration with { ProbeId = next.Id });
        }

        return kept.Count == calibrations.Length && kept.SequenceEqual(calibrations) ? calibrations : kept.ToImmutable();
    }

    // A correction follows the record of its probe; what measures something else now keeps none.
    private static ImmutableArray<RecordCorrection> Corrections(ImmutableArray<RecordCorrection> corrections, PlanLineage lineage)
    {
        var kept = ImmutableArray.CreateBuilder<RecordCorrection>(corrections.Length);
        foreach (var correction in corrections)
        {
            var (old, next) = lineage.Probes.FirstOrDefault(pair => pair.Old?.Id == correction.ProbeId);
            if (old is null || next is null || MeansSomethingElse(old, next)) continue;
            kept.Add(correction.ProbeId == next.Id ? correction : correction with { ProbeId = next.Id });
        }

        return kept.Count == corrections.Length && kept.SequenceEqual(corrections) ? corrections : kept.ToImmutable();
    }
}
