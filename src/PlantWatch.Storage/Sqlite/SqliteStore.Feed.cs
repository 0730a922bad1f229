using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Sqlite;

public sealed partial class SqliteStore : IFeedSource
{
    private readonly FeedRound _round = new();

    /// <inheritdoc/>
    public async ValueTask TakeUpAsync(CancellationToken cancellation)
    {
        if (await Read(FeedReader.HasNew, cancellation).ConfigureAwait(false)) await WriteLightlyAsync(() => FeedTable.TakeUp(_writer), cancellation).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public async ValueTask<FeedPage> NextAsync(int most, FeedPage? ahead, CancellationToken cancellation)
    {
        if (_round.IsOver)
        {
            await TakeUpAsync(cancellation).ConfigureAwait(false);
            await Read(session => Begin(session, ahead), cancellation).ConfigureAwait(false);
        }

        return await Read(session => Page(session, most, ahead), cancellation).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public async ValueTask NoteAsync(FeedPage page, IReadOnlyList<ParkedLines> parked, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentNullException.ThrowIfNull(parked);
        await WriteLightlyAsync(() => FeedTable.Note(_writer, page, parked), cancellation).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public void Forget() => _round.Forget();

    /// <inheritdoc/>
    public ValueTask<Backlog> BacklogAsync(CancellationToken cancellation) => Read(FeedReader.Backlog, cancellation);

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<ParkedLines>> ParkedAsync(CancellationToken cancellation) => Read(FeedReader.Parked, cancellation);

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<HeldReadings>> HeldAsync(Instant from, Instant to, CancellationToken cancellation) =>
        Read(session => FeedReader.Held(session, from.UnixMicroseconds, to.UnixMicroseconds), cancellation);

    /// <inheritdoc/>
    public async ValueTask WriteAgainAsync(long series, Instant from, Instant to, CancellationToken cancellation) =>
        await WriteAsync(() => FeedTable.WriteAgain(_writer, series, from.UnixMicroseconds, to.UnixMicroseconds), cancellation).ConfigureAwait(false);

    /// <inheritdoc/>
    public async ValueTask WriteAllAgainAsync(CancellationToken cancellation)
    {
        await WriteAsync(() => FeedTable.WriteAllAgain(_writer), cancellation).ConfigureAwait(false);
        _round.Forget();
    }

    /// <inheritdoc/>
    public ValueTask<long?> NotedAsync(string name, CancellationToken cancellation) =>
        Read(session => session.Prepare("SELECT value FROM feed_note WHERE name = ?1").Bind(1, name).Scalar(), cancellation);

    /// <inheritdoc/>
    public async ValueTask KeepAsync(string name, long? value, CancellationToken cancellation) =>
        await WriteLightlyAsync(() => FeedTable.Keep(_writer, name, value), cancellation).ConfigureAwait(false);

    private bool Begin(Session session, FeedPage? ahead)
    {
        _round.Begin(session, ahead);
        return true;
    }

    // Half of a page at most is for what is written again, so that neither waits for the other.
    private FeedPage Page(Session session, int most, FeedPage? ahead)
    {
        var pieces = new List<FeedPiece>();
        var marked = FeedReader.Marked(session, most / 2, ahead, pieces);
        if (marked < most) _round.Take(session, most - marked, pieces);
        return new(pieces, _round.IsMore || marked >= most / 2 || pieces.Sum(p => p.Readings.Count) >= most);
    }

    // Without a flush of its own: a note that a power cut takes along only means that a page is written twice. The next commit flushes it too.
    private ValueTask<T> WriteLightlyAsync<T>(Func<T> work, CancellationToken cancellation) => WriteAsync(work, cancellation, lightly: true);
}
