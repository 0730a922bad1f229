using System.Buffers;
using System.Text;

namespace PlantWatch.Core.Plant.Journal;

/// <summary>Writes LEB128 integers, texts and bytes one after the other.</summary>
internal sealed class ByteWriter(int capacity)
{
    private readonly ArrayBufferWriter<byte> _buffer = new(capacity);

    public void Byte(byte value)
    {
        _buffer.GetSpan(1)[0] = value;
        _buffer.Advance(1);
    }

    public void Unsigned(ulong value)
    {
        var span = _buffer.GetSpan(10);
        var n = 0;
        while (value >= 0x80)
        {
            span[n++] = (byte)(value | 0x80);
            value >>= 7;
        }

        span[n++] = (byte)value;
        _buffer.Advance(n);
    }

    public void Signed(long value) => Unsigned((ulong)((value << 1) ^ (value >> 63)));

    public void Bytes(ReadOnlySpan<byte> value)
    {
        Unsigned((ulong)value.Length);
        _buffer.Write(value);
    }

    public void Text(string value)
    {
        Unsigned((ulong)Encoding.UTF8.GetByteCount(value));
        Encoding.UTF8.GetBytes(value, _buffer);
    }

    public byte[] ToArray() => _buffer.WrittenSpan.ToArray();
}

/// <summary>Reads what <see cref="ByteWriter"/> wrote; anything that ends too early is an <see cref="InvalidDataException"/>.</summary>
internal ref struct ByteReader(ReadOnlyMemory<byte> bytes)
{
    private readonly ReadOnlyMemory<byte> _bytes = bytes;
    private int _position;

    public readonly bool IsAtEnd => _position == _bytes.Length;

    public byte Byte() => _position < _bytes.Length ? _bytes.Span[_position++] : throw new InvalidDataException("the journal row ends too early");

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
        if (length > _bytes.Length - _position) throw new InvalidDataException("the journal row ends too early");
        _position += length;
        return _bytes.Slice(_position - length, length);
    }

    public string Text() => Encoding.UTF8.GetString(Bytes().Span);
}

/// <summary>Names written once a batch and then by number.</summary>
internal sealed class NameTable
{
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly List<string> _names = [];

    public void Write(ByteWriter writer, string name)
    {
        if (_numbers.TryGetValue(name, out var number))
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

        return number <= _names.Count ? _names[number - 1] : throw new InvalidDataException("the journal row names something it never introduced");
    }

    private void Add(string name)
    {
        _names.Add(name);
        _numbers[name] = _names.Count;
    }
}
