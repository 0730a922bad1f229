using System.Buffers;
using System.Text;

namespace PlantWatch.Server.Api;

/// <summary>Payloads of others, as a person may see them.</summary>
internal static class ForeignBytes
{
    private const int MostShown = 100;

    /// <summary>Whether it is UTF-8; a character that is cut off at the end does not count against it.</summary>
    public static bool IsText(ReadOnlySpan<byte> payload)
    {
        while (!payload.IsEmpty)
        {
            var status = Rune.DecodeFromUtf8(payload, out _, out var length);
            if (status != OperationStatus.Done) return status == OperationStatus.NeedMoreData;
            payload = payload[length..];
        }

        return true;
    }

    /// <summary>The beginning in hexadecimal, two digits a byte, as the tools for CBOR take it.</summary>
    public static string Hex(ReadOnlySpan<byte> payload) => "0x" + Convert.ToHexStringLower(payload[..Math.Min(MostShown, payload.Length)]) + (payload.Length > MostShown ? "\u2026" : "");
}
