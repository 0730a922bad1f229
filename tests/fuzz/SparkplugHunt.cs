using System.Diagnostics;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Sparkplug;

namespace PlantWatch.Fuzz;

/// <summary>What a hunt through Sparkplug found.</summary>
internal sealed record SparkplugCatch
{
    public long Mutations { get; set; }

    /// <summary>Payloads that were read.</summary>
    public long Read { get; set; }

    public long Readings { get; set; }

    /// <summary>Refused payloads, a fault at a time.</summary>
    public Dictionary<SparkplugFault, long> Refused { get; } = [];

    /// <summary>Notes of the session, a kind at a time.</summary>
    public Dictionary<SparkNoteKind, long> Notes { get; } = [];

    /// <summary>The most memory that one payload cost to decode, and how long it was.</summary>
    public (long Allocated, int Length) Dearest { get; set; }

    public double MostOfAllowed { get; set; }

    public TimeSpan Took { get; set; }

    public long Broken { get; set; }

    public List<string> Samples { get; } = [];
}

/// <summary>Mutates payloads of an edge node, decodes them, and puts what was decoded through the session of the node, whatever it says.</summary>
internal sealed class SparkplugHunt(int seed)
{
    public const string Name = "Sparkplug B";

    private const int Longest = 64 * 1024;
    private const int Hours = 24;

    private static readonly SparkRules Rules = new() { MayAskForRebirth = true };
    private static readonly SparkplugKind[] Kinds =
    [
        .. Enumerable.Repeat(SparkplugKind.NodeData, 9), .. Enumerable.Repeat(SparkplugKind.DeviceData, 3), SparkplugKind.NodeBirth, SparkplugKind.DeviceBirth, SparkplugKind.DeviceDeath, SparkplugKind.NodeDeath,
    ];

    private readonly Mutator _mutator = new(seed, Dictionary, Longest);
    private readonly SparkplugCatch _catch = new();
    private SparkNodeState _state = SparkNodeState.Of("hall", "gateway");
    private Instant _now = Target.Arrival;

    public static IReadOnlyList<byte[]> Seeds { get; } =
    [
        // A birth: bdSeq, pH under alias 1, a switch; and one of a device.
        [.. Hex("0880d0eab6b733"), .. Metric("0a056264536571 2004 5800"), .. Metric("0a027048 1001 1880d0eab6b733 200a 69d7a3703d0ad71c40"), .. Metric("0a04466c6f77 1002 200b 7001"), .. Hex("1800")],
        [.. Hex("0882d0eab6b733"), .. Metric("0a055265646f78 100a 2002 508305"), .. Hex("1801")],
        // Values by alias and by name; of the past, null, transient, with a quality of its own, of another type, twice.
        [.. Hex("0881d0eab6b733"), .. Metric("1001 691e85eb51b81e1d40"), .. Metric("0a04466c6f77 7000"), .. Hex("1802")],
        [.. Metric("1001 2801 18f0f38eb5b733 690000000000001c40"), .. Metric("1001 3801"), .. Metric("1001 3001 690000000000001c40"), .. Hex("1803")],
        [.. Metric("1001 4a10 0a075175616c697479 1205 0803 18f403 690000000000001c40"), .. Metric("1001 2003 5007"), .. Metric("1001 18ffffffffffffffffff01 690000000000001c40"), .. Hex("1803")],
        [.. Hex("0883d0eab6b733"), .. Metric("100a 5083ffffff0f"), .. Metric("1063 5001"), .. Hex("1804")],
        // Deaths.
        Hex("0884d0eab6b733 1805"), Metric("0a056264536571 5800"), Metric("0a056264536571 2004 5801"),
        // Compressed, once and twice and too far, by another algorithm and not at all.
        Compressed([.. Metric("1001 691e85eb51b81e1d40"), 0x18, 0x06]), Compressed(Compressed([0x18, 0x01])), Compressed(new byte[8192]),
        [.. Metric("0a09616c676f726974686d 7a0642524f544c49"), .. Compressed([0x18, 0x01])], [.. Metric("0a09616c676f726974686d 7a04475a4950"), .. Compressed([0x18, 0x01])],
        // Too great a number and time; a name that is no UTF-8, and one that is too long; a group; nothing; many.
        Hex("18ff7f"), Hex("08ffffffffffffffffff01"), Metric("0a02c328"), [0x12, 0x84, 0x04, 0x0a, 0x81, 0x04, .. Enumerable.Repeat((byte)'n', 513)], Hex("2b 0801 33 34 2c"), [], Hex("1200 1200"),
    ];

    // More metrics than a payload may have: too dear to be a seed.
    private static readonly byte[] Many = [.. Enumerable.Range(0, 2 * (SparkplugPayload.MostMetrics + 100)).Select(i => (byte)(i % 2 == 0 ? 0x12 : 0))];

    private static IReadOnlyList<byte[]> Dictionary { get; } =
    [
        .. new[]
        {
            "08", "12", "18", "1800", "1801", "18ff01", "22", "2a", "0a", "10", "1001", "100a", "20", "200a", "2801", "3001", "3801", "4a", "50", "58", "65", "69", "70", "7a", "8201", "8a01", "9201", "9a01", "1200", "12020a00",
            "2b", "2c", "33", "34", "80", "ff", "ffffffffffffffffff01", "ffffffff0f", "80d0eab6b733", "0a02704810012009", "0a075175616c697479", "08031800", "690000000000f87f", "65 0000807f", "0a056264536571", "5801",
        }.Select(Hex),
    ];

    /// <summary>What a payload of some length may allocate: the same as for the other decoders, and what it may inflate to.</summary>
    public static long Allowed(int length) => Examination.AnyPayload + (Examination.EachByte * Math.Min(SparkplugPayload.Largest, 8192 + ((long)length * SparkplugPayload.LargestRatio)));

