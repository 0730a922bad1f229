using System.Text;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>A circuit on the bench: time goes on by hand, events go through <see cref="Step.Run"/> alone, all that comes out is kept.</summary>
internal sealed class Bench
{
    private long _packets;

    public Bench(CircuitPlan? plan = null, Instant start = default)
    {
        Now = start.IsSet ? start : Hall.Nine;
        State = CircuitState.Of(new CircuitPlan { Id = "hall", Name = "Hall", TimeZone = "Europe/London" });
        Load(plan ?? Hall.Plan);
    }

    public CircuitState State { get; private set; }
    public Instant Now { get; private set; }
    public List<PlantEvent> Events { get; } = [];
    public List<Reading> Readings { get; } = [];
    public List<Refusal> Refusals { get; } = [];
    public List<RecordEntry> Entries { get; } = [];
    public Ledger Ledger => State.Ledger;

    public IEnumerable<AlarmEntry> AlarmsTold => Entries.Select(e => e.Body).OfType<AlarmEntry>();

    /// <summary>One event through the step. Receive times rise strictly, as the door gives them.</summary>
    public Outcome Run(Func<Instant, PlantEvent> make)
    {
        Now += TimeSpan.FromMicroseconds(1);
        var happening = make(Now);
        Events.Add(happening);
        var result = Step.Run(State, [happening]);
        State = result.Next;
        Readings.AddRange(result.Readings);
        Refusals.AddRange(result.Refusals);
        Entries.AddRange(result.Entries);
        return result.Outcomes[0];
    }

    public Outcome Load(CircuitPlan plan) => Run(at => new PlanLoaded(at, plan));

    /// <summary>Time goes on and nothing is said of it yet.</summary>
    public void Skip(TimeSpan span) => Now += span;

    /// <summary>The server stops and starts again from its snapshot.</summary>
    public void Restart() => State = PlantJson.ReadState(PlantJson.Write(State));

    public void Tick() => Run(at => new ClockTicked(at));

    /// <summary>A message at QoS 0: nothing identifies it.</summary>
    public void Says(string topic, string payload) => Says(topic, Encoding.UTF8.GetBytes(payload));

    public void Says(string topic, byte[] payload, bool retained = false, PacketIdentity? packet = null) =>
        Run(at => new MessageArrived(at, topic, payload, retained, packet));

    /// <summary>A message at QoS 1 with the next packet of a session.</summary>
    public PacketIdentity SaysOnce(string topic, string payload)
    {
        var packet = new PacketIdentity("gateway", (int)(_packets++ % 65535) + 1, _packets, false);
        Says(topic, Encoding.UTF8.GetBytes(payload), packet: packet);
        return packet;
    }

    /// <summary>A SenML record of the learner pool's gateway with the device's own time.</summary>
    public void LearnerSays(string record, Instant at, double value) => Says(Hall.Learner, FormattableString.Invariant(
        $$"""[{"n":"learner:{{record}}","t":{{at.UnixMicroseconds / 1e6:R}},"v":{{value:R}}}]"""));

    /// <summary>Time goes on with nothing but ticks, one every thirty seconds.</summary>
    public void Pass(TimeSpan span)
    {
        for (var end = Now + span; Now < end;)
        {
            Now = Instant.Earlier(Now + TimeSpan.FromSeconds(30), end);
            Tick();
        }
    }

    /// <summary>Time goes on while topics go on saying the same, every ten seconds, each followed by a tick.</summary>
    public void Hold(TimeSpan span, params (string Topic, double Value)[] says)
    {
        for (var end = Now + span; Now < end;)
        {
            Now = Instant.Earlier(Now + TimeSpan.FromSeconds(10), end);
            foreach (var (topic, value) in says) Says(topic, FormattableString.Invariant($"{value:R}"));
            Tick();
        }
    }

    /// <summary>A check of the main pool, sampled now.</summary>
    public Outcome Check(params TestResult[] results) => Check(CheckOf(results));

    public Outcome Check(ManualCheck check, params ProbeWindow[] windows) => Run(at => new CheckEntered(at, check, [.. windows]));

    /// <summary>A check of the main pool with what the probe showed around it.</summary>
    public Outcome CheckBeside(string probe, double read, params TestResult[] results)
    {
        var check = CheckOf(results);
        return Check(check, Window(probe, check.SampledAt, read));
    }

    public ManualCheck CheckOf(params TestResult[] results) => new()
    {
        Id = TimeOrderedId.Derive(Now, $"check {Events.Count}"),
        PoolId = "main",
        SampledAt = Now,
        EnteredAt = Now,
        Who = "R. Example",
        Point = SamplePoint.Cell,
        Results = [.. results],
    };

    public static ProbeWindow Window(string probe, Instant around, double mean) =>
        new(probe, around - Reconciliation.HalfWindow, around + Reconciliation.HalfWindow, 36, 0, mean, 0.01, 0);

    public static TestResult Test(Measurand what, double value, TestMethod method = TestMethod.Photometer) => new(what, value, method);

    /// <summary>The live alarm of a rule on a subject; null while there is none.</summary>
    public AlarmRecord? Alarm(Rule rule, string subject) => State.Alarms.GetValueOrDefault(rule.KeyFor(subject));

    public bool IsUp(Rule rule, string subject) => Alarm(rule, subject) is { Active: true };

    public ProbeState Probe(string id) => State.Probes.Single(p => p.Id == id);

    public AlarmChange[] Told(Rule rule, string subject) =>
        [.. AlarmsTold.Where(e => e.Alarm.Key == rule.KeyFor(subject)).Select(e => e.Change)];
}
