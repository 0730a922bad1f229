using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Influx;

/// <summary>Brings what the record owes to InfluxDB, a page at a time: read, written, answered, and only then noted. Used by one thread at a time.</summary>
/// <remarks>While a page is on its way the next one is read; more is never held. A page that was not taken is forgotten and owed as before.</remarks>
public sealed class SeriesFeeder(IFeedSource source, InfluxDoor door, TimeProvider clock)
{
    /// <summary>Lines of a request at most.</summary>
    public const int MostLines = 5000;

    private Ready? _next;

    // Its lines are made while the page before it is on its way.
    private sealed record Ready(FeedPage Page, IReadOnlyList<string> Texts);

    /// <summary>Writes the next page, if anything is owed.</summary>
    /// <exception cref="StorageException">The record failed; nothing was noted.</exception>
    public async Task<FeedStep> StepAsync(CancellationToken cancellation)
    {
        var ready = _next ?? await ReadAsync(null, cancellation).ConfigureAwait(false);
        _next = null;
        if (ready.Page.Pieces.Count == 0) return FeedStep.Idle;
        try
        {
            return await WriteAsync(ready, cancellation).ConfigureAwait(false);
        }
        catch
        {
            source.Forget();
            throw;
        }
    }

    /// <summary>Drops what was read ahead: the next page begins at what is noted.</summary>
    public void Forget()
    {
        _next = null;
        source.Forget();
    }

    private async Task<Ready> ReadAsync(FeedPage? ahead, CancellationToken cancellation)
    {
        var page = await source.NextAsync(MostLines, ahead, cancellation).ConfigureAwait(false);
        return new(page, [.. page.Pieces.Where(p => p.Readings.Count > 0).Select(p => LineProtocol.Lines(LineProtocol.Prefix(p.Circuit, p.Probe), p.Readings))]);
    }

    private async Task<FeedStep> WriteAsync(Ready ready, CancellationToken cancellation)
    {
        var (page, writing) = (ready.Page, WriteWholeAsync(ready, cancellation));
        // Only a full page is followed by another at once.
        var ahead = page.Readings >= MostLines ? await ReadAsync(page, cancellation).ConfigureAwait(false) : null;
        var (answer, parked) = await writing.ConfigureAwait(false);
        if (answer.Taking != Taking.Taken)
        {
            source.Forget();
            return new(0, false, [], [], answer);
        }

        await source.NoteAsync(page, parked, cancellation).ConfigureAwait(false);
        _next = ahead;
        return new(page.Readings, page.Readings >= MostLines, parked, [.. page.Pieces.Where(p => p.Formerly is not null)], answer);
    }

    // Nearly always nothing is wrong with any line: they are told apart only where something is.
    private async Task<(WriteAnswer Answer, IReadOnlyList<ParkedLines> Parked)> WriteWholeAsync(Ready ready, CancellationToken cancellation)
    {
        var page = ready.Page;
        if (page.Readings == 0) return (WriteAnswer.Good, []);
        if (page.Readings <= MostLines)
        {
            var whole = await door.WriteAsync(ready.Texts, cancellation).ConfigureAwait(false);
            if (whole.Taking != Taking.LinesRefused) return (whole, []);
        }

        var lines = LinesOf(page);
        var hunt = new PoisonHunt(lines, some => door.WriteAsync(some, cancellation));
        return (await WriteAllAsync(hunt, lines.Count).ConfigureAwait(false), ParkedOf(page, lines, hunt.Found));
    }

    private static async Task<WriteAnswer> WriteAllAsync(PoisonHunt hunt, int count)
    {
        var answer = WriteAnswer.Good;
        for (var first = 0; first < count && answer.Taking == Taking.Taken; first += MostLines) answer = await hunt.WriteAsync(first, Math.Min(MostLines, count - first)).ConfigureAwait(false);
        return answer;
    }

    private static List<string> LinesOf(FeedPage page)
    {
        var lines = new List<string>(page.Readings);
        foreach (var piece in page.Pieces)
        {
            var prefix = LineProtocol.Prefix(piece.Circuit, piece.Probe);
            foreach (var reading in piece.Readings) lines.Add(LineProtocol.Line(prefix, reading));
        }

        return lines;
    }

    // A refused stretch may run over several series: each gets its own row.
    private List<ParkedLines> ParkedOf(FeedPage page, List<string> lines, IReadOnlyList<PoisonHunt.Refused> found)
    {
        var parked = new List<ParkedLines>();
        if (found.Count == 0) return parked;
        var (now, begin) = (Instant.From(clock.GetUtcNow()), 0);
        foreach (var piece in page.Pieces)
        {
            foreach (var refused in found)
            {
                var (first, end) = (Math.Max(refused.First, begin), Math.Min(refused.First + refused.Count, begin + piece.Readings.Count));
                if (first < end) parked.Add(new(piece.Series, piece.Circuit, piece.Probe, piece.Readings[first - begin].MeasuredAt, piece.Readings[end - 1 - begin].MeasuredAt, end - first, lines[first], refused.Words, now));
            }

            begin += piece.Readings.Count;
        }

        return parked;
    }
}

/// <summary>What became of a page.</summary>
/// <param name="Written">Readings that are there now or are parked.</param>
/// <param name="IsMore">More is owed, as far as is known.</param>
/// <param name="Parked">Lines that were refused for good.</param>
/// <param name="Renamed">Pieces of series that are written under a new name from here on.</param>
/// <param name="Answer">The server's answer.</param>
public sealed record FeedStep(int Written, bool IsMore, IReadOnlyList<ParkedLines> Parked, IReadOnlyList<FeedPiece> Renamed, WriteAnswer Answer)
{
    /// <summary>Nothing is owed.</summary>
    public static FeedStep Idle { get; } = new(0, false, [], [], WriteAnswer.Good);
}
