using System.Buffers.Binary;
using System.Runtime.InteropServices;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>All that a supervisor remembers as one row of numbers, exact to the bit. What is kept says once in which order: the same lines write it down and take it up again.</summary>
/// <remarks>Every whole number in it is below 2^53, times in microseconds included, and so is a number of the row.</remarks>
internal sealed class Tape
{
    // What a supervisor of two loops writes.
    private const int Usual = 4500;

    private readonly List<double> _row;
    private readonly bool _reads;
    private int _next;

    private Tape(List<double> row, bool reads) => (_row, _reads) = (row, reads);

    /// <summary>An empty one to be written.</summary>
    public static Tape Blank() => new(new List<double>(Usual), false);

    /// <summary>The same row to be read from its beginning.</summary>
    public Tape Rewound() => new(_row, true);

    /// <summary>True when everything on it was read.</summary>
    public bool IsSpent => _next == _row.Count;

    /// <summary>The numbers, eight bytes each, the lowest first.</summary>
    public byte[] Bytes()
    {
        var bytes = new byte[8 * _row.Count];
        for (var i = 0; i < _row.Count; i++) BinaryPrimitives.WriteDoubleLittleEndian(bytes.AsSpan(8 * i), _row[i]);
        return bytes;
    }

    /// <summary>A row from its bytes, to be read.</summary>
    public static Tape Of(ReadOnlySpan<byte> bytes)
    {
        var row = new List<double>(bytes.Length / 8);
        for (var i = 0; i + 8 <= bytes.Length; i += 8) row.Add(BinaryPrimitives.ReadDoubleLittleEndian(bytes[i..]));
        return new(row, true);
    }

    /// <summary>Writes the number, or gives the one that was written.</summary>
    public double Next(double value)
    {
        if (_reads) return _next < _row.Count ? _row[_next++] : throw new FormatException("the row ends too early");
        _row.Add(value);
        return value;
    }

    public int Next(int value) => (int)Next((double)value);

    public bool Next(bool value) => Next(value ? 1.0 : 0) != 0;

    public Instant Next(Instant value) => Instant.FromUnixMicroseconds((long)Next((double)value.UnixMicroseconds));

    public double? Next(double? value) => Next(value.HasValue) ? Next(value ?? 0) : null;

    public void All(Span<double> values)
    {
        if (!_reads) _row.AddRange(values);
        else if (_next + values.Length > _row.Count) throw new FormatException("the row ends too early");
        else CollectionsMarshal.AsSpan(_row).Slice(_next, values.Length).CopyTo(values);
        if (_reads) _next += values.Length;
    }

    public void All(Span<int> values)
    {
        foreach (ref var value in values) value = Next(value);
    }

    public void All(Queue<double> queue)
    {
        var values = Sized(queue);
        All(values);
        if (_reads) foreach (var value in values) queue.Enqueue(value);
    }

    /// <summary>As many places as a queue has, or had.</summary>
    public T[] Sized<T>(Queue<T> queue)
    {
        var count = Next(queue.Count);
        return _reads ? new T[count] : queue.ToArray();
    }

    /// <summary>True while it is read.</summary>
    public bool Reads => _reads;
}
