using System.Buffers.Binary;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>Goes through the data items of a CBOR text (RFC 8949) head by head, forward only, without a copy and without an exception.</summary>
/// <remarks>
/// It asks for well-formedness (section 5.3.1) and for UTF-8 in texts, not for the shortest or the sorted form (section 4.2), which no device is
/// bound to. The first fault stands: whatever is asked after it gives false. Nothing is believed that a head says of a length: what is longer
/// than the rest of the bytes is a fault before anything is done about it.
/// </remarks>
/// <param name="bytes">What is read.</param>
public ref struct CborReader(ReadOnlySpan<byte> bytes)
{
    /// <summary>How deep arrays, maps and tags may be nested within an item that is passed over.</summary>
    public const int Deepest = 16;

    private readonly ReadOnlySpan<byte> _bytes = bytes;

    /// <summary>Where the next head stands.</summary>
    public int Position { get; private set; }

    /// <summary>What is wrong; none while nothing is.</summary>
    public CborFault Fault { get; private set; }

    /// <summary>The place of the fault, a byte's index; the length where the bytes end too soon.</summary>
    public int FaultAt { get; private set; }

    /// <summary>Whether all was read.</summary>
    public readonly bool IsAtEnd => Position == _bytes.Length;

    private readonly int Left => _bytes.Length - Position;

    /// <summary>Reads the next head. False at a fault, and the end of the bytes is one.</summary>
    public bool TryHead(out CborHead head)
    {
        head = default;
        if (Fault != CborFault.None) return false;
        if (Left == 0) return Fail(CborFault.Truncated, _bytes.Length);
        var (at, first) = (Position, _bytes[Position]);
        var (major, low) = ((CborMajor)(first >> 5), first & 0x1f);
        var more = low switch { < 24 => 0, 24 => 1, 25 => 2, 26 => 4, 27 => 8, 31 => 0, _ => -1 };
        if (more < 0 || (low == 31 && major is CborMajor.Natural or CborMajor.Negative or CborMajor.Tag)) return Fail(CborFault.ReservedHead, at);
        if (more >= Left) return Fail(CborFault.Truncated, _bytes.Length);
        var argument = Argument(low, _bytes.Slice(at + 1, more));
        // Section 3.3: a simple value below 32 has one byte only.
        if (major == CborMajor.Simple && low == 24 && argument < 32) return Fail(CborFault.ReservedHead, at);
        Position += 1 + more;
        head = new CborHead(major, (byte)low, argument, at);
        return true;
    }

    /// <summary>Takes the bytes of a definite string, whose head was read; a text must be UTF-8.</summary>
    public bool TryString(CborHead head, out ReadOnlySpan<byte> content)
    {
        content = default;
        if (Fault != CborFault.None) return false;
        if (head.Argument > (ulong)Left) return Fail(CborFault.Truncated, _bytes.Length);
        content = _bytes.Slice(Position, (int)head.Argument);
        if (head.Major == CborMajor.Text && !System.Text.Unicode.Utf8.IsValid(content)) return Fail(CborFault.InvalidUtf8, Position + PayloadText.FirstInvalid(content));
        Position += content.Length;
        return true;
    }

    /// <summary>Whether one more item of an array, or pair of a map, follows. It counts <paramref name="done"/> up, and reads the break that ends an indefinite one.</summary>
    public bool TryNext(CborHead container, ref ulong done)
    {
        if (Fault != CborFault.None) return false;
        if (container.IsIndefinite ? TryBreak() : done == container.Argument) return false;
        if (Fault != CborFault.None) return false;
        done++;
        return true;
    }

    /// <summary>Passes over the rest of an item whose head was read, however it is nested, up to <see cref="Deepest"/>.</summary>
    public bool TrySkip(CborHead head) => TrySkip(head, 1);

    private bool TrySkip(CborHead head, int depth) => head.Major switch
    {
        _ when Fault != CborFault.None => false,
        CborMajor.Bytes or CborMajor.Text => head.IsIndefinite ? TryChunks(head) : TryString(head, out _),
        CborMajor.Array => TryItems(head, 1, depth),
        CborMajor.Map => TryItems(head, 2, depth),
        CborMajor.Tag => TryItem(head, depth),
        CborMajor.Simple when head.IsIndefinite => Fail(CborFault.StrayBreak, head.At),
        _ => true,
    };

    private bool TryItems(CborHead container, int each, int depth)
    {
        if (!container.IsIndefinite && container.Argument > (ulong)Left) return Fail(CborFault.Truncated, _bytes.Length);
        for (var done = 0UL; TryNext(container, ref done);)
            for (var i = 0; i < each; i++)
                if (!TryItem(container, depth)) return false;
        return Fault == CborFault.None;
    }

    private bool TryItem(CborHead within, int depth)
    {
        if (depth >= Deepest) return Fail(CborFault.TooDeep, within.At);
        return TryHead(out var inner) && TrySkip(inner, depth + 1);
    }

    // Section 3.2.3: pieces of the same kind, each of definite length.
    private bool TryChunks(CborHead whole)
    {
        while (!TryBreak())
        {
            if (!TryHead(out var piece)) return false;
            if (piece.Major != whole.Major || piece.IsIndefinite) return Fail(CborFault.WrongChunk, piece.At);
            if (!TryString(piece, out _)) return false;
        }

        return true;
    }

    private bool TryBreak()
    {
        if (Fault != CborFault.None || Left == 0 || _bytes[Position] != 0xff) return false;
        Position++;
        return true;
    }

    private bool Fail(CborFault fault, int at)
    {
        (Fault, FaultAt) = (fault, at);
        return false;
    }

    private static ulong Argument(int low, ReadOnlySpan<byte> more) => more.Length switch
    {
        1 => more[0],
        2 => BinaryPrimitives.ReadUInt16BigEndian(more),
        4 => BinaryPrimitives.ReadUInt32BigEndian(more),
        8 => BinaryPrimitives.ReadUInt64BigEndian(more),
        _ => (ulong)low,
    };
}
