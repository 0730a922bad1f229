namespace PlantWatch.Core.Readings.Payloads;

/// <summary>The eight kinds of a data item (RFC 8949 section 3.1).</summary>
public enum CborMajor : byte
{
    /// <summary>An integer from 0.</summary>
    Natural = 0,
    /// <summary>An integer below 0: minus one less the argument.</summary>
    Negative,
    /// <summary>Octets.</summary>
    Bytes,
    /// <summary>UTF-8.</summary>
    Text,
    /// <summary>Items one after the other.</summary>
    Array,
    /// <summary>Pairs of a key and a value.</summary>
    Map,
    /// <summary>A number that says how the one item after it is meant.</summary>
    Tag,
    /// <summary>Floats, false, true, null and the like, and the break.</summary>
    Simple,
}

/// <summary>What is wrong with bytes that should be CBOR: a closed list, each with a test.</summary>
public enum CborFault
{
    /// <summary>Nothing.</summary>
    None = 0,
    /// <summary>The bytes end before the item does, or a length says more than there are.</summary>
    Truncated,
    /// <summary>A first byte that RFC 8949 gives no meaning: reserved, or an indefinite length where there is none.</summary>
    ReservedHead,
    /// <summary>A break with nothing that it could end.</summary>
    StrayBreak,
    /// <summary>A piece of an indefinite string that is no definite string of its kind.</summary>
    WrongChunk,
    /// <summary>Nested deeper than is passed over.</summary>
    TooDeep,
    /// <summary>A text that is not UTF-8.</summary>
    InvalidUtf8,
}

/// <summary>The head of a data item. The default is the integer 0.</summary>
/// <param name="Major">Its kind.</param>
/// <param name="Low">The low five bits of the first byte: which width the argument has, or itself.</param>
/// <param name="Argument">A value, a length, a count or the bits of a float.</param>
/// <param name="At">Where it stands.</param>
public readonly record struct CborHead(CborMajor Major, byte Low, ulong Argument, int At)
{
    /// <summary>No length is given, or it is the break itself.</summary>
    public bool IsIndefinite => Low == 31;

    /// <summary>False or true; null for every other item.</summary>
    public bool? Boolean => (Major, Low) switch { (CborMajor.Simple, 20) => false, (CborMajor.Simple, 21) => true, _ => null };

    /// <summary>The integer, where it is one that a long can hold.</summary>
    public bool TryInteger(out long value)
    {
        value = Major == CborMajor.Negative ? ~(long)Argument : (long)Argument;
        return Major is CborMajor.Natural or CborMajor.Negative && Argument <= long.MaxValue;
    }

    /// <summary>The nearest double of an integer of any width, or of a float of half, single or double width; NaN and infinities as they are.</summary>
    public bool TryNumber(out double number)
    {
        number = (Major, Low) switch
        {
            (CborMajor.Natural, _) => Argument,
            // Minus one less the argument, rounded once: in two steps 2^53 + 2 would go astray.
            (CborMajor.Negative, _) => Argument == ulong.MaxValue ? -18446744073709551616.0 : -(double)(Argument + 1),
            (CborMajor.Simple, 25) => (double)BitConverter.UInt16BitsToHalf((ushort)Argument),
            (CborMajor.Simple, 26) => BitConverter.UInt32BitsToSingle((uint)Argument),
            (CborMajor.Simple, 27) => BitConverter.UInt64BitsToDouble(Argument),
            _ => double.NaN,
        };
        return Major is CborMajor.Natural or CborMajor.Negative || (Major == CborMajor.Simple && Low is >= 25 and <= 27);
    }
}
