using System.Security.Cryptography;
using System.Text;

namespace PlantWatch.Core.Quantities;

/// <summary>UUID version 7 (RFC 9562) whose random part is derived from a seed, so that a replay of the same events gives the same ids.</summary>
public static class TimeOrderedId
{
    /// <summary>Makes an id that sorts by <paramref name="at"/> and is unique for each seed at that millisecond.</summary>
    public static Guid Derive(Instant at, string seed)
    {
        Span<byte> bytes = stackalloc byte[16];
        Span<byte> digest = stackalloc byte[32];
        SHA256.HashData(Encoding.UTF8.GetBytes($"{at.UnixMicroseconds}/{seed}"), digest);
        digest[..16].CopyTo(bytes);
        var milliseconds = Math.Max(0, at.UnixMilliseconds);
        for (var i = 5; i >= 0; i--, milliseconds >>= 8) bytes[i] = (byte)milliseconds;
        bytes[6] = (byte)(0x70 | (bytes[6] & 0x0F));
        bytes[8] = (byte)(0x80 | (bytes[8] & 0x3F));
        return new Guid(bytes, bigEndian: true);
    }

    /// <summary>True for a version 7 UUID, the only kind the interface accepts as a client's id.</summary>
    public static bool IsVersion7(Guid id) => id.Version == 7 && id.Variant is >= 8 and <= 11;
}