    /// <summary>Runs so many mutations.</summary>
    public SparkplugCatch Run(long mutations, Action<long>? told = null)
    {
        foreach (var payload in Seeds) SparkplugPayload.Decode(payload);
        var watch = Stopwatch.StartNew();
        foreach (var payload in Seeds) One(payload);
        for (var i = 1L; i <= mutations; i++)
        {
            One(_mutator.Mutate(Any(), Any()).ToArray());
            if (i % 32 == 0) BeBorn();
            if (i % 5000 == 0) One(_mutator.Mutate(Many, Any()).ToArray());
            if (i % 100_000 == 0) told?.Invoke(i);
        }

        (_catch.Mutations, _catch.Took) = (mutations, watch.Elapsed);
        return _catch;
    }

    private SparkplugKind AnyKind() => Kinds[_mutator.Below(Kinds.Length)];

    private byte[] Any() => Seeds[_mutator.Below(Seeds.Count)];

    private void One(byte[] bytes)
    {
        try
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            var payload = SparkplugPayload.Decode(bytes);
            var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
            if (allocated > Allowed(bytes.Length)) Break($"allocated {allocated:N0} bytes", bytes);
            if (allocated > _catch.Dearest.Allocated) _catch.Dearest = (allocated, bytes.Length);
            _catch.MostOfAllowed = Math.Max(_catch.MostOfAllowed, (double)allocated / Allowed(bytes.Length));
            Count(payload, bytes);
            // As it is, and half of the time where the session expects it next.
            Step(AnyKind(), payload, bytes);
            if (payload.Fault == SparkplugFault.None && _mutator.Below(2) == 0) Step(AnyKind(), SparkplugPayload.Decode([.. bytes, 0x18, .. Varint(_state.Next)]), bytes);
        }
        catch (Exception e)
        {
            Break($"threw {e.GetType().Name}: {e.Message}", bytes);
        }
    }

    // What is refused as a whole says little: now and then the node and its device are born as they should be.
    private void BeBorn()
    {
        Step(SparkplugKind.NodeBirth, SparkplugPayload.Decode([.. Seeds[0], 0x08, .. Varint((ulong)_now.UnixMilliseconds)]), Seeds[0]);
        Step(SparkplugKind.DeviceBirth, SparkplugPayload.Decode(Seeds[1]), Seeds[1]);
    }

    private void Count(SparkplugPayload payload, byte[] bytes)
    {
        if (payload.Fault == SparkplugFault.None) _catch.Read++;
        else _catch.Refused[payload.Fault] = _catch.Refused.GetValueOrDefault(payload.Fault) + 1;
        if (payload.Fault != SparkplugFault.None && (!payload.Metrics.IsEmpty || payload.Sequence is not null)) Break("refused and gave something", bytes);
        if (payload.Detail.Length > 120 || payload.Detail.Any(char.IsControl)) Break("has a detail that is none", bytes);
        if (payload.Metrics.Length > SparkplugPayload.MostMetrics) Break("gave too many metrics", bytes);
    }

    private void Step(SparkplugKind kind, SparkplugPayload payload, byte[] bytes)
    {
        // Now and then long enough for a gap to be given up; sometimes backwards.
        _now += TimeSpan.FromMilliseconds(_mutator.Below(64) switch { 0 => 2500, 1 => -100, _ => 5 });
        var device = kind is >= SparkplugKind.DeviceBirth and <= SparkplugKind.DeviceCommand ? "probe" : "";
        var step = SparkNode.Step(_state, new(new(kind, "hall", "gateway", device), payload), _now, Rules);
        foreach (var note in step.Notes) _catch.Notes[note.Kind] = _catch.Notes.GetValueOrDefault(note.Kind) + 1;
        foreach (var reading in step.Readings)
            if (Fault(reading) is { } fault) Break(fault, bytes);
        _catch.Readings += step.Readings.Length;
        _state = step.Next;
        if (_state.Held.Length > SparkNodeState.MostHeld) Break("holds too many messages", bytes);
        if (_now - Target.Arrival > TimeSpan.FromHours(Hours)) _now = Target.Arrival;
    }

    private static string? Fault(in SparkReading reading)
    {
        if (!double.IsFinite(reading.Value)) return $"gave {reading.Value} as a reading";
        if (reading.Value == 0 && double.IsNegative(reading.Value)) return "gave a nought below nought";
        if (reading.Metric.Length == 0) return "gave a reading of no name";
        return reading.MeasuredAt.IsSet && reading.MeasuredAt.ToString().Length > 0 ? null : "gave a time that is none";
    }

    private void Break(string fault, byte[] payload)
    {
        if (_catch.Broken++ < 10) _catch.Samples.Add($"{Name} {fault}: {Convert.ToHexStringLower(payload.AsSpan(0, Math.Min(payload.Length, 400)))}");
    }

    private static byte[] Hex(string hex) => Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal));

    private static byte[] Metric(string fields) => [0x12, (byte)Hex(fields).Length, .. Hex(fields)];

    private static byte[] Varint(ulong value) => value < 0x80 ? [(byte)value] : [(byte)(value | 0x80), .. Varint(value >> 7)];

    private static byte[] Compressed(byte[] plain)
    {
        using var packed = new MemoryStream();
        using (var zip = new System.IO.Compression.ZLibStream(packed, System.IO.Compression.CompressionLevel.Optimal)) zip.Write(plain);
        var body = packed.ToArray();
        return [0x22, 18, .. "SPBV1.0_COMPRESSED"u8, 0x2a, (byte)body.Length, .. body];
    }
}
