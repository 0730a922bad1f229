using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>A recorded plant but for its readings: pools, their probes, and what happened beside the readings, in the order of time.</summary>
internal sealed class RecordedPlant
{
    private readonly Dictionary<string, string> _poolOf = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Happening>> _aside = new(StringComparer.Ordinal);
    private readonly HashSet<string> _pools;

    /// <summary>Reads the small tables.</summary>
    /// <exception cref="FormatException">One of them says what cannot be used.</exception>
    public RecordedPlant(string input)
    {
        Pools = [.. BenchFiles.Probes(input).GroupBy(p => p.Pool).Select(g => new Pool(g.Key, [.. g]))];
        foreach (var probe in Pools.SelectMany(p => p.Probes))
            if (!_poolOf.TryAdd(probe.Id, probe.Pool)) throw new FormatException($"plant.csv: {probe.Id} stands there twice");
        _pools = [.. Pools.Select(p => p.Id)];
        foreach (var flow in BenchFiles.Flows(input)) Add(Known(flow.Pool, "flow.csv"), flow.At, p => p.Flow(flow.At, flow.Runs));
        foreach (var service in BenchFiles.Services(input)) Add(PoolOf(service.Probe), service.At, p => p.Service(service.At, service.Probe));
        foreach (var tests in BenchFiles.Tests(input).GroupBy(t => (t.Pool, t.SampledAt, t.EnteredAt)))
            Add(Known(tests.Key.Pool, "checks.csv"), tests.Key.EnteredAt, p => p.Check(tests.Key.EnteredAt, RecordedChecks.Of([.. tests])));
        foreach (var pool in _aside.Keys.ToArray()) _aside[pool] = [.. _aside[pool].OrderBy(h => h.At)];
    }

    /// <summary>One pool and its probes.</summary>
    public sealed record Pool(string Id, IReadOnlyList<BenchFiles.Probe> Probes);

    /// <summary>What happened beside the readings.</summary>
    public sealed record Happening(Instant At, Action<ReplayedPool> Do);

    /// <summary>The pools in the order of the plant.</summary>
    public IReadOnlyList<Pool> Pools { get; }

    /// <summary>What happened in a pool beside the readings, oldest first.</summary>
    public IReadOnlyList<Happening> Aside(string pool) => _aside.GetValueOrDefault(pool) ?? [];

    private string PoolOf(string probe) => _poolOf.GetValueOrDefault(probe) ?? throw new FormatException($"services.csv: {probe} is no probe of plant.csv");

    private string Known(string pool, string file) => _pools.Contains(pool) ? pool : throw new FormatException($"{file}: {pool} is no pool of plant.csv");

    private void Add(string pool, Instant at, Action<ReplayedPool> what)
    {
        if (!_aside.TryGetValue(pool, out var list)) _aside.Add(pool, list = []);
        list.Add(new Happening(at, what));
    }
}
