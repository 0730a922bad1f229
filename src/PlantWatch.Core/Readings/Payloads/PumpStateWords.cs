using System.Text;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>A payload that says what a dosing pump does: <c>stopped</c>, <c>running</c>, <c>fault</c> in any case, or 0, 1, 2.</summary>
/// <remarks>The sample's value is the code, so that a pump's past is a series like any other.</remarks>
public static class PumpStateWords
{
    /// <summary>Decodes a payload. Gives TooLarge, Empty, InvalidUtf8 or UnknownState where there is no state.</summary>
    public static DecodedItem Decode(ReadOnlySpan<byte> payload)
    {
        if (PayloadText.Screen(payload) is { } refused) return refused;
        var text = PayloadText.Trim(payload);
        return CodeOf(text) is { } code
            ? DecodedItem.Of(new RawSample("", Instant.Never, code, null), Range.All)
            : DecodedItem.Refused(RefusalReason.UnknownState, PayloadText.Excerpt(text), Range.All);
    }

    /// <summary>What a stored code means; <see cref="PumpActivity.Unknown"/> for any number that is no code.</summary>
    public static PumpActivity ActivityOf(double code) => code switch
    {
        0 => PumpActivity.Stopped,
        1 => PumpActivity.Running,
        2 => PumpActivity.Fault,
        _ => PumpActivity.Unknown,
    };

    private static double? CodeOf(ReadOnlySpan<byte> text)
    {
        if (Is(text, "0"u8, "stopped"u8)) return 0;
        if (Is(text, "1"u8, "running"u8)) return 1;
        if (Is(text, "2"u8, "fault"u8)) return 2;
        return null;
    }

    private static bool Is(ReadOnlySpan<byte> text, ReadOnlySpan<byte> digit, ReadOnlySpan<byte> word) =>
        text.SequenceEqual(digit) || Ascii.EqualsIgnoreCase(text, word);
}
