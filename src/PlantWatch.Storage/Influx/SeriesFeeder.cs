using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Influx;

/// <summary>Brings what the record owes to InfluxDB, a page at a time: read, written, answered, and only then noted. Used by one thread at a time.</summary>
/// <remarks>While a page is on its way the next one is read; more is never held. A page that was not taken is forgotten and owed as before.</remarks>
public sealed class SeriesFeeder(IFeedSource source, InfluxDoor door, TimeProvider clock)
{
    /// <summary>Lines of a request at most.</summary>
    public const int MostLines = 5000;

    /// <summary>Lines of a request when nothing larger gets through.</summary>
    public const int FewestLines = 100;

    private Ready? _next;
    private int _most = MostLines;

    // Its lines are made while the page before it is on its way.
    private sealed record Ready(FeedPage Page, IReadOnlyList<string> Texts);

    /// <summary>Holds the marks against the server that they are about, before the first page.</summary>
    /// <returns>True where they were of another: everything is owed to this one.</returns>
    /// <exception cref="StorageException">The record failed.</exception>
    public async Task<bool> BeginAsync(CancellationToken cancellation)
    {
        var isOther = await MarksOf.TakeAsync(source, door.Place, cancellation).ConfigureAwait(false);
        await source.TakeUpAsync(cancellation).ConfigureAwait(false);
        return isOther;
    }

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
        var page = await source.NextAsync(_most, ahead, cancellation).ConfigureAwait(false);
        return new(page, [.. page.Pieces.Where(p => p.Readings.Count > 0).Select(p => LineProtocol.Lines(LineProtocol.Prefix(p.Circuit, p.Probe), p.Readings))]);
    }

    private async Task<FeedStep> WriteAsync(Ready ready, CancellationToken cancellation)
    {
        var (page, writing) = (ready.Page, WriteWholeAsync(ready, cancellation));
        var ahead = page.IsMore ? await ReadAsync(page, cancellation).ConfigureAwait(false) : null;
        var (answer, parked) = await writing.ConfigureAwait(false);
        if (answer.Taking != Taking.Taken)
        {
            source.Forget();
            if (answer.IsTooMuch) _most = Math.Max(FewestLines, _most / 2);
            return new(0, false, [], [], [], answer);
        }

        var isNew = await NewOfAsync(parked, cancellation).ConfigureAwait(false);
        await source.NoteAsync(page, parked, cancellation).ConfigureAwait(false);
        (_next, _most) = (ahead, Math.Min(MostLines, _most * 2));
        return new(page.Readings, page.IsMore, parked, isNew, [.. page.Pieces.Where(p => p.Formerly is not null)], answer);
    }

    // A series and reason that is known already is counted on without a word: a year of pages would be a year of words.
    private async Task<IReadOnlyList<ParkedLines>> NewOfAsync(IReadOnlyList<ParkedLines> parked, CancellationToken cancellation)
    {
        if (parked.Count == 0) return [];
        var known = (await source.ParkedAsync(cancellation).ConfigureAwait(false)).Select(p => (p.Series, p.Words)).ToHashSet();
        return [.. parked.GroupBy(p => (p.Series, p.Words)).Where(g => !known.Contains(g.Key)).Select(g => g.First() with { First = g.Min(p => p.First), Last = g.Max(p => p.Last), Lines = g.Sum(p => p.Lines) })];
    }

    // Nearly always nothing is wrong with any line: they are told apart only where something is.
    private async Task<(WriteAnswer Answer, IReadOnlyList<ParkedLines> Parked)> WriteWholeAsync(Ready ready, CancellationToken cancellation)
    {
        var page = ready.Page;
        if (page.Readings == 0) return (WriteAnswer.Good, []);
        if (page.Readings <= _most)
        {
            var whole = await door.WriteAsync(ready.Texts, cancellation).ConfigureAwait(false);
            if (!whole.IsForGood) return (whole, []);
            if (whole.Dropped >= page.Readings) return (WriteAnswer.Good, ParkedOf(page, LinesOf(page), [new(0, page.Readings, whole.Words)]));
        }

        var lines = LinesOf(page);
        var hunt = new PoisonHunt(lines, some => door.WriteAsync(some, cancellation));
        return (await WriteAllAsync(hunt, lines.Count, _most).ConfigureAwait(false), ParkedOf(page, lines, hunt.Found));
    }

    private static async Task<WriteAnswer> WriteAllAsync(PoisonHunt hunt, int count, int most)
    {
        var answer = WriteAnswer.Good;
        for (var first = 0; first < count && answer.Taking == Taking.Taken; first += most) answer = await hunt.WriteAsync(first, Math.Min(most, count - first)).ConfigureAwait(false);
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
/// <param name="NewlyParked">Those of them of which no line of the same series was refused for the same reason before; a series and reason is there once.</param>
/// <param name="Renamed">Pieces of series that are written under a new name from here on.</param>
/// <param name="Answer">The server's answer.</param>
public sealed record FeedStep(int Written, bool IsMore, IReadOnlyList<ParkedLines> Parked, IReadOnlyList<ParkedLines> NewlyParked, IReadOnlyList<FeedPiece> Renamed, WriteAnswer Answer)
{
    /// <summary>Nothing is owed.</summary>
    public static FeedStep Idle { get; } = new(0, false, [], [], [], WriteAnswer.Good);
}
