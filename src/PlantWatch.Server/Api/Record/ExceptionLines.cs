using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>A line with the circuit that it stands in.</summary>
internal readonly record struct PlacedException(CircuitWorker Circuit, ExceptionLine Line);

/// <summary>The lines of the exceptions: what is open out of the state, what is closed out of the record.</summary>
internal static class ExceptionLines
{
    /// <summary>A line among the open and the last closed ones; null when there is none.</summary>
    public static ExceptionLine? Find(CircuitWorker worker, Guid id) => worker.State.Exceptions.Concat(worker.State.ClosedExceptions).FirstOrDefault(l => l.Id == id);

    /// <summary>What stands open.</summary>
    public static IEnumerable<PlacedException> Open(PlantHost host, string? pool) =>
        host.Circuits.SelectMany(c => c.State.Exceptions.Where(l => IsOf(c, l, pool)).Select(l => new PlacedException(c, l)));

    /// <summary>What was closed, by the time of its reading, newest first.</summary>
    /// <remarks>What was told of a closed line later is a row of its own: the newest one counts, unless the line stands open again.</remarks>
    public static async Task<IReadOnlyList<PlacedException>> ClosedAsync(PlantHost host, IRecordStore store, string? pool, Instant from, Instant to, CancellationToken cancellation)
    {
        var all = new List<PlacedException>();
        foreach (var worker in host.Circuits.ToArray())
        {
            var rows = await store.EntriesAsync(worker.Partition, new EntryQuery(["exception_closed"], null, from, to, int.MaxValue), cancellation);
            all.AddRange(Closed(worker, rows, pool));
        }

        return [.. all.OrderByDescending(p => p.Line.Reading.At).ThenBy(p => p.Line.Key, StringComparer.Ordinal)];
    }

    /// <summary>What was closed, out of rows of a circuit's record.</summary>
    public static IEnumerable<PlacedException> Closed(CircuitWorker worker, IEnumerable<RecordEntry> rows, string? pool)
    {
        var open = worker.State.Exceptions.Select(l => l.Id).ToHashSet();
        var newest = rows.Where(r => r.Body is ExceptionClosedEntry).GroupBy(r => ((ExceptionClosedEntry)r.Body).Line.Id).Select(g => g.OrderByDescending(r => r.At).ThenByDescending(r => r.Id).First());
        return newest.Select(r => new PlacedException(worker, ((ExceptionClosedEntry)r.Body).Line)).Where(p => !open.Contains(p.Line.Id) && IsOf(worker, p.Line, pool));
    }

    /// <summary>True for a line of the pool, or of water that the pools of the circuit share.</summary>
    public static bool IsOf(CircuitWorker worker, ExceptionLine line, string? pool) =>
        pool is null || line.PoolId == pool || (line.PoolId == worker.State.Plan.Id && worker.State.Plan.Pools.Any(p => p.Id == pool));
}
