using System.Text;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Sparkplug;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>Writes payloads field by field, independently of the reader: Protocol Buffers encoding and the field numbers of Sparkplug 3.0.0, section 6.4.1.</summary>
internal static class Spark
{
    public static readonly Instant Start = Instant.FromUtc(2026, 3, 1, 7);

    public static byte[] Varint(ulong value)
    {
        List<byte> bytes = [];
        for (; value >= 0x80; value >>= 7) bytes.Add((byte)(value | 0x80));
        return [.. bytes, (byte)value];
    }

    public static byte[] Number(int field, ulong value) => [.. Varint(((ulong)field << 3) | 0), .. Varint(value)];

    public static byte[] Bytes(int field, byte[] content) => [.. Varint(((ulong)field << 3) | 2), .. Varint((ulong)content.Length), .. content];

    public static byte[] Text(int field, string text) => Bytes(field, Encoding.UTF8.GetBytes(text));

    public static byte[] Fixed32(int field, uint bits) => [.. Varint(((ulong)field << 3) | 5), .. BitConverter.GetBytes(bits)];

    public static byte[] Fixed64(int field, ulong bits) => [.. Varint(((ulong)field << 3) | 1), .. BitConverter.GetBytes(bits)];

    public static byte[] I32(ulong bits) => Number(10, bits);

    public static byte[] I64(ulong bits) => Number(11, bits);

    public static byte[] F32(float value) => Fixed32(12, BitConverter.SingleToUInt32Bits(value));

    public static byte[] F64(double value) => Fixed64(13, BitConverter.DoubleToUInt64Bits(value));

    public static byte[] Flag(bool value) => Number(14, value ? 1UL : 0);

    public static byte[] Historical => Number(5, 1);

    public static byte[] Transient => Number(6, 1);

    public static byte[] Null => Number(7, 1);

    public static byte[] QualityCode(ulong code, ulong type = 3) => Bytes(9, [.. Text(1, "Quality"), .. Bytes(2, [.. Number(1, type), .. Number(3, code)])]);

    public static byte[] At(Instant at) => Number(3, (ulong)at.UnixMilliseconds);

    public static byte[] Alias(ulong alias) => Number(2, alias);

    public static byte[] Typed(SparkplugType type) => Number(4, (ulong)type);

    public static byte[] Named(string name, params byte[][] fields) => Bytes(2, [.. Text(1, name), .. fields.SelectMany(f => f)]);

    public static byte[] Nameless(params byte[][] fields) => Bytes(2, [.. fields.SelectMany(f => f)]);

    public static byte[] Payload(Instant? sentAt, int? sequence, params byte[][] metrics) =>
        [.. sentAt is { } at ? Number(1, (ulong)at.UnixMilliseconds) : [], .. metrics.SelectMany(m => m), .. sequence is { } number ? Number(3, (ulong)number) : []];

    public static byte[] Compressed(byte[] body, string? algorithm) => [.. Text(4, "SPBV1.0_COMPRESSED"), .. Bytes(5, body), .. algorithm is null ? [] : Named("algorithm", Typed(SparkplugType.String), Text(15, algorithm))];

    public static SparkplugMetric Metric(params byte[][] fields) => Assert.Single(Read(Payload(null, null, Nameless(fields))).Metrics);

    public static SparkplugPayload Read(byte[] payload)
    {
        var read = SparkplugPayload.Decode(payload);
        Assert.True(read.Fault == SparkplugFault.None, $"{read.Fault} {read.Detail}");
        return read;
    }

    public static byte[] Hex(string hex) => SenmlC.Bytes(hex);
}

/// <summary>An edge node that keeps to the specification: numbers its messages over itself and its devices, and says them by alias where it gave one.</summary>
internal sealed class SparkEdge
{
    public const string Group = "hall", Node = "gateway";

    public int Sequence { get; set; }

    public ulong Session { get; set; }

    public Instant Clock { get; set; } = Spark.Start;

