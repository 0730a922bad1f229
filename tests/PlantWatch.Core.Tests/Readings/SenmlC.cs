using System.Formats.Cbor;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>Short forms for the tests of SenML in CBOR. Packs are written by the platform's own encoder, which knows nothing of ours.</summary>
internal static class SenmlC
{
    public static List<DecodedItem> Decode(byte[] payload)
    {
        var items = new List<DecodedItem>();
        SenmlCbor.Decode(payload, Senml.Arrival, items);
        return items;
    }

    public static List<DecodedItem> Decode(string hex) => Decode(Bytes(hex));

    public static DecodedItem Refused(string hex) => Assert.Single(Decode(hex));

    /// <summary>The samples of a pack that must hold nothing else.</summary>
    public static List<RawSample> Samples(byte[] payload)
    {
        var items = Decode(payload);
        Assert.All(items, item => Assert.Equal((RefusalReason.None, ""), (item.Refusal, item.Detail)));
        return [.. items.Select(item => item.Sample)];
    }

    public static List<RawSample> Samples(string hex) => Samples(Bytes(hex));

    /// <summary>A pack of one record named "a" whose value stands as CBOR in hexadecimal.</summary>
    public static DecodedItem Value(string hex) => Refused("81a200616102" + hex);

    /// <summary>A good record before, the given one, a good one after: 1 of "a", 3 of "c".</summary>
    public static List<DecodedItem> Between(string record) => Decode($"83a20061610201{record}a20061630203");

    public static byte[] Bytes(string hex) => Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal));

    /// <summary>Writes by the platform's encoder, which in this mode also writes what is not valid, such as a key twice.</summary>
    public static byte[] Write(Action<CborWriter> write)
    {
        var writer = new CborWriter(CborConformanceMode.Lax);
        write(writer);
        return writer.Encode();
    }
}
