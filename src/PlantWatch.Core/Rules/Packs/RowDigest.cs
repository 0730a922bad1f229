using System.Text.Json;
using PlantWatch.Core.Plant;

namespace PlantWatch.Core.Rules.Packs;

/// <summary>What a person confirms of a row: its figures and conditions, and not the words beside them.</summary>
public static class RowDigest
{
    /// <summary>Sixteen hexadecimal digits: equal only for the same figures, grade and conditions.</summary>
    public static string Of(PackRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        var figures = row with { Id = "", Says = "", Source = "", Certainty = null, Provenance = default };
        return PlantJson.Hash(JsonSerializer.SerializeToUtf8Bytes(figures, PlantJson.Options))[..16];
    }
}
