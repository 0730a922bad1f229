using System.Buffers;
using System.Buffers.Binary;
using System.Text;

namespace PlantWatch.Simulator.Wire;

/// <summary>Writes the little of CBOR (RFC 8949) that a pack needs, each head in its shortest form.</summary>
internal readonly struct CborBytes(IBufferWriter<byte> to)
{
    private const int Natural = 0, Negative = 1, TextString = 3, ArrayOf = 4, MapOf = 5, Tag = 6;
    private const ulong DecimalFraction = 4;

    /// <summary>Begins an array of so many items.</summary>
    public void Array(int count) => Head(ArrayOf, (ulong)count);

    /// <summary>Begins a map of so many fields.</summary>
    public void Map(int count) => Head(MapOf, (ulong)count);

    /// <summary>A label and a text.</summary>
    public void Field(int label, string text)
    {
        Integer(label);
        Head(TextString, (ulong)Encoding.UTF8.GetByteCount(text));
        Encoding.UTF8.GetBytes(text, to);
    }

    /// <summary>A label and a number: an integer where it is one, else a decimal fraction of its digits.</summary>
    public void Field(int label, decimal number)
    {
        Integer(label);
        // Noughts behind the last digit say nothing; the division takes them away.
        number /= 1.0000000000000000000000000000m;
        var decimals = number.Scale;
        for (var i = 0; i < decimals; i++) number *= 10;
        if (decimals > 0)
        {
            Head(Tag, DecimalFraction);
            Array(2);
            Integer(-decimals);
        }

        Integer((long)number);
    }

    /// <summary>A label and a half float that is no number.</summary>
    public void FieldOfNoNumber(int label)
    {
        Integer(label);
        to.Write<byte>([0xf9, 0x7e, 0x00]);
    }

    private void Integer(long value) => Head(value < 0 ? Negative : Natural, (ulong)(value < 0 ? ~value : value));

    private void Head(int major, ulong argument)
    {
        Span<byte> head = stackalloc byte[9];
        var (low, width) = argument switch { < 24 => ((int)argument, 0), <= byte.MaxValue => (24, 1), <= ushort.MaxValue => (25, 2), <= uint.MaxValue => (26, 4), _ => (27, 8) };
        BinaryPrimitives.WriteUInt64BigEndian(head[1..], argument);
        head[8 - width] = (byte)((major << 5) | low);
        to.Write<byte>(head[(8 - width)..]);
    }
}
