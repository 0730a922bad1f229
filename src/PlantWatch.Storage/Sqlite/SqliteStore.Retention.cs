using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Sqlite;

public sealed partial class SqliteStore : IRetention
{
    // Where the search goes on; one caller at a time.
    private long _lettingGoAt;

    /// <inheritdoc/>
    public async ValueTask<LetGo?> LetGoAsync(Retention wanted, int most, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        while (await Read(s => LettingGo.Find(s, wanted.RawBefore, wanted.MinutesBefore, _lettingGoAt, most), cancellation).ConfigureAwait(false) is { } piece)
        {
            // A series that cannot let go is passed over, not waited for.
            _lettingGoAt = piece.Id + 1;
            var gone = await WriteAsync(() => Take(piece, wanted.HeedFeed), cancellation).ConfigureAwait(false);
            if (gone.Rows == 0) continue;
            _lettingGoAt = piece.Id;
            return gone;
        }

        _lettingGoAt = 0;
        return null;
    }

    /// <inheritdoc/>
    public ValueTask<RecordSize> SizeAsync(Instant now, CancellationToken cancellation) => Read(session => SizeReader.Read(session, now), cancellation);

    /// <inheritdoc/>
    public ValueTask<Instant> RawFromAsync(PartitionKey partition, string? series, CancellationToken cancellation) =>
        Read(session => new SeriesReader(session, _zone).RawFrom(partition, series), cancellation);

    private LetGo Take(LettingGo.Piece piece, bool heedFeed)
    {
        var gone = LettingGo.Take(_writer, piece, heedFeed);
        if (gone.Rows > 0) _commits.LetGo(piece.Id, gone.Tier, gone.Before.UnixMicroseconds);
        return gone;
    }
}
