using System.Text;
using System.Text.Unicode;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>What all payloads have in common: they are bounded, and all but CBOR are UTF-8 text.</summary>
public static class PayloadText
{
    /// <summary>The largest payload that is decoded, in bytes. A probe needs a few; a SenML pack of a minute's back-fill some thousand.</summary>
    public const int Largest = 64 * 1024;

    /// <summary>
    /// How much of a message is worth handing over: one byte more than <see cref="Largest"/>, so that a payload which was cut here is still
    /// refused as too large, and nothing larger than this is ever kept.
    /// </summary>
    public const int WorthKeeping = Largest + 1;

    private const int LongestExcerpt = 40;

    /// <summary>Refuses what no decoder needs to look at: nothing at all, too much, or no UTF-8. Null when the text may be decoded.</summary>
    internal static DecodedItem? Screen(ReadOnlySpan<byte> payload)
    {
        if (ScreenSize(payload) is { } refused) return refused;
        if (payload.IndexOfAnyExcept(" \t\r\n"u8) < 0) return DecodedItem.Refused(RefusalReason.Empty, "", Range.All);
        if (!Utf8.IsValid(payload)) return DecodedItem.Refused(RefusalReason.InvalidUtf8, ByteAt(payload, FirstInvalid(payload)), Range.All);
        return null;
    }

    /// <summary>The same for a payload that is no text as a whole: refuses nothing at all and too much.</summary>
    internal static DecodedItem? ScreenSize(ReadOnlySpan<byte> payload)
    {
        if (payload.Length > Largest) return DecodedItem.Refused(RefusalReason.TooLarge, $"> {Largest} B", Range.All);
        if (payload.IsEmpty) return DecodedItem.Refused(RefusalReason.Empty, "", Range.All);
        return null;
    }

    /// <summary>Cuts the white space off that a shell or a microcontroller's print leaves around a word.</summary>
    internal static ReadOnlySpan<byte> Trim(ReadOnlySpan<byte> text) => text.Trim(" \t\r\n"u8);

    /// <summary>The beginning of a text for a person to recognise it by: short, and without control characters.</summary>
    internal static string Excerpt(ReadOnlySpan<byte> text)
    {
        // Four bytes make at most one character: enough for the excerpt without turning all of 64 KiB into a string.
        var decoded = Encoding.UTF8.GetString(text[..Math.Min(text.Length, LongestExcerpt * 4)]);
        var cut = decoded.Length > LongestExcerpt || text.Length > LongestExcerpt * 4;
        return string.Create(Math.Min(decoded.Length, LongestExcerpt) + (cut ? 1 : 0), (decoded, cut), static (to, from) =>
        {
            for (var i = 0; i < Math.Min(from.decoded.Length, LongestExcerpt); i++)
                to[i] = char.IsControl(from.decoded[i]) || char.IsSurrogate(from.decoded[i]) ? '\uFFFD' : from.decoded[i];
            if (from.cut) to[^1] = '\u2026';
        });
    }

    /// <summary>Where the first byte stands that is no UTF-8; the last one where a character is cut off.</summary>
    internal static int FirstInvalid(ReadOnlySpan<byte> text)
    {
        var at = 0;
        while (at < text.Length && Rune.DecodeFromUtf8(text[at..], out _, out var length) == System.Buffers.OperationStatus.Done) at += length;
        return Math.Min(at, text.Length - 1);
    }

    /// <summary>A byte and its place, for a person to find it by; the place alone behind the last byte.</summary>
    internal static string ByteAt(ReadOnlySpan<byte> payload, int at) => at < payload.Length ? $"0x{payload[at]:x2} @ {at}" : $"@ {at}";
}
