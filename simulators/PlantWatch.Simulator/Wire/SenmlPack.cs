using System.Text;
using System.Text.Json;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.Wire;

/// <summary>Writes SenML packs (RFC 8428) in JSON or CBOR: the first record carries base name and base time, the others names and times relative to them.</summary>
internal sealed class SenmlPack(string baseName, PackForm form)
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
        if (form == PackForm.Cbor) Write(new CborBytes(buffer));
        else
            using (var json = new Utf8JsonWriter(buffer)) Write(json);
        _records.Clear();
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>A pack whose one value is no number. JSON has no word for it, so no pack with good readings may contain it.</summary>
    public static byte[] NotANumber(string baseName, string name, DateTimeOffset at, PackForm form)
    {
        if (form == PackForm.Json) return Encoding.UTF8.GetBytes(FormattableString.Invariant($$"""[{"bn":"{{baseName}}","bt":{{Seconds(at)}},"n":"{{name}}","v":NaN}]"""));
        var pack = new SenmlPack(baseName, form);
        pack.Add(name, "", at, double.NaN);
        return pack.Take();
    }

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

    // Section 6: integers for the labels, a decimal fraction for what has decimals. What a probe shows is decimal, and so nothing is rounded.
    private void Write(CborBytes cbor)
    {
        var start = _records[0].At;
        cbor.Array(_records.Count);
        for (var i = 0; i < _records.Count; i++)
        {
            var (name, unit, at, value) = _records[i];
            cbor.Map((i == 0 ? 2 : 0) + (unit.Length > 0 ? 1 : 0) + (at != start ? 1 : 0) + 2);
            if (i == 0)
            {
                cbor.Field(-2, baseName);
                cbor.Field(-3, Seconds(start));
            }
            cbor.Field(0, name);
            if (unit.Length > 0) cbor.Field(1, unit);
            if (at != start) cbor.Field(6, (decimal)(at - start).TotalMilliseconds / 1000);
            if (double.IsNaN(value)) cbor.FieldOfNoNumber(2);
            else cbor.Field(2, (decimal)value);
        }
    }

    // Seconds since 1970 with milliseconds; decimal, so that no digit is invented.
    private static decimal Seconds(DateTimeOffset at) => at.ToUnixTimeMilliseconds() / 1000m;
}
