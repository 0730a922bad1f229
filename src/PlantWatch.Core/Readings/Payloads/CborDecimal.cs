using System.Globalization;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>Decimal fractions, tag 4 (RFC 8949 section 3.4.4): an exponent of ten and a whole number, so that 7.21 is 721 times 10^-2 and no digit is invented.</summary>
internal static class CborDecimal
{
    public const ulong Tag = 4;

    private const ulong PositiveBignum = 2, NegativeBignum = 3;

    // Decimal types of the usual platforms hold 12 bytes; this is what 128 bits hold with one to spare for the sign.
    private const int LongestMantissa = 15;

    // Beyond this every whole number of 128 bits is nought or infinite as a double.
    private const long FarExponent = 1000;

    /// <summary>Reads what follows the tag: the double nearest to it. False where it is well-formed and no decimal fraction, or where the reader is at fault; what was read of it is gone then.</summary>
    public static bool TryRead(ref CborReader cbor, out double number)
    {
        number = 0;
        if (!cbor.TryHead(out var pair)) return false;
        if (pair.Major != CborMajor.Array || pair.IsIndefinite || pair.Argument != 2)
        {
            cbor.TrySkip(pair);
            return false;
        }

        if (!TryExponent(ref cbor, out var exponent, out var isExponent) || !TryMantissa(ref cbor, out var negative, out var mantissa, out var isMantissa)) return false;
        number = isExponent && isMantissa ? Nearest(negative, mantissa, exponent) : 0;
        return isExponent && isMantissa;
    }

    private static bool TryExponent(ref CborReader cbor, out long exponent, out bool understood)
    {
        (exponent, understood) = (0, false);
        if (!cbor.TryHead(out var head)) return false;
        understood = head.TryInteger(out exponent);
        return understood || cbor.TrySkip(head);
    }

    private static bool TryMantissa(ref CborReader cbor, out bool negative, out UInt128 magnitude, out bool understood)
    {
        (negative, magnitude, understood) = (false, 0, false);
        if (!cbor.TryHead(out var head)) return false;
        if (head is { Major: CborMajor.Tag, Argument: PositiveBignum or NegativeBignum }) return TryBignum(ref cbor, head.Argument == NegativeBignum, out negative, out magnitude, out understood);
        negative = head.Major == CborMajor.Negative;
        magnitude = negative ? (UInt128)head.Argument + 1 : head.Argument;
        understood = head.Major is CborMajor.Natural or CborMajor.Negative;
        return understood || cbor.TrySkip(head);
    }

    // Section 3.4.3: octets, the most significant first; leading noughts mean nothing.
    private static bool TryBignum(ref CborReader cbor, bool below, out bool negative, out UInt128 magnitude, out bool understood)
    {
        (negative, magnitude, understood) = (below, 0, false);
        if (!cbor.TryHead(out var head)) return false;
        if (head.Major != CborMajor.Bytes || head.IsIndefinite) return cbor.TrySkip(head);
        if (!cbor.TryString(head, out var octets)) return false;
        octets = octets.TrimStart((byte)0);
        if (octets.Length > LongestMantissa) return true;
        foreach (var octet in octets) magnitude = (magnitude << 8) | octet;
        if (below) magnitude++;
        understood = true;
        return true;
    }

    // By way of its digits: the parser rounds once and rightly, which a multiplication by a power of ten does not.
    private static double Nearest(bool negative, UInt128 magnitude, long exponent)
    {
        Span<char> text = stackalloc char[64];
        var far = Math.Clamp(exponent, -FarExponent, FarExponent);
        text.TryWrite(CultureInfo.InvariantCulture, $"{(negative ? "-" : "")}{magnitude}e{far}", out var length);
        return double.Parse(text[..length], NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
