using System.Text;
using System.Text.Json;

namespace PlantWatch.Simulator.Wire;

/// <summary>Writes SenML JSON packs (RFC 8428): the first record carries base name and base time, the others names and times relative to them.</summary>
internal sealed class SenmlPack(string baseName)
{
    private readonly List<(string Name, string Unit, DateTimeOffset At, double Value)> _records = [];

    /// <summary>Records so far.</summary>
    public int Count => _records.Count;

    /// <summary>Time of the first record.</summary>
    public DateTimeOffset First => _records[0].At;

    /// <summary>Adds a reading.</summary>
    public void Add(string name, string unit, DateTimeOffset at, double value) => _records.Add((name, unit, at, value));

    /// <summary>The pack as bytes; the pack is empty afterwards.</summary>
    public byte[] Take()
    {
        var buffer = new System.Buffers.ArrayBufferWriter<byte>(64 * _records.Count);
        using (var json = new Utf8JsonWriter(buffer)) Write(json);
        _records.Clear();
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>A pack whose one value is no number. JSON has no word for it, so no pack with good readings may contain it.</summary>
    public static byte[] NotANumber(string baseName, string name, DateTimeOffset at) =>
        Encoding.UTF8.GetBytes(FormattableString.Invariant($$"""[{"bn":"{{baseName}}","bt":{{Seconds(at)}},"n":"{{name}}","v":NaN}]"""));

    private void Write(Utf8JsonWriter json)
    {
        var start = _records[0].At;
        json.WriteStartArray();
        for (var i = 0; i < _records.Count; i++)
        {
            var (name, unit, at, value) = _records[i];
            json.WriteStartObject();
            if (i == 0)
            {
                json.WriteString("bn", baseName);
                json.WriteNumber("bt", Seconds(start));
            }
            json.WriteString("n", name);
            json.WriteString("u", unit);
            if (at != start) json.WriteNumber("t", (decimal)(at - start).TotalMilliseconds / 1000);
            json.WriteNumber("v", (decimal)value);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    // Seconds since 1970 with milliseconds; decimal, so that no digit is invented.
    private static decimal Seconds(DateTimeOffset at) => at.ToUnixTimeMilliseconds() / 1000m;
}
