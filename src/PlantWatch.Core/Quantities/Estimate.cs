using System.Text.Json;
using System.Text.Json.Serialization;

namespace PlantWatch.Core.Quantities;

/// <summary>A value with its standard uncertainty (one standard deviation, same unit). The default knows nothing and says so by <see cref="IsKnown"/>. As JSON: [value, uncertainty] or null.</summary>
[JsonConverter(typeof(EstimateJson))]
public readonly record struct Estimate
{
    /// <summary>Makes an estimate.</summary>
    /// <exception cref="ArgumentException">The value is not finite, or the uncertainty is not positive and finite.</exception>
    public Estimate(double value, double standardUncertainty)
    {
        if (!double.IsFinite(value)) throw new ArgumentException("an estimate needs a finite value");
        if (!double.IsFinite(standardUncertainty) || standardUncertainty <= 0)
            throw new ArgumentException("an estimate needs a positive, finite standard uncertainty");
        Value = value;
        StandardUncertainty = standardUncertainty;
    }

    /// <summary>The best value.</summary>
    public double Value { get; }

    /// <summary>One standard deviation; 0 only for the default, which claims nothing.</summary>
    public double StandardUncertainty { get; }

    /// <summary>The expanded uncertainty U at k = 2 (GUM): about 95 % of the time the truth lies within value +- U.</summary>
    public double Expanded => 2 * StandardUncertainty;

    /// <summary>False for the default value only.</summary>
    public bool IsKnown => StandardUncertainty > 0;
}

internal sealed class EstimateJson : JsonConverter<Estimate>
{
    public override bool HandleNull => true;

    public override Estimate Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.Null) return default;
        var (value, uncertainty) = NumberPair.Read(ref reader);
        return double.IsFinite(value) && uncertainty > 0 && double.IsFinite(uncertainty) ? new Estimate(value, uncertainty) : throw new JsonException("expected [value, standard uncertainty above 0]");
    }

    public override void Write(Utf8JsonWriter writer, Estimate value, JsonSerializerOptions options)
    {
        if (value.IsKnown) NumberPair.Write(writer, value.Value, value.StandardUncertainty);
        else writer.WriteNullValue();
    }
}
