using System.Text.Json;
using System.Text.Json.Serialization;

namespace PlantWatch.Core.Quantities;

/// <summary>A closed interval of finite numbers. The default is the single point 0. As JSON: [low, high].</summary>
[JsonConverter(typeof(ValueRangeJson))]
public readonly record struct ValueRange
{
    /// <summary>Makes a range.</summary>
    /// <exception cref="ArgumentException">An end is not finite, or the low end lies above the high one.</exception>
    public ValueRange(double low, double high)
    {
        if (!double.IsFinite(low) || !double.IsFinite(high) || low > high)
            throw new ArgumentException($"a range needs two finite ends in order, not {low} and {high}");
        Low = low;
        High = high;
    }

    /// <summary>The lowest value inside.</summary>
    public double Low { get; }

    /// <summary>The highest value inside.</summary>
    public double High { get; }

    /// <summary>True when a finite value lies inside, ends included.</summary>
    public bool Contains(double value) => value >= Low && value <= High;
}

internal sealed class ValueRangeJson : JsonConverter<ValueRange>
{
    public override ValueRange Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var (low, high) = NumberPair.Read(ref reader);
        return double.IsFinite(low) && double.IsFinite(high) && low <= high ? new ValueRange(low, high) : throw new JsonException("expected [low, high], both finite and in order");
    }

    public override void Write(Utf8JsonWriter writer, ValueRange value, JsonSerializerOptions options) =>
        NumberPair.Write(writer, value.Low, value.High);
}
