using System.Globalization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>A payload that is one decimal number as text: <c>7.21</c>, <c> -3 </c>, <c>6.5e2</c>. It names neither unit, record nor time.</summary>
/// <remarks>
/// The point is the only decimal mark whatever the machine's culture: a comma would mean 7 or 72 to somebody. White space around it is
/// ignored, anything else around it is not.
/// </remarks>
public static class PlainNumber
{
    /// <summary>Decodes a payload. Gives TooLarge, Empty, InvalidUtf8, NotFinite or NotANumber where there is no finite number.</summary>
    public static DecodedItem Decode(ReadOnlySpan<byte> payload)
    {
        if (PayloadText.Screen(payload) is { } refused) return refused;
        var text = PayloadText.Trim(payload);
        if (NamesNonFinite(text)) return Refuse(RefusalReason.NotFinite, text);
        if (!IsDecimal(text) || !double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value))
            return Refuse(RefusalReason.NotANumber, text);
        return double.IsFinite(value)
            ? DecodedItem.Of(new RawSample("", Instant.Never, PositiveZero(value), null), Range.All)
            : Refuse(RefusalReason.NotFinite, text);
    }

    /// <summary>Minus zero is zero; kept as two bit patterns it would make two histories of one value.</summary>
    internal static double PositiveZero(double value) => value + 0.0;

    private static DecodedItem Refuse(RefusalReason reason, ReadOnlySpan<byte> text) =>
        DecodedItem.Refused(reason, PayloadText.Excerpt(text), Range.All);

    private static bool NamesNonFinite(ReadOnlySpan<byte> text)
    {
        if (text[0] is (byte)'+' or (byte)'-') text = text[1..];
        return Is(text, "nan"u8) || Is(text, "inf"u8) || Is(text, "infinity"u8);
    }

    private static bool Is(ReadOnlySpan<byte> text, ReadOnlySpan<byte> word) => System.Text.Ascii.EqualsIgnoreCase(text, word);

    /// <summary>Sign, digits with at most one point, exponent: the shape is checked here, since the parser also knows group marks and words.</summary>
    private static bool IsDecimal(ReadOnlySpan<byte> text)
    {
        if (text[0] is (byte)'+' or (byte)'-') text = text[1..];
        var whole = Digits(ref text);
        var fraction = 0;
        if (text is [(byte)'.', ..])
        {
            text = text[1..];
            fraction = Digits(ref text);
        }
        return whole + fraction > 0 && (text.IsEmpty || IsExponent(text));
    }

    private static bool IsExponent(ReadOnlySpan<byte> text)
    {
        if (text[0] is not ((byte)'e' or (byte)'E')) return false;
        text = text[1..];
        if (text is [(byte)'+' or (byte)'-', ..]) text = text[1..];
        return Digits(ref text) > 0 && text.IsEmpty;
    }

    private static int Digits(ref ReadOnlySpan<byte> text)
    {
        var end = text.IndexOfAnyExceptInRange((byte)'0', (byte)'9');
        var count = end < 0 ? text.Length : end;
        text = text[count..];
        return count;
    }
}
