using System.Text;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>A row of the table of readings, as bytes: time, probe, value.</summary>
internal readonly ref struct ReadingRow
{
    private readonly ReadOnlySpan<byte> _line;
    private readonly int _first;
    private readonly int _second;

    private ReadingRow(ReadOnlySpan<byte> line, int first, int second)
    {
        _line = line;
        (_first, _second) = (first, second);
    }

    /// <summary>Its time.</summary>
    public ReadOnlySpan<byte> Time => _line[.._first];

    /// <summary>Its probe.</summary>
    public ReadOnlySpan<byte> Probe => _line[(_first + 1).._second];

    /// <summary>Where its value begins.</summary>
    public int Value => _line.LastIndexOf((byte)',') + 1;

    /// <summary>Takes the next line off a block, without the mark of its end.</summary>
    public static ReadOnlySpan<byte> Line(ReadOnlySpan<byte> block, out int taken)
    {
        var end = block.IndexOf((byte)'\n');
        taken = end < 0 ? block.Length : end + 1;
        var line = block[..(end < 0 ? block.Length : end)];
        return line is [.., (byte)'\r'] ? line[..^1] : line;
    }

    /// <summary>A row of a line; false when it has fewer than three fields.</summary>
    public static bool TryOf(ReadOnlySpan<byte> line, out ReadingRow row)
    {
        var first = line.IndexOf((byte)',');
        var second = first < 0 ? -1 : line[(first + 1)..].IndexOf((byte)',');
        row = second < 0 ? default : new ReadingRow(line, first, first + 1 + second);
        return second >= 0;
    }

    /// <summary>A line as it is shown to people.</summary>
    public static string Text(ReadOnlySpan<byte> line) => CsvTable.Short(Encoding.UTF8.GetString(line));
}
