using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Influx;

/// <summary>Holds a span of the copy against the record, by counting both. Not while the feed writes: it is the feed's own next step.</summary>
public sealed class CopyCheck(IFeedSource source, InfluxDoor door)
{
    /// <summary>Counts a span, and has written again what the copy lacks.</summary>
    /// <param name="from">Start, on a quarter of an hour.</param>
    /// <param name="to">End, on a quarter of an hour.</param>
    /// <exception cref="StorageException">One of the two could not be asked.</exception>
    public async Task<CopyReport> RunAsync(Instant from, Instant to, CancellationToken cancellation)
    {
        var there = await CountsAsync(from, to, cancellation).ConfigureAwait(false);
        var (compared, differ) = (0, new List<CopyDifference>());
        foreach (var held in await source.HeldAsync(from, to, cancellation).ConfigureAwait(false))
        {
            // What is owed is on its way, and what is parked is known to be missing.
            if (held.IsOwed || held.HasParked) continue;
            compared++;
            var count = there.GetValueOrDefault((LineProtocol.NameOf(held.Circuit), LineProtocol.NameOf(held.Probe)));
            if (count == held.Count) continue;
            differ.Add(new(held.Circuit, held.Probe, from, to, held.Count, count));
            await source.WriteAgainAsync(held.Series, from, to, cancellation).ConfigureAwait(false);
        }

        return new(compared, differ);
    }

    private async Task<Dictionary<(string, string), long>> CountsAsync(Instant from, Instant to, CancellationToken cancellation)
    {
        var counts = new Dictionary<(string, string), long>();
        foreach (var table in await door.AskAsync(InfluxQl.Counts(from.UnixMicroseconds, to.UnixMicroseconds), cancellation).ConfigureAwait(false))
            counts[(table.Tags.GetValueOrDefault("circuit", ""), table.Tags.GetValueOrDefault("probe", ""))] = (long)(table.Rows[0][1] ?? 0);
        return counts;
    }
}

/// <summary>What a comparison found.</summary>
/// <param name="Compared">Series compared.</param>
/// <param name="Differ">Those that differ; they are owed again.</param>
public sealed record CopyReport(int Compared, IReadOnlyList<CopyDifference> Differ);

/// <summary>A span of a series that the copy holds otherwise than the record.</summary>
/// <param name="Circuit">Its circuit.</param>
/// <param name="Probe">Its name there.</param>
/// <param name="From">Start, included.</param>
/// <param name="To">End, excluded.</param>
/// <param name="Record">Readings of the record.</param>
/// <param name="Copy">Points of the copy. More than the record has are of somebody else, or of before a rename: writing again does not take them away.</param>
public sealed record CopyDifference(string Circuit, string Probe, Instant From, Instant To, long Record, long Copy);
