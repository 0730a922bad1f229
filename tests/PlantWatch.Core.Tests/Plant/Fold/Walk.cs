using System.Text;
using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Laboratory;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>Random days of the hall: good and bad messages, redeliveries, checks, decisions, alarms handled, plan files changed, clocks that jump.</summary>
internal static partial class Walk
{
    /// <summary>One thing that happens: what, with two numbers that make it particular.</summary>
    public readonly record struct Act(int What, int A, int B);

    public static readonly Gen<Act[]> Acts =
        Gen.Select(Gen.Int[0, 99], Gen.Int[0, 10_000], Gen.Int[0, 10_000], (what, a, b) => new Act(what, a, b)).Array[1, 120];

    private static readonly string[] Topics =
        [Hall.Ph, Hall.Orp, Hall.Temperature, Hall.Chlorine, Hall.Flow, Hall.Learner, Hall.AcidState, Hall.AcidTank, "hall/hypo/state", "hall/nobody"];

    private static readonly string[] Payloads =
    [
        "7.4", "7.4", "7.9", "8.4", "6.2", "0", "1", "2", "720", "450", "27.5", "41", "1.5", "0.05", "9", "running", "fault", "stopped",
        "", "seven", "NaN", "-Infinity", "1e999", "-3", "15000", "7,4", "\ud83d\ude00", "[]", "[{}]", "{", "[{\"n\":\"learner:ph\",\"v\":7.4}]",
    ];

    private static readonly CircuitPlan[] Plans =
    [
        Tests.Stock.StockBench.Plan, Hall.Plan, Hall.Plan, Hall.Plan, Picked, Picked,
        Hall.Plan with { Telling = new() { Channels = [new("post", ChannelKind.Email, Priority.Low) { Name = "Post" }], Escalation = ["ann"] } },
        Hall.Plan.Without("learner").Without("learner-ph").Without("learner-temperature"),
        Hall.Plan.With("main-ph", p => p with { Id = "main-ph-2", Was = "main-ph" }).WithPool("main", p => p with { Id = "large", Was = "main" }),
        Hall.Plan.WithPool("main", p => p with { Limits = [], Duties = [] }),
        Hall.Plan.Without("main-flow"),
        Hall.Plan.With("main-ph", p => p with { Origin = SignalOrigin.PanelScaled }),
        Hall.Plan.With("main-ph", p => p with { Measurand = Measurand.Orp, Range = new(0, 1200) }),
        Hall.Plan with { Probes = [], Pools = [] },
        Hall.Plan with { Probes = [], Pools = [], Pumps = [] },
        Hall.Plan with { Probes = [.. Hall.Plan.Probes.Reverse()], Pools = [.. Hall.Plan.Pools.Reverse()], Pumps = [.. Hall.Plan.Pumps.Reverse()] },
        Hall.Plan.Without("acid-pump"),
        Supervised, Supervised,
    ];

    // Both pumps have a rate and a product of known strength.
    private static CircuitPlan Supervised => Hall.Plan with
    {
        Pumps = [.. Hall.Plan.Pumps.Select(p => p with
        {
            PoolId = "main", LitresPerHour = 2, DailyLimitLitres = 3, Doses = p.Id == "acid-pump" ? ProductKind.HydrochloricAcid : ProductKind.SodiumHypochlorite,
            Product = new(p.ProductId, p.ProductId, p.Id == "acid-pump" ? ProductKind.HydrochloricAcid : ProductKind.SodiumHypochlorite, 10), TankLitres = 100,
        })],
    };

    /// <summary>Lives through the acts one event at a time, so that people can answer what really stands in the state.</summary>
    public static Bench Live(IEnumerable<Act> acts, Action<Bench>? afterEach = null)
    {
        var bench = new Bench();
        foreach (var act in acts)
        {
            bench.Pass(act.B % 50 == 0 ? TimeSpan.FromMinutes(act.A % 900) / 3 : TimeSpan.Zero);
            One(bench, act);
            afterEach?.Invoke(bench);
        }

        return bench;
    }

