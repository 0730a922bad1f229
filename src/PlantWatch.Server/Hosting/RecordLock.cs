namespace PlantWatch.Server.Hosting;

/// <summary>Held for as long as this process writes the record of a data folder. A second server on the same folder would make batches that the first one's do not follow, and stop the one that was well.</summary>
/// <remarks>The operating system holds it for the process, so it ends with the process, however that ends; the file that stays behind means nothing.</remarks>
internal sealed class RecordLock : IDisposable
{
    private readonly FileStream _file;

    private RecordLock(FileStream file) => _file = file;

    /// <summary>Takes the lock of a data folder, which is made where there is none.</summary>
    /// <exception cref="RecordInUseException">Another server holds it, or it cannot be made.</exception>
    public static RecordLock Take(string folder)
    {
        Directory.CreateDirectory(folder);
        var path = Path.Combine(folder, "record.lock");
        try
        {
            return new RecordLock(new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException e)
        {
            throw new RecordInUseException(Path.GetFullPath(folder), e.Message);
        }
    }

    public void Dispose() => _file.Dispose();
}

/// <summary>The record of a data folder is not ours to write.</summary>
internal sealed class RecordInUseException(string folder, string why)
    : Exception($"the record in {folder} cannot be taken ({why}) If another PlantWatch server uses it, stop that one, or give this one a data folder of its own by PlantWatch__Data.");
