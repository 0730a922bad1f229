using System.Text;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>Short forms for the SenML tests.</summary>
internal static class Senml
{
    /// <summary>When every pack of the tests arrives.</summary>
    public static readonly Instant Arrival = Instant.FromUtc(2026, 3, 1, 7, 30);

    public static List<DecodedItem> Decode(string json) => Decode(Encoding.UTF8.GetBytes(json));

    public static List<DecodedItem> Decode(byte[] payload)
    {
        var items = new List<DecodedItem>();
        SenmlJson.Decode(payload, Arrival, items);
        return items;
    }

    /// <summary>The samples of a pack that must hold nothing else.</summary>
    public static List<RawSample> Samples(string json)
    {
        var items = Decode(json);
        Assert.All(items, item => Assert.Equal((RefusalReason.None, ""), (item.Refusal, item.Detail)));
        return [.. items.Select(item => item.Sample)];
    }

    public static RawSample Sample(string json) => Assert.Single(Samples(json));

    public static DecodedItem Refused(string json) => Assert.Single(Decode(json));

    public static Instant Unix(double seconds) => Instant.FromUnixMicroseconds((long)Math.Round(seconds * 1e6));
}
