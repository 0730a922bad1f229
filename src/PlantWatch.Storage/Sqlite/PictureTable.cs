using PlantWatch.Core.Maintenance.Pictures;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Pictures of jobs. Writes run inside the transaction that the caller holds.</summary>
internal static class PictureTable
{
    public static bool Keep(Session session, Picture picture, Instant at)
    {
        session.Prepare("DELETE FROM picture WHERE tied = 0 AND kept < ?1").Bind(1, (at - IPictureStore.Waits).UnixMicroseconds).Run();
        if (Has(session, picture.Hash)) return true;
        if (session.Prepare("SELECT count(*) FROM picture WHERE tied = 0").Scalar() >= IPictureStore.MostWaiting) return false;
        session.Prepare("INSERT INTO picture (hash, kind, kept, bytes) VALUES (?1, ?2, ?3, ?4)")
            .Bind(1, Convert.FromHexString(picture.Hash)).Bind(2, (long)picture.Kind).Bind(3, at.UnixMicroseconds).Bind(4, picture.Bytes.Span).Run();
        return true;
    }

    public static IReadOnlyList<string> Tie(Session session, IReadOnlyCollection<string> hashes)
    {
        var missing = hashes.Where(hash => !Has(session, hash)).ToArray();
        if (missing.Length > 0) return missing;
        foreach (var hash in hashes) session.Prepare("UPDATE picture SET tied = 1 WHERE hash = ?1 AND tied = 0").Bind(1, Convert.FromHexString(hash)).Run();
        return [];
    }

    // What a disk or a hand has changed is not the picture any more.
    public static KeptPicture? Find(Session session, string hash)
    {
        var row = session.Prepare("SELECT kind, bytes FROM picture WHERE hash = ?1").Bind(1, Convert.FromHexString(hash));
        if (!row.Next()) return null;
        var (kind, bytes) = ((PictureKind)row.Int64(0), row.Blob(1));
        row.Reset();
        return Picture.HashOf(bytes) == hash ? new(kind, bytes) : null;
    }

    private static bool Has(Session session, string hash) => Picture.IsHash(hash) && session.Prepare("SELECT 1 FROM picture WHERE hash = ?1").Bind(1, Convert.FromHexString(hash)).Scalar() == 1;
}