    private static void One(Bench bench, Act act)
    {
        switch (act.What)
        {
            case < 30: bench.SaysOnce(Topics[act.A % Topics.Length], Payloads[act.B % Payloads.Length]); break;
            case < 40: bench.Says(Topics[act.A % Topics.Length], Encoding.UTF8.GetBytes(Payloads[act.B % Payloads.Length]), retained: act.B % 7 == 0); break;
            case < 48: bench.Hold(TimeSpan.FromSeconds(act.A % 300), (Hall.Ph, 7 + (act.B % 20 / 10.0)), (Hall.Flow, act.A % 3 == 0 ? 0 : 1)); break;
            case < 53: bench.LearnerSays(act.A % 2 == 0 ? "ph" : "temperature", bench.Now + TimeSpan.FromSeconds((act.B % 200) - 180), 5 + (act.A % 50 / 10.0)); break;
            case < 56: bench.LearnerSays("ph", bench.Now + TimeSpan.FromDays((act.B % 9000) - 4500), 7.4); break;
            case < 61: Again(bench, act); break;
            case < 70: Check(bench, act); break;
            case < 75: Calibrate(bench, act); break;
            case < 76: Correct(bench, act); break;
            case < 82: Handle(bench, act); break;
            case < 86: Decide(bench, act); break;
            case < 89: Fault(bench, act); break;
            case < 91: bench.Load(Plans[act.A % Plans.Length]); break;
            case < 93: Incident(bench, act); break;
            case < 94 when act.B % 3 == 1: Stock(bench, act); break;
            case < 94: Dose(bench, act); break;
            case 94 when act.B % 2 == 0: Laboratory(bench, act); break;
            case 94 when act.B % 4 == 1: Say(bench, act); break;
            case < 95: bench.Run(at => new SessionLost(at, at - TimeSpan.FromMinutes(act.A), "gateway")); break;
            case < 97: bench.Run(at => new ClockTicked(at + TimeSpan.FromSeconds(act.A - 5000))); break;
            default: bench.Pass(TimeSpan.FromMinutes(act.A % 90)); break;
        }
    }

    // The very same event once more, as a crash, a retry or a confused device gives it.
    private static void Again(Bench bench, Act act)
    {
        var again = bench.Events[act.A % bench.Events.Count];
        if (again is MessageArrived { Packet: { } packet } message && act.B % 2 == 0) again = message with { Packet = packet with { Redelivered = true, Ordinal = packet.Ordinal + act.B } };
        bench.Run(at => again with { At = at });
    }

    private static void Check(Bench bench, Act act)
    {
        var pool = bench.State.Plan.Pools.IsEmpty || act.A % 17 == 0 ? "nowhere" : bench.State.Plan.Pools[act.A % bench.State.Plan.Pools.Length].Id;
        var sampled = bench.Now - TimeSpan.FromMinutes(act.B % 13 == 0 ? (act.A * 60) - 5000 : act.A % 600);
        var measurands = Enum.GetValues<Measurand>();
        var results = Enumerable.Range(0, act.B % 5).Select(i => new TestResult(
            measurands[(act.A + (i * 5)) % measurands.Length], Value(act.A + i), (TestMethod)((act.B + i) % 5), (Censoring)(act.B % 29 % 3), act.A % 31 == 0 ? 10 : 1)).ToArray();
        var check = bench.CheckOf(results) with
        {
            PoolId = pool, SampledAt = sampled, Point = (SamplePoint)(act.A % 5), Who = act.A % 23 == 0 ? "" : "R. Example",
            BottomVisible = act.B % 3 == 0 ? act.A % 2 == 0 : null, Bathers = act.B % 4 == 0 ? act.A - 20 : null,
            Corrects = Earlier(bench, act), CorrectionReason = act.B % 5 == 0 ? "wrong line" : null,
            Panel = act.A % 6 == 0 ? [new("main-ph", 7.1), new("main-chlorine", 1.2)] : [],
        };
        bench.Check(check, [.. bench.State.Plan.Probes.Where((_, i) => (act.B + i) % 3 != 0).Select(p => Window(p, sampled, act))]);
    }

