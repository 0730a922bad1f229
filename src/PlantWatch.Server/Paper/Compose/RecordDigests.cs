using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>Works out the digest of a span's rows. What it proves and what not stands in docs/paper.md.</summary>
internal static class RecordDigests
{
    /// <summary>How far a circuit's record went.</summary>
    public static RecordHead HeadOf(string circuit, long seq, IEnumerable<RecordEntry> rows)
    {
        RecordEntry[] all = [.. rows];
        return new(circuit, seq, all.Length, all.Length == 0 ? Instant.Never : all.Max(r => r.At));
    }

    /// <summary>The digest over circuits in the order of their keys: a line with key and number of the last batch, then a line for each row by when it entered the record.</summary>
    public static RecordDigest Of(IEnumerable<SheetSource> sources)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        SheetSource[] circuits = [.. sources.OrderBy(s => s.Head.Circuit, StringComparer.Ordinal)];
        foreach (var source in circuits)
        {
            Line(hash, string.Create(CultureInfo.InvariantCulture, $"{source.Head.Circuit} {source.Head.Seq}"));
            foreach (var row in source.Rows.OrderBy(r => r.At).ThenBy(r => r.Id)) Line(hash, JsonSerializer.Serialize(row, PlantJson.Options));
        }

        return new(Convert.ToHexStringLower(hash.GetHashAndReset()), [.. circuits.Select(c => c.Head)]);
    }

    private static void Line(IncrementalHash hash, string text) => hash.AppendData(Encoding.UTF8.GetBytes(text + "\n"));
}
