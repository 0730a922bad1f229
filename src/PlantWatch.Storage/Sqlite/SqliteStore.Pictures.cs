using PlantWatch.Core.Maintenance.Pictures;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Sqlite;

public sealed partial class SqliteStore : IPictureStore
{
    /// <inheritdoc/>
    public ValueTask<bool> KeepAsync(Picture picture, Instant at, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(picture);
        return WriteAsync(() => PictureTable.Keep(_writer, picture, at), cancellation);
    }

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<string>> TieAsync(IReadOnlyCollection<string> hashes, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(hashes);
        return WriteAsync(() => PictureTable.Tie(_writer, hashes), cancellation);
    }

    /// <inheritdoc/>
    public ValueTask<KeptPicture?> PictureAsync(string hash, CancellationToken cancellation) =>
        Picture.IsHash(hash) ? Read(session => PictureTable.Find(session, hash), cancellation) : ValueTask.FromResult<KeptPicture?>(null);
}
