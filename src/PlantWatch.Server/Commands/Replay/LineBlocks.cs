using Microsoft.Win32.SafeHandles;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>A part of a large text file in blocks of whole lines. A block is never written again once it was handed out, so that what points into it stays as it was.</summary>
internal sealed class LineBlocks(SafeFileHandle file, long from, long to)
{
    // Below the size from which arrays are collected late.
    private const int Usual = 64 * 1024;
    private const int Longest = 1 << 20;
    private long _next = from;

    /// <summary>Where the block begins that was handed out last.</summary>
    public long Start { get; private set; } = from;

    /// <summary>The next lines; empty at the end. A line longer than any row can be comes in pieces.</summary>
    public ReadOnlyMemory<byte> Next()
    {
        Start = _next;
        for (var size = Usual; ; size *= 4)
        {
            var length = (int)Math.Min(size, to - _next);
            if (length <= 0) return default;
            var bytes = new byte[length];
            var read = Fill(bytes);
            var end = _next + read >= to || read < length ? read : bytes.AsSpan(0, read).LastIndexOf((byte)'\n') + 1;
            if (end == 0 && size < Longest) continue;
            if (end == 0) end = read;
            _next += end;
            return bytes.AsMemory(0, end);
        }
    }

    private int Fill(byte[] bytes)
    {
        var read = 0;
        while (read < bytes.Length && RandomAccess.Read(file, bytes.AsSpan(read), _next + read) is > 0 and var more) read += more;
        return read;
    }
}
