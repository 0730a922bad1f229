using System.Globalization;
using System.Text;

namespace PlantWatch.Storage.Influx;

/// <summary>Readings as lines: measurement <c>reading</c>, tags circuit and probe, fields value, quality and lag, time in microseconds. Every field is a float.</summary>
/// <remarks>
/// Line protocol: InfluxData, docs-v2, content/shared/v3-line-protocol.md. The type of a field is fixed by what is written first, so an integer is never written. A point is known by measurement, tags
/// and time: writing it again changes nothing.
/// </remarks>
public static class LineProtocol
{
    /// <summary>The measurement.</summary>
    public const string Measurement = "reading";

    /// <summary>What every line of a series begins with.</summary>
    public static string Prefix(string circuit, string probe) => $"{Measurement},circuit={Escape(NameOf(circuit))},probe={Escape(NameOf(probe))} value=";

    /// <summary>A reading as a line.</summary>
    public static string Line(string prefix, in StoredReading reading)
    {
        var lag = reading.ReceivedAt.UnixMicroseconds - reading.MeasuredAt.UnixMicroseconds;
        return string.Create(CultureInfo.InvariantCulture, $"{prefix}{reading.Raw},quality={(int)reading.Quality},lag={lag} {reading.MeasuredAt.UnixMicroseconds}");
    }

    /// <summary>Readings of a series as one text of as many lines: cheaper than a text a line.</summary>
    public static string Lines(string prefix, IReadOnlyList<StoredReading> readings)
    {
        ArgumentNullException.ThrowIfNull(prefix);
        ArgumentNullException.ThrowIfNull(readings);
        var text = new StringBuilder(readings.Count * (prefix.Length + 60));
        for (var i = 0; i < readings.Count; i++)
        {
            var (reading, t) = (readings[i], readings[i].MeasuredAt.UnixMicroseconds);
            if (i > 0) text.Append('\n');
            text.Append(CultureInfo.InvariantCulture, $"{prefix}{reading.Raw},quality={(int)reading.Quality},lag={reading.ReceivedAt.UnixMicroseconds - t} {t}");
        }

        return text.ToString();
    }

    /// <summary>A name as a tag can hold it: a backslash at its end would take the next sign along, and a line end the rest of the line.</summary>
    public static string NameOf(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.AsSpan().IndexOfAnyInRange('\0', '\x1F') < 0 && !name.Contains('\\', StringComparison.Ordinal) ? name : string.Concat(name.Select(c => c is '\\' or < ' ' ? '_' : c));
    }

    private static string Escape(string name) =>
        name.AsSpan().IndexOfAny(',', '=', ' ') < 0 ? name : name.Replace(",", @"\,", StringComparison.Ordinal).Replace("=", @"\=", StringComparison.Ordinal).Replace(" ", @"\ ", StringComparison.Ordinal);
}