    private static Guid? Earlier(Bench bench, Act act)
    {
        var known = bench.State.KnownChecks;
        return act.B % 5 == 0 && !known.IsEmpty ? known[act.A % known.Length].Id : null;
    }

    private static double Value(int seed) => (seed % 14) switch
    {
        0 => 0, 1 => -1, 2 => 1e9, 3 => 26, 4 => 120, 5 => 7.1, 6 => 7.4, 7 => 7.9, 8 => 8.9, 9 => 0.05, 10 => 1.2, 11 => 2.4, 12 => 12, _ => 700,
    };

    private static ProbeWindow Window(ProbePlan probe, Instant at, Act act)
    {
        var mean = probe.Range.Low + ((probe.Range.High - probe.Range.Low) * (act.A % 100 / 100.0));
        return new(probe.Id, at - Reconciliation.HalfWindow, at + Reconciliation.HalfWindow, act.A % 4 == 0 ? 0 : act.B % 40, act.A % 3, mean, act.B % 7 / 100.0, act.A % 11 / 100.0);
    }

    // Sheets with sense and nonsense on them, reviews by one or the other, work begun and left.
    private static void AtTheBench(Bench bench, Act act)
    {
        var probes = bench.State.Plan.Probes;
        var probe = probes.IsEmpty ? "nobody" : probes[act.B % probes.Length].Id;
        var work = TimeOrderedId.Derive(Hall.Nine, $"work {act.B % 4}");
        var done = bench.State.Calibrations;
        if (act.A % 3 == 0) bench.Run(at => new ChannelStateSaid(at, act.A % 9 == 0 ? "nobody" : "post", act.B % 3 == 0, act.B % 3 == 0 ? "" : "no answer in time"));
        if (act.B % 5 == 0) bench.Run(at => new FilterWashed(at, work, bench.State.Filters is [var filter, ..] ? filter.Id : "nobody", "R. Example"));
        if (act.A % 6 == 0) bench.Run(at => new BackwashBegun(at, work, bench.State.Filters is [var filter, ..] ? filter.Id : "nobody", act.A % 7 == 0 ? " " : "R. Example"));
        if (act.A % 6 == 1) bench.Run(at => new BackwashEnded(at, work, bench.State.Filters is [var filter, ..] ? filter.Id : "nobody", "J. Sample"));
        if (act.B % 7 == 0) bench.Run(at => new HandoverWritten(at, work, act.A % 9 == 0 ? "" : "R. Example", "what the next must know"));
        if (act.A % 5 == 0) bench.Run(at => new HandoverSigned(at, work, act.A % 2 == 0 ? "R. Example" : "J. Sample", null, act.B % 3 == 0 ? "another sheet" : HandoverSheet.Of(bench.State, at).Hash()));
        if (act.B % 3 == 0) bench.Run(at => Note(at, act));
        bench.Run(at => (act.A % 4) switch
        {
            0 => new ProbeWorkBegun(at, work, probe, act.B % 9 == 0 ? "" : "R. Example"),
            1 => new ProbeWorkEnded(at, work, probe, "R. Example"),
            2 => new CalibrationReviewed(at, done.IsEmpty ? work : done[act.B % done.Length].Id, act.B % 3 > 0, act.B % 5 == 0 ? "R. Example" : "J. Sample", act.B % 7 == 0 ? null : "seen"),
            _ => new CalibrationProposed(at, new Calibration
            {
                Id = TimeOrderedId.Derive(at, $"sheet {act.B % 3}"), ProbeId = probe, ProposedBy = "R. Example", Work = (ProbeWork)(act.B % 33),
                Sheet = new BenchSheet
                {
                    StartedAt = at - TimeSpan.FromMinutes(act.B % 60), EndedAt = act.B % 4 == 0 ? Instant.Never : at - TimeSpan.FromMinutes(act.B % 31),
                    Points = [.. Enumerable.Range(0, act.B % 4).Select(i => new BenchPoint { Buffer = (PhBuffer)((act.B + (3 * i)) % 8), Celsius = act.B % 60, Reading = i == 0 ? 7.1 : act.A % 10, InMillivolts = act.B % 11 == 0 })],
                },
            }),
        });
    }

