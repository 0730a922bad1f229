using System.Text.Json;
using System.Text.Json.Serialization;

namespace PlantWatch.Core.Probes;

/// <summary>The newest block means of a signal, newest first; a block in which the signal could not be watched is a hole. The default holds nothing but holes. As JSON: an array of numbers and nulls.</summary>
[JsonConverter(typeof(BlockRingJson))]
public readonly struct BlockRing : IEquatable<BlockRing>
{
    /// <summary>Blocks it holds: three hours of five minutes, so that differences over 160 minutes can be taken.</summary>
    public const int Length = 36;

    private readonly float[]? _means;

    internal BlockRing(float[] means) => _means = means;

    /// <summary>Mean of the block that many blocks ago, 0 for the newest; NaN for a hole.</summary>
    public double this[int ago] => _means is null || ago >= Length ? double.NaN : _means[ago];

    internal bool IsEmpty => _means is null;

    /// <summary>With a newer block in front, and holes for the blocks that passed unseen since.</summary>
    internal BlockRing Push(double mean, int holes)
    {
        var means = new float[Length];
        Array.Fill(means, float.NaN);
        if (holes >= Length) return default;
        means[holes] = (float)mean;
        if (_means is not null) _means.AsSpan(0, Length - holes - 1).CopyTo(means.AsSpan(holes + 1));
        return new(means);
    }

    /// <summary>Moved as a whole: a leap of the instrument is no movement of the water.</summary>
    internal BlockRing Shift(double by)
    {
        if (_means is null) return this;
        var means = (float[])_means.Clone();
        for (var i = 0; i < Length; i++) means[i] += (float)by;
        return new(means);
    }

    /// <inheritdoc/>
    public bool Equals(BlockRing other) => (_means ?? []).AsSpan().SequenceEqual(other._means ?? []);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is BlockRing other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => this[0].GetHashCode();

    /// <summary>The same blocks.</summary>
    public static bool operator ==(BlockRing a, BlockRing b) => a.Equals(b);

    /// <summary>Other blocks.</summary>
    public static bool operator !=(BlockRing a, BlockRing b) => !a.Equals(b);
}

internal sealed class BlockRingJson : JsonConverter<BlockRing>
{
    public override BlockRing Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.StartArray) throw new JsonException("expected an array of block means");
        var means = new float[BlockRing.Length];
        var n = 0;
        for (reader.Read(); reader.TokenType != JsonTokenType.EndArray; reader.Read(), n++)
        {
            if (n == BlockRing.Length) throw new JsonException($"expected at most {BlockRing.Length} block means");
            means[n] = reader.TokenType == JsonTokenType.Null ? float.NaN : reader.GetSingle();
        }

        return n == 0 ? default : n == BlockRing.Length ? new(means) : throw new JsonException($"expected {BlockRing.Length} block means or none");
    }

    public override void Write(Utf8JsonWriter writer, BlockRing value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        for (var i = 0; !value.IsEmpty && i < BlockRing.Length; i++)
        {
            if (double.IsNaN(value[i])) writer.WriteNullValue();
            else writer.WriteNumberValue((float)value[i]);
        }

        writer.WriteEndArray();
    }
}
