using PlantWatch.Core.Maintenance.Pictures;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage;

/// <summary>Pictures of jobs, kept in the record's own file by the hash of their bytes: one transaction, one backup.</summary>
public interface IPictureStore
{
    /// <summary>How long a picture waits for a job that names it; then it goes.</summary>
    static TimeSpan Waits { get; } = TimeSpan.FromDays(7);

    /// <summary>Most pictures that wait for a job, together.</summary>
    const int MostWaiting = 200;

    /// <summary>Keeps a picture; keeping it again is harmless. False when too many wait for a job already.</summary>
    ValueTask<bool> KeepAsync(Picture picture, Instant at, CancellationToken cancellation);

    /// <summary>Ties pictures to a job that is about to be written: they stay as long as the record. Returns those that are not there; when there are any, nothing was tied.</summary>
    ValueTask<IReadOnlyList<string>> TieAsync(IReadOnlyCollection<string> hashes, CancellationToken cancellation);

    /// <summary>A picture by its hash; null when there is none, or what is kept is not what was.</summary>
    ValueTask<KeptPicture?> PictureAsync(string hash, CancellationToken cancellation);
}

/// <summary>A picture of the store.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Bytes">Its bytes, of the hash that they were asked by.</param>
public sealed record KeptPicture(PictureKind Kind, ReadOnlyMemory<byte> Bytes);
