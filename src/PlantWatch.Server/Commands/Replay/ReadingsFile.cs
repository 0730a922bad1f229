using System.Globalization;
using System.Text;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>The large table of readings, a line at a time: time, probe, value. Times repeat and so do probes, so that each is understood once.</summary>
internal sealed class ReadingsFile : IDisposable
{
    private readonly StreamReader _reader;
    private readonly Dictionary<string, string>.AlternateLookup<ReadOnlySpan<char>> _probes =
        new Dictionary<string, string>(StringComparer.Ordinal).GetAlternateLookup<ReadOnlySpan<char>>();

    private string _line = "";
    private string _time = "";

    public ReadingsFile(string path)
    {
        _reader = new StreamReader(path, Encoding.UTF8, true, 1 << 20);
        _reader.ReadLine();
        Next();
    }

    /// <summary>True while there is a reading.</summary>
    public bool Has { get; private set; }

    /// <summary>Its time.</summary>
    public Instant At { get; private set; }

    /// <summary>Its probe.</summary>
    public string Probe { get; private set; } = "";

    /// <summary>How much of the file was read, 0 to 1.</summary>
    public double Part => (double)_reader.BaseStream.Position / Math.Max(1, _reader.BaseStream.Length);

    /// <summary>The line as it stands.</summary>
    public string Line => _line;

    /// <summary>Its value as the device would send it.</summary>
    /// <exception cref="FormatException">It is no number.</exception>
    public byte[] Payload() => !double.TryParse(_line.AsSpan(_line.LastIndexOf(',') + 1), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value)
        ? throw new FormatException($"\"{CsvTable.Short(_line)}\" is no reading") : Encoding.ASCII.GetBytes(_line, _line.LastIndexOf(',') + 1, _line.Length - _line.LastIndexOf(',') - 1);

    /// <summary>Moves to the next one.</summary>
    public void Next()
    {
        string? line;
        do line = _reader.ReadLine();
        while (line is { Length: 0 });
        Has = line is not null && Understand(line);
    }

    public void Dispose() => _reader.Dispose();

    private bool Understand(string line)
    {
        _line = line;
        var first = line.IndexOf(',');
        var second = line.IndexOf(',', first + 1);
        if (first < 0 || second < 0) throw new FormatException($"\"{line}\" is no reading");
        if (!line.AsSpan(0, first).SequenceEqual(_time)) At = BenchFiles.Time(_time = line[..first]);
        var probe = line.AsSpan(first + 1, second - first - 1);
        if (!_probes.TryGetValue(probe, out var known)) _probes[probe] = known = probe.ToString();
        Probe = known;
        return true;
    }
}
