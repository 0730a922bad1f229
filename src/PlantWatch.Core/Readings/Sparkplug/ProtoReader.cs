using System.Buffers.Binary;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>How the value of a field is written (Protocol Buffers encoding, the wire types).</summary>
public enum ProtoWire : byte
{
    /// <summary>A number of seven bits a byte, the lowest first.</summary>
    Varint = 0,
    /// <summary>Eight bytes, the lowest first.</summary>
    Fixed64 = 1,
    /// <summary>A length and as many bytes: a text, octets or a message.</summary>
    Bytes = 2,
    /// <summary>The beginning of a group, which is no longer in use.</summary>
    GroupStart = 3,
    /// <summary>Its end.</summary>
    GroupEnd = 4,
    /// <summary>Four bytes, the lowest first.</summary>
    Fixed32 = 5,
}

/// <summary>What is wrong with bytes that should be a Protocol Buffers message: a closed list, each with a test.</summary>
public enum ProtoFault : byte
{
    /// <summary>Nothing.</summary>
    None = 0,
    /// <summary>The bytes end before the field does, or a length says more than there are.</summary>
    Truncated,
    /// <summary>A number of more than ten bytes or more than 64 bits.</summary>
    LongVarint,
    /// <summary>A wire type without a meaning, 6 or 7.</summary>
    ReservedWire,
    /// <summary>A field number of 0, or beyond 2^29 - 1.</summary>
    ReservedNumber,
    /// <summary>The end of a group that was not begun, or of another.</summary>
    StrayGroupEnd,
    /// <summary>Groups nested deeper than is passed over.</summary>
    TooDeep,
}

/// <summary>A field as it was read. The default has number 0, which no field has.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Wire">How its value is written.</param>
/// <param name="Bits">The value of a varint or of fixed bytes.</param>
/// <param name="At">Where the field begins.</param>
/// <param name="Start">Where its bytes begin.</param>
/// <param name="Length">How many they are.</param>
public readonly record struct ProtoField(uint Number, ProtoWire Wire, ulong Bits, int At, int Start, int Length)
{
    /// <summary>Behind its last byte.</summary>
    public int End => Start + Length;
}

/// <summary>Goes through the fields of a Protocol Buffers message one after the other, forward only, without a copy and without an exception.</summary>
/// <remarks>
/// Every field is read to its end, so that one that is not known is passed over by not looking at it. The first fault stands. Nothing is believed
/// that a length says. Places are counted from the beginning of the whole payload, in messages within it too.
/// </remarks>
/// <param name="payload">The whole payload.</param>
/// <param name="start">Where the message begins.</param>
/// <param name="end">Behind its last byte.</param>
public ref struct ProtoReader(ReadOnlySpan<byte> payload, int start, int end)
{
    /// <summary>How deep groups may be nested.</summary>
    public const int Deepest = 16;

    private const int LongestVarint = 10;
    private const ulong LargestNumber = (1UL << 29) - 1;

    private readonly ReadOnlySpan<byte> _bytes = payload[..end];
    private int _position = start;

    /// <summary>What is wrong; none while nothing is.</summary>
    public ProtoFault Fault { get; private set; }

    /// <summary>The place of the fault.</summary>
    public int FaultAt { get; private set; }

    /// <summary>Reads the next field. False at the end of the message, and at a fault.</summary>
    public bool TryField(out ProtoField field)
    {
        field = default;
        if (Fault != ProtoFault.None || _position == _bytes.Length) return false;
        if (!TryKey(out var number, out var wire, out var at)) return false;
        return wire == ProtoWire.GroupEnd ? Fail(ProtoFault.StrayGroupEnd, at) : TryValue(number, wire, at, 1, out field);
    }

    private bool TryKey(out uint number, out ProtoWire wire, out int at)
    {
        (number, wire, at) = (0, 0, _position);
        if (!TryVarint(out var key)) return false;
        if (key >> 3 is 0 or > LargestNumber) return Fail(ProtoFault.ReservedNumber, at);
        if ((key & 7) > (ulong)ProtoWire.Fixed32) return Fail(ProtoFault.ReservedWire, at);
        (number, wire) = ((uint)(key >> 3), (ProtoWire)(key & 7));
        return true;
    }

    private bool TryValue(uint number, ProtoWire wire, int at, int depth, out ProtoField field)
    {
        var (bits, start, length) = (0UL, _position, 0);
        var read = wire switch
        {
            ProtoWire.Varint => TryVarint(out bits),
            ProtoWire.Fixed64 => TryFixed(8, out bits),
            ProtoWire.Fixed32 => TryFixed(4, out bits),
            ProtoWire.Bytes => TryBytes(out start, out length),
            _ => TryGroup(number, at, depth),
        };
        field = read ? new(number, wire, bits, at, start, length) : default;
        return read;
    }

    private bool TryVarint(out ulong value)
    {
        value = 0;
        for (var i = 0; i < LongestVarint; i++)
        {
            if (_position == _bytes.Length) return Fail(ProtoFault.Truncated, _position);
            var next = _bytes[_position];
            // The tenth byte holds the 64th bit and no other.
            if (i == LongestVarint - 1 && next > 1) return Fail(ProtoFault.LongVarint, _position);
            _position++;
            value |= (ulong)(next & 0x7f) << (7 * i);
            if (next < 0x80) return true;
        }

        return Fail(ProtoFault.LongVarint, _position);
    }

    private bool TryFixed(int width, out ulong bits)
    {
        bits = 0;
        if (_bytes.Length - _position < width) return Fail(ProtoFault.Truncated, _bytes.Length);
        var fixedBytes = _bytes.Slice(_position, width);
        bits = width == 8 ? BinaryPrimitives.ReadUInt64LittleEndian(fixedBytes) : BinaryPrimitives.ReadUInt32LittleEndian(fixedBytes);
        _position += width;
        return true;
    }

    private bool TryBytes(out int start, out int length)
    {
        (start, length) = (0, 0);
        if (!TryVarint(out var said)) return false;
        if (said > (ulong)(_bytes.Length - _position)) return Fail(ProtoFault.Truncated, _bytes.Length);
        (start, length) = (_position, (int)said);
        _position += length;
        return true;
    }

    private bool TryGroup(uint number, int at, int depth)
    {
        if (depth > Deepest) return Fail(ProtoFault.TooDeep, at);
        while (TryKey(out var inner, out var wire, out var innerAt))
        {
            if (wire == ProtoWire.GroupEnd) return inner == number || Fail(ProtoFault.StrayGroupEnd, innerAt);
            if (!TryValue(inner, wire, innerAt, depth + 1, out _)) return false;
        }

        return false;
    }

    private bool Fail(ProtoFault fault, int at)
    {
        (Fault, FaultAt) = (fault, at);
        return false;
    }
}
