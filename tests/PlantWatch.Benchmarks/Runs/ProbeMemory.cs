using System.Runtime.CompilerServices;
using System.Text;
using PlantWatch.Benchmarks.Kit;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>What is held in memory for a probe once it has a past.</summary>
internal sealed class ProbeMemory : IBenchmark
{
    private const double ToReach = 8000;
    private static readonly Instant Start = Instant.FromUtc(2026, 1, 1);
    private static readonly (string Id, Measurand Measurand, double Value)[] Kinds = [("ph", Measurand.Ph, 7.3), ("orp", Measurand.Orp, 720), ("water", Measurand.Temperature, 28)];

    public string Name => "memory";

    public string Title => "Memory a probe";

    public string Method =>
        "Circuits of one pool with a pH, an ORP and a temperature probe after 60 days: a reading a minute each, three checks a day of pH, free and total chlorine and temperature, every one of them paired. Held: live bytes of the heap after a full collection, "
        + "with so many circuits less without, a circuit made by its own events; of the probes' states alone, and of the whole circuit (its remembered checks and packets with it). Snapshot: bytes of the canonical state. No clock in it.";

    public Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        var (circuits, days) = (bench.Of(20, 3), bench.Of(60, 6));
        // In a list of its own that is emptied: a local would be held to the end of the method.
        var held = new List<object>();
        var snapshot = Fill(held, circuits, days) / (circuits * Kinds.Length);
        var whole = Live();
        LeaveProbes(held);
        var alone = Live();
        held.Clear();
        var none = Live();
        return Task.FromResult<IReadOnlyList<Row>>(
        [
            new Row($"Held a probe after {days} days, bytes (less is better)", Say.Number((alone - none) / (double)(circuits * Kinds.Length)), ToReach: $"<= {ToReach:0}"),
            new Row("Held a circuit of three probes, bytes", Say.Number((whole - none) / (double)circuits)),
            new Row("Snapshot of the circuit a probe, bytes", Say.Number(snapshot)),
        ]);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static double Fill(List<object> held, int circuits, int days)
    {
        for (var i = 0; i < circuits; i++) held.Add(Lived(i, days));
        return held.Sum(s => (double)PlantJson.Write((CircuitState)s).Length);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void LeaveProbes(List<object> held)
    {
        for (var i = 0; i < held.Count; i++) held[i] = ((CircuitState)held[i]).Probes;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static long Live()
    {
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Forced, blocking: true, compacting: true);
        GC.WaitForPendingFinalizers();
        return GC.GetTotalMemory(forceFullCollection: true);
    }

    private static CircuitState Lived(int circuit, int days)
    {
        var plan = Plan(circuit);
        var state = Step.Run(CircuitState.Of(plan), [new PlanLoaded(Start, plan)]).Next;
        var events = new List<PlantEvent>();
        for (var minute = 1; minute <= days * 1440; minute++)
        {
            var at = Start + TimeSpan.FromMinutes(minute);
            for (var i = 0; i < Kinds.Length; i++)
                events.Add(new MessageArrived(at + TimeSpan.FromMicroseconds(i), plan.Probes[i].Topic, Encoding.UTF8.GetBytes(FormattableString.Invariant($"{Reads(i, minute):0.00}")), false, null));
            events.Add(new ClockTicked(at + TimeSpan.FromMicroseconds(9)));
            if (minute % 480 == 0) events.Add(Check(plan, minute, at));
            if (events.Count < 1000) continue;
            state = Step.Run(state, events).Next;
            events.Clear();
        }

        return Step.Run(state, events).Next;
    }

    private static double Reads(int kind, int minute) => Kinds[kind].Value * (1 + (0.002 * Math.Sin(minute / 53.0)) + (minute * 7 % 11 / 20000.0));

    private static CheckEntered Check(CircuitPlan plan, int minute, Instant at)
    {
        var wobble = minute / 480 % 5 / 100.0;
        var check = new ManualCheck
        {
            Id = TimeOrderedId.Derive(at, plan.Id), PoolId = plan.Pools[0].Id, SampledAt = at - TimeSpan.FromMinutes(2), EnteredAt = at, Who = "benchmark", Point = SamplePoint.Pool,
            Results =
            [
                new(Measurand.Ph, 7.28 + wobble, TestMethod.Photometer), new(Measurand.FreeChlorine, 1.4 + (5 * wobble), TestMethod.Photometer),
                new(Measurand.TotalChlorine, 1.7 + (5 * wobble), TestMethod.Photometer), new(Measurand.Temperature, 28, TestMethod.Meter),
            ],
        };
        var windows = plan.Probes.Select((p, i) => new ProbeWindow(p.Id, at - TimeSpan.FromMinutes(7), at, 7, 0, Reads(i, minute), 0.004 * Kinds[i].Value / 7, 0));
        return new CheckEntered(at + TimeSpan.FromMicroseconds(10), check, [.. windows]);
    }

    private static CircuitPlan Plan(int circuit) => new()
    {
        Id = $"hall-{circuit}", Name = $"Hall {circuit}", TimeZone = "Etc/UTC",
        Pools = [new PoolPlan { Id = $"pool-{circuit}", Name = "Pool", Kind = PoolKind.Swimming, Disinfectant = Disinfectant.Chlorine, VolumeCubicMetres = 300 }],
        Probes = [.. Kinds.Select(k => new ProbePlan { Id = $"{k.Id}-{circuit}", Name = k.Id, PoolId = $"pool-{circuit}", Measurand = k.Measurand, Topic = $"hall/{circuit}/{k.Id}", Range = k.Measurand.Possible(), Every = TimeSpan.FromMinutes(1) })],
    };
}