    private static void Calibrate(Bench bench, Act act)
    {
        if (act.B % 4 == 3)
        {
            AtTheBench(bench, act);
            return;
        }

        var waiting = bench.State.Calibrations;
        if (act.A % 2 == 0 && !waiting.IsEmpty)
        {
            bench.Run(at => new CalibrationDecided(at, waiting[act.B % waiting.Length].Id, (CalibrationStatus)(act.B % 5), act.B % 3 == 0 ? Instant.Never : at - TimeSpan.FromHours((act.B % 200) - 2), "J. Sample", null));
            return;
        }

        var probes = bench.State.Plan.Probes;
        bench.Run(at => new CalibrationProposed(at, new Calibration
        {
            Id = TimeOrderedId.Derive(at, "calibration"), ProbeId = probes.IsEmpty ? "nobody" : probes[act.A % probes.Length].Id, Kind = (CalibrationKind)(act.B % 3),
            Slope = act.B % 3 == 1 ? 0.4 + (act.A % 200 / 100.0) : 1, Offset = act.B % 10 == 0 ? 900 : (act.A % 100 / 100.0) - 0.5, ProposedBy = "R. Example",
            Checks = [.. bench.State.KnownChecks.Take(act.B % 3).Select(k => k.Id)],
        }));
    }

    private static void Correct(Bench bench, Act act)
    {
        var made = bench.State.Corrections;
        if (act.A % 3 == 0 && !made.IsEmpty)
        {
            bench.Run(at => new CorrectionWithdrawn(at, made[act.B % made.Length].Id, "J. Sample", act.B % 5 == 0 ? " " : "wrong buffer"));
            return;
        }

        var probes = bench.State.Plan.Probes;
        bench.Run(at => new CorrectionMade(at, new RecordCorrection
        {
            Id = TimeOrderedId.Derive(at, "correction"), ProbeId = probes.IsEmpty ? "nobody" : probes[act.A % probes.Length].Id, From = at - TimeSpan.FromDays(act.B % 40), To = at - TimeSpan.FromDays(act.A % 9),
            Drift = act.B % 11 == 0 ? 900 : (act.A % 100 / 100.0) - 0.5, GapU = act.B % 13 == 0 ? 0 : 0.02, MadeBy = "R. Example", Why = "found in buffers",
        }));
    }

    private static void Handle(Bench bench, Act act)
    {
        var alarms = bench.State.Alarms.Values.ToArray();
        var id = alarms.Length == 0 ? Guid.Empty : alarms[act.A % alarms.Length].Id;
        var key = alarms.Length == 0 ? act.A % 2 == 0 ? "R-010/main-ph" : "R-999/nobody" : alarms[act.A % alarms.Length].Key;
        bench.Run(at => (act.B % 7) switch
        {
            0 => new AlarmShelved(at, id, at + TimeSpan.FromMinutes(act.B % 600), "J. Sample", "work on it", OneShot: act.A % 3 == 0),
            1 => new AlarmUnshelved(at, id, "J. Sample"),
            2 => new AlarmReset(at, id, "J. Sample", act.A % 2 == 0 ? "well again" : null),
            3 => new AlarmTakenOutOfService(at, key, act.A % 5 == 0 ? "" : "J. Sample", act.A % 7 == 0 ? " " : "cell is being rebuilt"),
            4 => new AlarmReturnedToService(at, key, "J. Sample", act.A % 2 == 0 ? "rebuilt" : null),
            5 => new PlantMadeSafe(at, id, act.A % 3 != 0, true, act.A % 5 != 0, act.A % 7 == 0 ? " " : "J. Sample", null),
            _ => new AlarmAcknowledged(at, id, "J. Sample", act.A % 2 == 0 ? "seen" : null),
        });
    }

