using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace PlantWatch.Storage.Influx;

/// <summary>Which server the marks in the record are about. To another one everything is owed.</summary>
public static class MarksOf
{
    private const string Note = "place";

    /// <summary>Makes the marks those of a place: set back where they were of another.</summary>
    /// <returns>True where they were set back.</returns>
    /// <exception cref="StorageException">The record failed.</exception>
    public static async Task<bool> TakeAsync(IFeedSource source, InfluxPlace place, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(place);
        var (before, now) = (await source.NotedAsync(Note, cancellation).ConfigureAwait(false), NumberOf(place));
        if (before == now) return false;
        // Set back first: a kill in between sets them back twice.
        if (before is not null) await source.WriteAllAgainAsync(cancellation).ConfigureAwait(false);
        await source.KeepAsync(Note, now, cancellation).ConfigureAwait(false);
        return before is not null;
    }

    // A number tells places apart and tells nobody where they are. Who signs in does not make another place.
    private static long NumberOf(InfluxPlace place)
    {
        var url = place.Url.GetComponents(UriComponents.SchemeAndServer | UriComponents.Path, UriFormat.UriEscaped).TrimEnd('/');
        return BinaryPrimitives.ReadInt64BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes($"{url}\n{place.Database}\n{place.Organisation}")));
    }
}
