namespace PlantWatch.Storage;

/// <summary>The store could not do what it was asked, and changed nothing. It stays usable.</summary>
/// <param name="message">What went wrong, in the engine's words.</param>
/// <param name="mayPass">Whether the same call may succeed later.</param>
public class StorageException(string message, bool mayPass) : Exception(message)
{
    /// <summary>True when trying again may help (busy, disk full, a failed write); false when only a person can help (damage, a programmer's mistake).</summary>
    public bool MayPass { get; } = mayPass;
}

/// <summary>The file is not one that this program may write: another program's, or made by a newer PlantWatch. It was left as it is.</summary>
public sealed class UnusableDatabaseException(string message) : StorageException(message, mayPass: false);
