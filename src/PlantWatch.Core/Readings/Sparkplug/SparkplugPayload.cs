using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>Why a payload could not be read: a closed list, each with a test, and nothing else ever comes out, as the fuzz campaign sees.</summary>
public enum SparkplugFault : byte
{
    /// <summary>It was read.</summary>
    None = 0,
    /// <summary>No bytes at all.</summary>
    Empty,
    /// <summary>More than <see cref="SparkplugPayload.Largest"/>.</summary>
    TooLarge,
    /// <summary>No Protocol Buffers message; the detail names the <see cref="ProtoFault"/>.</summary>
    Malformed,
    /// <summary>A field of the format in another wire type than its own.</summary>
    WrongWire,
    /// <summary>A name that is not UTF-8.</summary>
    InvalidUtf8,
    /// <summary>A name longer than <see cref="SparkplugPayload.LongestName"/>.</summary>
    NameTooLong,
    /// <summary>More metrics than <see cref="SparkplugPayload.MostMetrics"/>.</summary>
    TooManyMetrics,
    /// <summary>A sequence number above 255.</summary>
    WrongSequence,
    /// <summary>A sending time that no calendar writes.</summary>
    WrongTime,
    /// <summary>Compressed in a way that is neither DEFLATE nor GZIP.</summary>
    UnknownAlgorithm,
    /// <summary>Said to be compressed, and its body cannot be inflated.</summary>
    BrokenCompression,
    /// <summary>It inflates to more than <see cref="SparkplugPayload.Largest"/>, or to more than <see cref="SparkplugPayload.LargestRatio"/> times its length.</summary>
    InflatesTooFar,
    /// <summary>Compressed within the compressed.</summary>
    CompressedTwice,
}

/// <summary>A payload of Sparkplug B, taken apart and bounded (Sparkplug 3.0.0, section 6.4; the field numbers are those of its schema, read by our own <see cref="ProtoReader"/>).</summary>
/// <remarks>
/// Fields that are not known are passed over. Of a field that stands twice the last one holds, as Protocol Buffers have it. Tables, structures, octets
/// and metadata are passed over unread: no reading is made of them. The specification knows no compression; what the wild sends is bounded and read.
/// </remarks>
public sealed record SparkplugPayload
{
    /// <summary>Most bytes of a payload, as it came and inflated: 1 MiB. A birth says every metric of a gateway at once, some hundred bytes each.</summary>
    public const int Largest = 1024 * 1024;

    /// <summary>How many times its length a compressed body may inflate to; births, which repeat themselves, reach about 20. DEFLATE can do 1032.</summary>
    public const int LargestRatio = 100;

    /// <summary>Most metrics of one payload: each costs far more memory than it has bytes.</summary>
    public const int MostMetrics = 16_384;

    /// <summary>Longest name of a metric, in bytes.</summary>
    public const int LongestName = 512;

    private SparkplugPayload()
    {
    }

    /// <summary>Why it could not be read; <see cref="SparkplugFault.None"/> when it was.</summary>
    public SparkplugFault Fault { get; private init; }

    /// <summary>What and where: a fault of the reader and a byte's place, a size. Short; empty without a fault.</summary>
    public string Detail { get; private init; } = "";

    /// <summary>When the edge node sent it, by its own clock; <see cref="Instant.Never"/> when it does not say.</summary>
    public Instant SentAt { get; private init; }

    /// <summary>The sequence number, 0 to 255; null where there is none, as in a death.</summary>
    public byte? Sequence { get; private init; }

    /// <summary>The metrics in the order of the payload; empty at a fault.</summary>
    public ImmutableArray<SparkplugMetric> Metrics { get; private init; } = [];

    /// <summary>Whether it came compressed.</summary>
    public bool WasCompressed { get; private init; }

    /// <summary>Decodes a payload. Never throws for anything that can arrive.</summary>
    public static SparkplugPayload Decode(ReadOnlySpan<byte> payload)
    {
        if (Screen(payload) is { } refused) return refused;
        var read = SparkplugReader.Read(payload);
        return read is { Fault: SparkplugFault.None, IsCompressed: true } ? Inflated(payload[read.Body], read.Algorithm) : Of(read);
    }

    private static SparkplugPayload? Screen(ReadOnlySpan<byte> payload) =>
        payload.IsEmpty ? Refused(SparkplugFault.Empty, "") : payload.Length > Largest ? Refused(SparkplugFault.TooLarge, $"> {Largest} B") : null;

    private static SparkplugPayload Inflated(ReadOnlySpan<byte> body, string? algorithm)
    {
        var fault = SparkplugInflater.Inflate(body, algorithm, out var plain);
        if (fault != SparkplugFault.None) return Refused(fault, $"{body.Length} B");
        if (Screen(plain.Span) is { } refused) return refused with { WasCompressed = true };
        var read = SparkplugReader.Read(plain.Span);
        return read is { Fault: SparkplugFault.None, IsCompressed: true } ? Refused(SparkplugFault.CompressedTwice, "") : Of(read) with { WasCompressed = true };
    }

    private static SparkplugPayload Of(in SparkplugRead read) => read.Fault != SparkplugFault.None
        ? Refused(read.Fault, read.Detail)
        : new() { SentAt = read.SentAt, Sequence = read.Sequence, Metrics = [.. read.Metrics] };

    private static SparkplugPayload Refused(SparkplugFault fault, string detail) => new() { Fault = fault, Detail = detail };
}
