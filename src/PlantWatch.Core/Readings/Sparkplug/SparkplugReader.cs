using System.Text;
using System.Text.Unicode;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>Reads the fields of a payload and of its metrics. The first fault stands and ends the reading.</summary>
internal ref struct SparkplugReader
{
    // 9999-12-31T23:59:59.999Z, beyond which no time can be written.
    public const long LastMillisecond = 253_402_300_799_999;
    private const int LongestWord = 32;

    private readonly ReadOnlySpan<byte> _payload;
    private SparkplugRead _read = new();

    private SparkplugReader(ReadOnlySpan<byte> payload) => _payload = payload;

    public static SparkplugRead Read(ReadOnlySpan<byte> payload)
    {
        var reader = new SparkplugReader(payload);
        reader.ReadPayload();
        return reader._read;
    }

    private void ReadPayload()
    {
        var proto = new ProtoReader(_payload, 0, _payload.Length);
        while (_read.Fault == SparkplugFault.None && proto.TryField(out var field)) Take(field);
        Note((proto.Fault, proto.FaultAt));
    }

    private void Take(in ProtoField field)
    {
        switch (field.Number)
        {
            case SparkplugRead.SentAtField when Is(field, ProtoWire.Varint):
                if (!TryTime(field.Bits, out _read.SentAt)) Fail(SparkplugFault.WrongTime, $"{field.Bits}");
                break;
            case SparkplugRead.MetricsField when Is(field, ProtoWire.Bytes):
                if (_read.Metrics.Count == SparkplugPayload.MostMetrics) Fail(SparkplugFault.TooManyMetrics, $"> {SparkplugPayload.MostMetrics}");
                else _read.Metrics.Add(ReadMetric(field));
                break;
            case SparkplugRead.SequenceField when Is(field, ProtoWire.Varint):
                if (field.Bits > byte.MaxValue) Fail(SparkplugFault.WrongSequence, $"{field.Bits}");
                else _read.Sequence = (byte)field.Bits;
                break;
            case SparkplugRead.UuidField when Is(field, ProtoWire.Bytes):
                _read.IsCompressed = Of(field).SequenceEqual("SPBV1.0_COMPRESSED"u8);
                break;
            case SparkplugRead.BodyField when Is(field, ProtoWire.Bytes):
                _read.Body = field.Start..field.End;
                break;
        }
    }

    private SparkplugMetric ReadMetric(in ProtoField within)
    {
        var metric = default(SparkplugMetric);
        var proto = new ProtoReader(_payload, within.Start, within.End);
        while (_read.Fault == SparkplugFault.None && proto.TryField(out var field)) metric = With(metric, field);
        Note((proto.Fault, proto.FaultAt));
        return metric;
    }

    private SparkplugMetric With(in SparkplugMetric metric, in ProtoField field) => field.Number switch
    {
        SparkplugRead.Name when Is(field, ProtoWire.Bytes) => metric with { Name = NameOf(field) },
        SparkplugRead.Alias when Is(field, ProtoWire.Varint) => metric with { Alias = field.Bits },
        SparkplugRead.CapturedAt when Is(field, ProtoWire.Varint) => TryTime(field.Bits, out var at) ? metric with { CapturedAt = at, HasWrongTime = false } : metric with { HasWrongTime = true },
        // A uint32 of the schema is the lower half of what was written.
        SparkplugRead.DataType when Is(field, ProtoWire.Varint) => metric with { Type = TypeOf((uint)field.Bits) },
        SparkplugRead.Historical when Is(field, ProtoWire.Varint) => metric with { IsHistorical = field.Bits != 0 },
        SparkplugRead.Transient when Is(field, ProtoWire.Varint) => metric with { IsTransient = field.Bits != 0 },
        SparkplugRead.Null when Is(field, ProtoWire.Varint) => metric with { IsNull = field.Bits != 0 },
        SparkplugRead.Properties when Is(field, ProtoWire.Bytes) => metric with { Quality = QualityOf(field) },
        >= (uint)SparkplugField.Int and <= (uint)SparkplugField.Extension => WithValue(metric, field, (SparkplugField)field.Number),
        _ => metric,
    };

    private SparkplugMetric WithValue(in SparkplugMetric metric, in ProtoField field, SparkplugField value)
    {
        var wire = value switch
        {
            SparkplugField.Int or SparkplugField.Long or SparkplugField.Boolean => ProtoWire.Varint,
            SparkplugField.Float => ProtoWire.Fixed32,
            SparkplugField.Double => ProtoWire.Fixed64,
            _ => ProtoWire.Bytes,
        };
        if (!Is(field, wire)) return metric;
        var bits = value == SparkplugField.Int ? (uint)field.Bits : field.Bits;
        return metric with { Field = value, Bits = bits, Word = value == SparkplugField.String && field.Length <= LongestWord ? Encoding.UTF8.GetString(Of(field)) : null };
    }

    private string? NameOf(in ProtoField field)
    {
        var name = Of(field);
        if (name.Length > SparkplugPayload.LongestName) Fail(SparkplugFault.NameTooLong, $"{name.Length} B @ {field.At}");
        else if (!Utf8.IsValid(name)) Fail(SparkplugFault.InvalidUtf8, PayloadText.ByteAt(_payload, field.Start + PayloadText.FirstInvalid(name)));
        return _read.Fault == SparkplugFault.None ? Encoding.UTF8.GetString(name) : null;
    }

    private SparkplugQuality QualityOf(in ProtoField properties)
    {
        var quality = SparkplugProperties.QualityOf(_payload, properties, out var fault);
        Note(fault);
        return quality;
    }

    private readonly ReadOnlySpan<byte> Of(in ProtoField field) => _payload[field.Start..field.End];

    private bool Is(in ProtoField field, ProtoWire wire)
    {
        if (field.Wire != wire) Fail(SparkplugFault.WrongWire, $"{field.Number} @ {field.At}");
        return field.Wire == wire;
    }

    private void Note((ProtoFault Fault, int At) proto)
    {
        if (proto.Fault != ProtoFault.None) Fail(SparkplugFault.Malformed, $"{proto.Fault} @ {proto.At}");
    }

    private void Fail(SparkplugFault fault, string detail)
    {
        if (_read.Fault == SparkplugFault.None) (_read.Fault, _read.Detail) = (fault, detail);
    }

    // 0 is no time but a clock that was never set.
    private static bool TryTime(ulong milliseconds, out Instant at)
    {
        at = milliseconds <= (ulong)LastMillisecond ? Instant.FromUnixMilliseconds((long)milliseconds) : Instant.Never;
        return milliseconds <= (ulong)LastMillisecond;
    }

    private static SparkplugType TypeOf(uint type) => type <= LastType ? (SparkplugType)type : SparkplugType.Unknown;

    // DateTimeArray.
    private const uint LastType = 34;
}
