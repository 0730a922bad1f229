using System.Buffers;
using System.Text;

namespace PlantWatch.Core.Plant.Journal;

/// <summary>Writes LEB128 integers, texts and bytes one after the other.</summary>
internal sealed class ByteWriter(int capacity)
{
    private readonly ArrayBufferWriter<byte> buffer = new(capacity);

    public void Byte(byte value)
    {
        buffer.GetSpan(1)[0] = value;
        buffer.Advance(1);
    }

    public void Unsigned(ulong value)
    {
        var span = buffer.GetSpan(10);
        var n = 0;
        while (value >= 0x80)
        {
            span[n++] = (byte)(value | 0x80);
            value >>= 7;
        }

        span[n++] = (byte)value;
        buffer.Advance(n);
    }

    public void Signed(long value) => Unsigned((ulong)((value << 1) ^ (value >> 63)));

    public void Bytes(ReadOnlySpan<byte> value)
    {
        Unsigned((ulong)value.Length);
        buffer.Write(value);
    }

    public void Text(string value)
    {
        Unsigned((ulong)Encoding.UTF8.GetByteCount(value));
        Encoding.UTF8.GetBytes(value, buffer);
    }

    public byte[] ToArray() => buffer.WrittenSpan.ToArray();
}

/// <summary>Reads what <see cref="ByteWriter"/> wrote; anything that ends too early is an <see cref="InvalidDataException"/>.</summary>
internal ref struct ByteReader(ReadOnlyMemory<byte> bytes)
{
    private readonly ReadOnlyMemory<byte> bytes = bytes;
    private int position;

    public readonly bool IsAtEnd => position == bytes.Length;

    public byte Byte() => position < bytes.Length ? bytes.Span[position++] : throw new InvalidDataException("the journal row ends too early");

    public ulong Unsigned()
    {
        ulong value = 0;
        for (var shift = 0; shift < 64; shift += 7)
        {
            var b = Byte();
            value |= (ulong)(b & 0x7F) << shift;
            if (b < 0x80) return value;
        }

        throw new InvalidDataException("an integer of the journal row is too long");
    }

    public long Signed()
    {
        var value = Unsigned();
        return (long)(value >> 1) ^ -(long)(value & 1);
    }

    public int Count()
    {
        var value = Unsigned();
        return value <= int.MaxValue ? (int)value : throw new InvalidDataException("a length of the journal row is too large");
    }

    public ReadOnlyMemory<byte> Bytes()
    {
        var length = Count();
        if (length > bytes.Length - position) throw new InvalidDataException("the journal row ends too early");
        position += length;
        return bytes.Slice(position - length, length);
    }

    public string Text() => Encoding.UTF8.GetString(Bytes().Span);
}

/// <summary>Names written once a batch and then by number.</summary>
internal sealed class NameTable
{
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);
    private readonly List<string> names = [];

    public void Write(ByteWriter writer, string name)
    {
        if (numbers.TryGetValue(name, out var number))
        {
            writer.Unsigned((ulong)number);
            return;
        }

        writer.Unsigned(0);
        writer.Text(name);
        Add(name);
    }

    public string Read(ref ByteReader reader)
    {
        var number = reader.Count();
        if (number == 0)
        {
            var name = reader.Text();
            Add(name);
            return name;
        }

        return number <= names.Count ? names[number - 1] : throw new InvalidDataException("the journal row names something it never introduced");
    }

    private void Add(string name)
    {
        names.Add(name);
        numbers[name] = names.Count;
    }
}