    private static void Fault(Bench bench, Act act) => bench.Run(at => new JobWritten(at, new Job(
        TimeOrderedId.Derive(Hall.Nine, $"fault {act.B % 4}"), act.A % 9 == 0 ? "nobody" : "acid-pump", act.A % 8 == 0 ? " " : "drips", act.A % 2 == 0 ? "new hose" : null,
        (JobState)(act.B % 4), act.A % 5 == 0 ? bench.State.Alarms.Values.FirstOrDefault()?.Id : null, "M. Invented", at)
    {
        TaskId = act.A % 11 == 0 ? "no-task" : null, Minutes = act.B % 13 == 0 ? -1 : act.B, Parts = act.A % 3 == 0 ? [new("hose", act.B % 4, null)] : [],
    }));

    private static void Dose(Bench bench, Act act) => bench.Run(at => new DoseGiven(at, new GivenDose
    {
        Id = TimeOrderedId.Derive(Hall.Nine, $"dose {act.B % 6}"), PoolId = act.A % 9 == 0 ? "nowhere" : "main", ProductId = "hypo", Product = "Hypochlorite", Kind = ProductKind.SodiumHypochlorite,
        Kilograms = act.A % 7 == 0 ? -1 : act.A % 40, GivenAt = at - TimeSpan.FromMinutes((act.B % 400) - 20), MixedAt = at + TimeSpan.FromMinutes(act.A % 60), By = act.B % 8 == 0 ? " " : "R. Example",
        Predicted = [new(Measurand.Ph, 7.4, 0.1, -0.2, 0.02, at - TimeSpan.FromMinutes(act.A % 100)), new(Measurand.FreeChlorine, 1, 0.05, act.A % 3, 0.1, at)],
        Corrects = act.B % 5 == 0 ? TimeOrderedId.Derive(Hall.Nine, $"dose {act.A % 6}") : null, CorrectionReason = "another drum",
    }));

    private static void Laboratory(Bench bench, Act act)
    {
        var id = TimeOrderedId.Derive(Hall.Nine, $"sample {act.B % 6}");
        bench.Run(at => act.A % 4 == 0 ? new LabResultClosed(at, id, "J. Sample", "filter cleaned") : new LabResultEntered(at, new LabResult
        {
            Id = id, PoolId = act.A % 11 == 0 ? "nowhere" : "main", Point = (SamplePoint)(act.A % 3), SampledAt = at - TimeSpan.FromHours(act.B), ReportedAt = at, Laboratory = "Example laboratory",
            SampleNumber = act.A % 9 == 0 ? " " : "26-1", By = "R. Example", Counts = [new((Organism)(act.A % 5), act.B % 3, CountSense.Counted, 100)],
        }, []));
    }

    private static void Incident(Bench bench, Act act)
    {
        var id = TimeOrderedId.Derive(Hall.Nine, $"incident {act.B % 3}");
        bench.Run(at => (act.A % 7) switch
        {
            0 => new IncidentClosed(at, id, act.B % 5 == 0 ? "" : "J. Sample", "water as it should be"),
            1 => new IncidentNoted(at, id, TimeOrderedId.Derive(Hall.Nine, $"remark {act.B % 5}"), "R. Example", act.B % 4 == 0 ? " " : "filters on"),
            _ => new IncidentDeclared(at, new Incident
            {
                Id = id, PoolId = act.A % 11 == 0 ? "nowhere" : "main", Kind = (IncidentKind)(act.B % 7), Authority = (IncidentAuthority)(act.A % 8),
                HappenedAt = act.B % 3 == 0 ? Instant.Never : at - TimeSpan.FromMinutes(act.B - 20), DeclaredBy = "R. Example",
            }),
        });
    }
}
