using System.Globalization;
using Microsoft.Win32.SafeHandles;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>The readings of one pool, a row at a time, without making anything for a row. Times repeat, so that each is understood once.</summary>
internal sealed class ReadingsFile
{
    private readonly LineBlocks _blocks;
    private readonly ProbeNames _probes;
    private readonly Action<int> _read;
    private readonly byte[] _time = new byte[64];
    private int _timeLength;
    private ReadOnlyMemory<byte> _block;
    private int _from;
    private int _next;
    private int _length;

    /// <summary>Opens a section; <paramref name="read"/> hears of every block how many bytes it has.</summary>
    public ReadingsFile(SafeFileHandle file, ReadingSections.Section section, IEnumerable<string> probes, Action<int> read)
    {
        (_blocks, _probes, _read) = (new LineBlocks(file, section.From, section.To), new ProbeNames(probes), read);
        Next();
    }

    /// <summary>True while there is a reading.</summary>
    public bool Has { get; private set; }

    /// <summary>Its time.</summary>
    public Instant At { get; private set; }

    /// <summary>Its probe.</summary>
    public string Probe { get; private set; } = "";

    /// <summary>Its value as the device would send it.</summary>
    public ReadOnlyMemory<byte> Payload { get; private set; }

    /// <summary>The line as it stands, for people.</summary>
    public string Line => ReadingRow.Text(Bytes);

    private ReadOnlySpan<byte> Bytes => _block.Span.Slice(_from, _length);

    /// <summary>Moves to the next one.</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public void Next()
    {
        do Has = Advance();
        while (Has && _length == 0);
        if (Has) Understand();
    }

    private bool Advance()
    {
        if (_next >= _block.Length)
        {
            (_block, _next) = (_blocks.Next(), 0);
            if (_block.IsEmpty) return false;
            _read(_block.Length);
        }

        _from = _next;
        _length = ReadingRow.Line(_block.Span[_from..], out var taken).Length;
        _next += taken;
        return true;
    }

    private void Understand()
    {
        if (!ReadingRow.TryOf(Bytes, out var row)) throw new FormatException($"\"{Line}\" is no reading");
        if (!row.Time.SequenceEqual(_time.AsSpan(0, _timeLength))) Clock(row.Time);
        Probe = _probes.Find(row.Probe) ?? throw new FormatException($"readings.csv: \"{Line}\" is of another pool");
        Payload = _block.Slice(_from + row.Value, _length - row.Value);
        if (!double.TryParse(Payload.Span, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value)) throw new FormatException($"\"{Line}\" is no reading");
    }

    private void Clock(ReadOnlySpan<byte> time)
    {
        At = BenchFiles.Time(time);
        _timeLength = 0;
        if (time.Length <= _time.Length && time.TryCopyTo(_time)) _timeLength = time.Length;
    }
}
