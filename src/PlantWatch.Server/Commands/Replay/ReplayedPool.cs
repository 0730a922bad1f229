using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.History;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>A recorded pool put through the very fold that runs live: the same events in the same order, nothing that came later.</summary>
internal sealed class ReplayedPool
{
    private const int BatchEvents = 256;

    // A check typed in the evening pairs with the morning.
    private static readonly TimeSpan Remembered = TimeSpan.FromHours(24);

    private readonly List<PlantEvent> _batch = new(BatchEvents);
    private readonly Dictionary<string, RecentReadings> _recent = new(StringComparer.Ordinal);
    private readonly VerdictSheet _sheet;
    private readonly string _flow;
    private CircuitState _state;
    private Instant _last;

    public ReplayedPool(string pool, IReadOnlyList<BenchFiles.Probe> probes, Instant start, VerdictSheet sheet)
    {
        _flow = pool + "/flow";
        _sheet = sheet;
        var plan = Plan(pool, probes);
        foreach (var probe in plan.Probes) _recent[probe.Id] = new RecentReadings(probe.Id, Remembered);
        _state = CircuitState.Of(plan);
        _batch.Add(new PlanLoaded(Now(start), plan));
        Flush();
    }

    /// <summary>A reading of a probe.</summary>
    public void Reading(Instant at, string probe, ReadOnlyMemory<byte> payload) => _batch.Add(new MessageArrived(Now(at), probe, payload, false, null));

    /// <summary>The sample flow runs or stands.</summary>
    public void Flow(Instant at, bool runs) => _batch.Add(new MessageArrived(Now(at), _flow, runs ? "1"u8.ToArray() : "0"u8.ToArray(), false, null));

    /// <summary>A probe was cleaned and calibrated in buffers: nothing that was known of its bias holds on.</summary>
    public void Service(Instant at, string probe)
    {
        Flush();
        var id = Id();
        var proposed = Now(at);
        _batch.Add(new CalibrationProposed(proposed, new Calibration { Id = id, ProbeId = probe, Kind = CalibrationKind.TwoPoint, ProposedBy = "service", ProposedAt = proposed }));
        var decided = Now(at);
        _batch.Add(new CalibrationDecided(decided, id, CalibrationStatus.Approved, decided, "service", "cleaned and calibrated"));
        Flush();
        _sheet.Look(at, probe, _state);
    }

    /// <summary>A check was typed in.</summary>
    public void Check(Instant at, ManualCheck check)
    {
        Flush();
        var windows = ImmutableArray.CreateBuilder<ProbeWindow>();
        foreach (var plan in _state.Plan.Probes)
        {
            var (from, to) = Reconciliation.WindowAround(plan, check);
            var newest = _recent[plan.Id].Newest;
            if (newest.IsSet && newest < to) from = Instant.Later(newest, check.SampledAt) - (to - from);
            windows.Add(_recent[plan.Id].Window(from, to));
        }

        var known = windows.DrainToImmutable();
        _batch.Add(new CheckEntered(Now(at), check, known));
        Flush();
    }

    /// <summary>A minute went by: what is due is looked at, and what changed is written down.</summary>
    public void Tick(Instant at)
    {
        _batch.Add(new ClockTicked(Now(at)));
        if (_batch.Count >= BatchEvents) Flush();
    }

    /// <summary>Readings that the fold refused, such as one beyond what its probe can show.</summary>
    public long Refused { get; private set; }

    /// <summary>Runs what waits.</summary>
    public void Flush()
    {
        if (_batch.Count == 0) return;
        _state = FineSteps.Run(_state, _batch, Take);
        _batch.Clear();
    }

    private void Take(StepResult result)
    {
        foreach (var reading in result.Readings) _recent[reading.Series].Add(reading.MeasuredAt, reading.Raw, reading.Quality);
        _sheet.Take(result.Entries, result.Next);
        Refused += result.Refusals.Length;
    }

    // Receive times rise strictly within a circuit.
    private Instant Now(Instant at) => _last = Instant.Later(at, _last + TimeSpan.FromMicroseconds(1));

    private Guid Id() => TimeOrderedId.Derive(_last, $"replay/{_flow}/{_batch.Count}");

    private CircuitPlan Plan(string pool, IReadOnlyList<BenchFiles.Probe> probes) => new()
    {
        Id = pool, Name = pool, TimeZone = "UTC",
        Pools = [new PoolPlan { Id = pool, Name = pool, Kind = PoolKind.Swimming, Disinfectant = Disinfectant.Chlorine, VolumeCubicMetres = 300 }],
        Probes =
        [
            .. probes.Select(p => Probe(pool, p)),
            new ProbePlan { Id = _flow, Name = "sample flow", PoolId = pool, Measurand = Measurand.SampleFlow, Topic = _flow, Range = new(0, 1), Every = TimeSpan.FromDays(400) },
        ],
    };

    private ProbePlan Probe(string pool, BenchFiles.Probe probe)
    {
        var measurand = probe.Kind switch { "ph" => Measurand.Ph, "orp" => Measurand.Orp, "temperature" => Measurand.Temperature, _ => throw new FormatException($"{probe.Kind} is no kind of probe") };
        return new ProbePlan
        {
            Id = probe.Id, Name = probe.Id, PoolId = pool, Measurand = measurand, Topic = probe.Id, Range = measurand.Possible(), Every = TimeSpan.FromMinutes(1), FlowSwitchId = _flow,
        };
    }
}