    /// <summary>pH under alias 1, Temperature without one.</summary>
    public SparkMessage Birth(double ph = 7.2)
    {
        Sequence = 0;
        return Says(SparkplugKind.NodeBirth, "", Spark.Named("bdSeq", Spark.Typed(SparkplugType.Int64), Spark.I64(Session)), Spark.Named("Node Control/Rebirth", Spark.Typed(SparkplugType.Boolean), Spark.Flag(false)),
            Spark.Named("pH", Spark.Alias(1), Spark.Typed(SparkplugType.Double), Spark.At(Clock), Spark.F64(ph)), Spark.Named("Temperature", Spark.Typed(SparkplugType.Float), Spark.At(Clock), Spark.F32(28.5f)));
    }

    /// <summary>Redox under alias 10, of a device.</summary>
    public SparkMessage DeviceBirth(string device = "probe", ulong alias = 10) =>
        Says(SparkplugKind.DeviceBirth, device, Spark.Named("Redox", Spark.Alias(alias), Spark.Typed(SparkplugType.Int16), Spark.At(Clock), Spark.I32(700)));

    public SparkMessage DeviceDeath(string device = "probe") => Says(SparkplugKind.DeviceDeath, device);

    public SparkMessage Ph(double value) => Says(SparkplugKind.NodeData, "", Spark.Nameless(Spark.Alias(1), Spark.At(Clock), Spark.F64(value)));

    public SparkMessage Temperature(float value) => Says(SparkplugKind.NodeData, "", Spark.Named("Temperature", Spark.At(Clock), Spark.F32(value)));

    public SparkMessage Redox(int value, string device = "probe", ulong alias = 10) =>
        Says(SparkplugKind.DeviceData, device, Spark.Nameless(Spark.Alias(alias), Spark.At(Clock), Spark.I32((ulong)(uint)value)));

    public SparkMessage Data(params byte[][] metrics) => Says(SparkplugKind.NodeData, "", metrics);

    /// <summary>As the broker says it: only the number of the session.</summary>
    public SparkMessage Death() => Of(SparkplugKind.NodeDeath, "", Spark.Payload(null, null, Spark.Named("bdSeq", Spark.Typed(SparkplugType.Int64), Spark.I64(Session))));

    public SparkMessage Says(SparkplugKind kind, string device, params byte[][] metrics)
    {
        Clock += TimeSpan.FromMilliseconds(100);
        var message = Of(kind, device, Spark.Payload(Clock, Sequence, metrics));
        Sequence = (Sequence + 1) % 256;
        return message;
    }

    public static SparkMessage Of(SparkplugKind kind, string device, byte[] payload) => new(new(kind, Group, Node, device), SparkplugPayload.Decode(payload));
}

/// <summary>A host that listens to one edge node, and all that came of it.</summary>
internal sealed class SparkHost(SparkRules? rules = null)
{
    public static readonly SparkRules Asking = new() { MayAskForRebirth = true };

    public SparkNodeState State { get; private set; } = SparkNodeState.Of(SparkEdge.Group, SparkEdge.Node);

    public Instant Now { get; private set; } = Spark.Start + TimeSpan.FromHours(1);

    public List<SparkReading> Readings { get; } = [];

    public List<SparkNote> Notes { get; } = [];

    public int Rebirths { get; private set; }

    public IEnumerable<SparkNoteKind> Kinds => Notes.Select(n => n.Kind);

    public IEnumerable<double> Values => Readings.Select(r => r.Value);

    public SparkHost Hears(params SparkMessage[] messages)
    {
        foreach (var message in messages)
        {
            Now += TimeSpan.FromMilliseconds(10);
            Take(SparkNode.Step(State, message, Now, rules ?? new()));
        }

        return this;
    }

    public SparkHost Waits(double seconds)
    {
        Now += TimeSpan.FromSeconds(seconds);
        Take(SparkNode.Tick(State, Now, rules ?? new()));
        return this;
    }

    /// <summary>Forgets what came so far, and keeps the state.</summary>
    public SparkHost Then()
    {
        Readings.Clear();
        Notes.Clear();
        Rebirths = 0;
        return this;
    }

    private void Take(SparkStep step)
    {
        State = step.Next;
        Readings.AddRange(step.Readings);
        Notes.AddRange(step.Notes);
        if (step.Rebirth is not null) Rebirths++;
    }
}
