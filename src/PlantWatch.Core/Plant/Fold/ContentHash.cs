using System.Text;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>FNV-1a, 64 bit: the same in every process, for telling contents apart, not for security.</summary>
internal static class ContentHash
{
    private const ulong Basis = 14695981039346656037;
    private const ulong Prime = 1099511628211;

    public static ulong Of(string topic, ReadOnlySpan<byte> payload)
    {
        var hash = Basis;
        foreach (var c in topic) hash = unchecked((hash ^ c) * Prime);
        hash = unchecked((hash ^ 0xFF) * Prime);
        return Of(payload, hash);
    }

    public static ulong Of(string text) => Of(Encoding.UTF8.GetBytes(text), Basis);

    private static ulong Of(ReadOnlySpan<byte> bytes, ulong hash)
    {
        foreach (var b in bytes) hash = unchecked((hash ^ b) * Prime);
        return hash;
    }
}
