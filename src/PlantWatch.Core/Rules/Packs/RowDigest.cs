using System.Runtime.CompilerServices;
using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Rules.Packs;

/// <summary>What a person confirms of a row: its figures and conditions, and not the words beside them.</summary>
public static class RowDigest
{
    private static readonly JsonSerializerOptions Plain = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) }, IgnoreReadOnlyProperties = true };

    // Asked for with every tick where a pack asks about the water; a row never changes.
    private static readonly ConditionalWeakTable<PackRow, string> Known = [];

    /// <summary>Sixteen hexadecimal digits: equal only for the same figures, grade and conditions.</summary>
    public static string Of(PackRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return Known.GetValue(row, static r => Hash(r));
    }

    private static string Hash(PackRow row)
    {
        var figures = row with { Id = "", Says = "", Source = "", Certainty = null, Provenance = default };
        return Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(figures, Plain)))[..16];
    }
}
