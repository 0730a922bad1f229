using System.Collections.Immutable;
using PlantWatch.Core.Plant;

namespace PlantWatch.Storage;

/// <summary>How a batch that renames series reads its own keys.</summary>
public static class Renames
{
    /// <summary>The key under which a reading of the batch belongs: a former key leads to the new one, unless another series took the former key in the same batch.</summary>
    public static string KeyOf(ImmutableArray<SeriesRenamed> renames, string key)
    {
        if (renames.IsDefaultOrEmpty) return key;
        foreach (var rename in renames)
            if (rename.To == key) return key;
        foreach (var rename in renames)
            if (rename.From == key) return rename.To;
        return key;
    }
}
