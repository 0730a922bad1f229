using System.Text;
using System.Text.Json;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules.Packs;

namespace PlantWatch.Core.Tests.GoldenDays;

/// <summary>Whole days as folders: plan.json and events.txt in, expected.txt out.</summary>
/// <remarks>A day that is meant to come out otherwise is written anew with <c>PLANTWATCH_WRITE_GENERATED=true</c> and read over before it is committed.</remarks>
public sealed class GoldenDayTests
{
    private const string WriteVariable = "PLANTWATCH_WRITE_GENERATED";
    private static readonly string Folder = Source.PathOf("tests", "PlantWatch.Core.Tests", "GoldenDays");

    public static TheoryData<string> Stories => [.. Directory.GetDirectories(Folder).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Stories))]
    public void A_day_comes_out_as_it_is_told(string story)
    {
        var path = Path.Combine(Folder, story, "expected.txt");
        var told = Live(story);
        if (Environment.GetEnvironmentVariable(WriteVariable) == "true") File.WriteAllText(path, told);
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), told);
    }

    private static string Live(string name)
    {
        var plan = JsonSerializer.Deserialize<CircuitPlan>(File.ReadAllText(Path.Combine(Folder, name, "plan.json")), PlantJson.Options)!;
        var story = new Story(plan, File.ReadLines(Path.Combine(Folder, name, "events.txt")));
        var day = new Day(plan, story);
        // What a day comes to does not hang on how it was lived: the journal of it, from zero and in one batch, ends in the same state.
        Assert.Equal(PlantJson.HashOf(day.State), PlantJson.HashOf(Step.Run(day.Empty, JournalCodec.Read(JournalCodec.Write(day.Events))).Next));
        return day.Told;
    }

    /// <summary>A story lived through the step, with the part of the shell that reads the windows around a sample.</summary>
    private sealed class Day
    {
        private readonly List<Reading> _readings = [];
        private readonly StringBuilder _told = new();
        private readonly Telling _telling;
        private readonly CircuitPlan _plan;
        private Instant _now;

        public Day(CircuitPlan plan, Story story)
        {
            (_plan, _telling) = (plan, new Telling(story.Clock));
            State = Empty = CircuitState.Of(new CircuitPlan { Id = plan.Id, Name = plan.Name, TimeZone = plan.TimeZone });
            _now = story.Acts.Keys.First() - TimeSpan.FromSeconds(1);
            Run(at => new PlanLoaded(at, plan));
            foreach (var (at, acts) in story.Acts)
            {
                _now = Instant.Later(at, _now);
                foreach (var act in acts) Do(act);
                Run(t => new ClockTicked(t));
            }

            foreach (var line in _telling.Of(State)) _told.Append(line).Append('\n');
        }

        public CircuitState Empty { get; }
        public CircuitState State { get; private set; }
        public List<PlantEvent> Events { get; } = [];
        public string Told => _told.ToString();

        private void Do(Act act) => Run(at => act switch
        {
            Act.Message m => new MessageArrived(at, m.Topic, Encoding.UTF8.GetBytes(m.Text), false, new PacketIdentity("lane", 1 + (Events.Count % 65535), Events.Count, false)),
            Act.Check c => new CheckEntered(at, c.Made, [.. _plan.Probes.Select(p => Window(p, c.Made))]),
            Act.MakeSafe m => new PlantMadeSafe(at, State.Alarms[m.Key].Id, true, true, true, m.Who, m.Words) { RoomLeft = true, TankDealtWith = true },
            Act.Pour p => new StockMoved(at, p.Move),
            Act.Acknowledge a => new AlarmAcknowledged(at, State.Alarms[a.Key].Id, a.Who, a.Words),
            Act.Propose p => new CalibrationProposed(at, new Calibration
            {
                Id = TimeOrderedId.Derive(at, p.Probe), ProbeId = p.Probe, Offset = p.Offset, ProposedBy = p.Who,
                Checks = [.. State.Probes.Single(x => x.Id == p.Probe).Trust.Pairs.Select(x => x.CheckId)],
            }),
            Act.Declare d => new IncidentDeclared(at, new Incident { Id = TimeOrderedId.Derive(at, d.Pool), PoolId = d.Pool, Kind = d.Kind, Authority = d.Authority, DeclaredBy = d.Who }),
            Act.Close c => new IncidentClosed(at, State.Incidents.Keys.Single(), c.Who, c.Why),
            Act.Set s => new PoolStateSet(at, TimeOrderedId.Derive(at, s.Pool), s.Pool, s.State, s.Who, s.Why, s.ForCause),
            Act.Confirm c => new PackRowConfirmed(at, _plan.Pack!.Id, c.Row, RowDigest.Of(_plan.Pack.Rows.Single(r => r.Id == c.Row)), c.Who, c.Document),
            Act.Dose d => new DoseGiven(at, d.Given),
            Act.Shut s => new PoolStateSet(at, TimeOrderedId.Derive(at, s.Pool), s.Pool, OperatingState.Closed, s.Who, s.Why, ForCause: true),
            Act.Tell t => new ExceptionNoted(at, TimeOrderedId.Derive(at, t.Key), State.Exceptions.Single(l => l.Key == t.Key).Id, t.Who, t.Words),
            Act.Work w => new JobWritten(at, new Job(TimeOrderedId.Derive(Empty.Watermark, w.Asset), w.Asset, w.Seen, w.Done, w.State, null, w.Who, at)),
            Act.Wash w => new FilterWashed(at, TimeOrderedId.Derive(at, w.Filter), w.Filter, w.Who) { CubicMetres = w.CubicMetres },
            Act.Approve a => new CalibrationDecided(at, State.Calibrations.Last(c => c.ProbeId == a.Probe).Id, CalibrationStatus.Approved, at, a.Who, null),
            _ => throw new InvalidOperationException($"{act} has no event"),
        });

        private void Run(Func<Instant, PlantEvent> make)
        {
            _now += TimeSpan.FromMicroseconds(1);
            var happening = make(_now);
            Events.Add(happening);
            var result = Step.Run(State, [happening]);
            State = result.Next;
            _readings.AddRange(result.Readings);
            foreach (var line in result.Refusals.Select(_telling.Of).Concat(result.Entries.SelectMany(_telling.Of))) _told.Append(line).Append('\n');
            if (happening is CheckEntered or IncidentDeclared)
                foreach (var line in _telling.Clocks(State, _now)) _told.Append(line).Append('\n');
            if (result.Outcomes[0] is not Outcome.TurnedDown no) return;
            // To be told no at the gate or at a tank belongs to a story; to be told no anywhere else is a slip in it.
            var lines = happening switch
            {
                PoolStateSet set => _telling.Of(set, no),
                StockMoved { Move.WentIn: false } moved => _telling.Of(moved, no),
                _ => throw new InvalidOperationException($"{happening} was turned down: {no}"),
            };
            foreach (var line in lines) _told.Append(line).Append('\n');
        }

        private ProbeWindow Window(ProbePlan probe, ManualCheck check)
        {
            var (from, to) = Reconciliation.WindowAround(probe, check);
            var around = _readings.Where(r => r.Series == probe.Id && r.MeasuredAt >= from && r.MeasuredAt <= to).ToArray();
            var good = around.Where(r => r.Quality.IsGood()).ToArray();
            if (good.Length == 0) return new(probe.Id, from, to, 0, around.Length, 0, 0, 0);
            var (mean, hours) = (good.Average(r => r.Raw), good.Select(r => (r.MeasuredAt - from).TotalHours).ToArray());
            var spread = hours.Sum(h => (h - hours.Average()) * (h - hours.Average()));
            var slope = spread == 0 ? 0 : good.Select((r, i) => (hours[i] - hours.Average()) * (r.Raw - mean)).Sum() / spread;
            return new(probe.Id, from, to, good.Length, around.Length - good.Length, mean, Math.Sqrt(good.Average(r => (r.Raw - mean) * (r.Raw - mean))), slope);
        }
    }
}
