using System.Buffers.Binary;

namespace PlantWatch.Fuzz;

/// <summary>Makes wrong bytes out of right ones. It knows nothing of what they mean but a dictionary of pieces that may, and gives the same bytes for the same seed.</summary>
/// <param name="seed">Everything follows from it.</param>
/// <param name="dictionary">Pieces that mean something to whoever reads the bytes.</param>
/// <param name="most">Longest result.</param>
internal sealed class Mutator(int seed, IReadOnlyList<byte[]> dictionary, int most)
{
    private const int MostSteps = 6;

    // One result in so many is blown up: what only hurts when there is much of it, hurts then.
    private const int BlownUpOneIn = 1000;

    private static readonly byte[] TellingBytes = [0x00, 0x01, 0x17, 0x18, 0x1b, 0x1f, 0x20, 0x3b, 0x5f, 0x7b, 0x7f, 0x80, 0x9b, 0x9f, 0xa0, 0xbf, 0xc4, 0xf4, 0xf9, 0xfb, 0xff];
    private static readonly ulong[] TellingNumbers = [0, 1, 0x7f, 0x80, 0xff, 0x7fff, 0xffff, int.MaxValue, 1u << 31, uint.MaxValue, 1 << 28, long.MaxValue, 1UL << 63, ulong.MaxValue];

    private readonly Random _random = new(seed);
    private readonly byte[] _work = new byte[most];
    private int _length;

    /// <summary>One to six changes of one payload, one more often than six; a splice takes its second half from another.</summary>
    public ReadOnlySpan<byte> Mutate(ReadOnlySpan<byte> from, ReadOnlySpan<byte> other)
    {
        _length = Math.Min(from.Length, most);
        from[.._length].CopyTo(_work);
        var blownUp = _random.Next(BlownUpOneIn) == 0;
        // What is blown up is otherwise left alone half of the time, or hardly any of it would be read to its end.
        var steps = blownUp && _random.Next(2) == 0 ? 0 : Math.Min(_random.Next(1, MostSteps + 1), _random.Next(1, MostSteps + 1));
        for (; steps > 0; steps--) Step(other);
        if (blownUp) BlowUp();
        return _work.AsSpan(0, _length);
    }

    /// <summary>A number below a bound, from the same seed.</summary>
    public int Below(int bound) => _random.Next(bound);

    private void Step(ReadOnlySpan<byte> other)
    {
        switch (_random.Next(12))
        {
            case 0: Change(b => (byte)(b ^ (1 << _random.Next(8)))); break;
            case 1: Change(_ => (byte)_random.Next(256)); break;
            case 2: Change(b => (byte)(b + _random.Next(-16, 17))); break;
            case 3: Change(_ => TellingBytes[_random.Next(TellingBytes.Length)]); break;
            case 4: Insert(_random.Next(_length + 1), Word()); break;
            case 5: Overwrite(Word()); break;
            case 6: Remove(); break;
            case 7: Repeat(_random.Next(1, 9)); break;
            case 8: Splice(other); break;
            case 9: _length = _random.Next(_length + 1); break;
            case 10: EditLength(); break;
            default: Swap(); break;
        }
    }

    private void Change(Func<byte, byte> how)
    {
        if (_length == 0) return;
        var at = _random.Next(_length);
        _work[at] = how(_work[at]);
    }

    private ReadOnlySpan<byte> Word() => dictionary[_random.Next(dictionary.Count)];

    private void Insert(int at, ReadOnlySpan<byte> piece)
    {
        var room = Math.Min(piece.Length, _work.Length - _length);
        _work.AsSpan(at, _length - at).CopyTo(_work.AsSpan(at + room));
        piece[..room].CopyTo(_work.AsSpan(at));
        _length += room;
    }

    private void Overwrite(ReadOnlySpan<byte> piece)
    {
        var at = _random.Next(_length + 1);
        piece[..Math.Min(piece.Length, _length - at)].CopyTo(_work.AsSpan(at));
    }

    private (int At, int Length) Piece(int longest)
    {
        var at = _random.Next(_length + 1);
        return (at, _random.Next(Math.Min(longest, _length - at) + 1));
    }

    private void Remove()
    {
        var (at, length) = Piece(32);
        _work.AsSpan(at + length, _length - at - length).CopyTo(_work.AsSpan(at));
        _length -= length;
    }

    private void Repeat(int times)
    {
        var (at, length) = Piece(64);
        var piece = _work.AsSpan(at, length).ToArray();
        for (; times > 0; times--) Insert(at, piece);
    }

    private void BlowUp()
    {
        var (at, length) = Piece(64);
        if (length == 0) return;
        var piece = _work.AsSpan(at, length).ToArray();
        var tail = _work.AsSpan(at + length, _length - at - length).ToArray();
        // Up to the brim and often a little over what is decoded at all.
        var end = _work.Length - tail.Length - _random.Next(_work.Length / 8);
        for (_length = at; _length + length <= end; _length += length) piece.CopyTo(_work.AsSpan(_length));
        Insert(_length, tail);
    }

    private void Splice(ReadOnlySpan<byte> other)
    {
        _length = _random.Next(_length + 1);
        if (!other.IsEmpty) Insert(_length, other[_random.Next(other.Length)..]);
    }

    // A number of one, two, four or eight bytes, as lengths are written: an extreme, or nearly what is left.
    private void EditLength()
    {
        var at = _random.Next(_length + 1);
        var number = _random.Next(3) == 0 ? (ulong)Math.Max(0, _length - at + _random.Next(-9, 3)) : TellingNumbers[_random.Next(TellingNumbers.Length)];
        Span<byte> eight = stackalloc byte[8];
        BinaryPrimitives.WriteUInt64BigEndian(eight, number);
        var width = 1 << _random.Next(4);
        if (_random.Next(2) == 0) Insert(at, eight[^width..]);
        else eight[^width..][..Math.Min(width, _length - at)].CopyTo(_work.AsSpan(at));
    }

    private void Swap()
    {
        var (first, length) = Piece(16);
        var second = _random.Next(_length - length + 1);
        for (var i = 0; i < length; i++) (_work[first + i], _work[second + i]) = (_work[second + i], _work[first + i]);
    }
}
