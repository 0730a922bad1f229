using System.Text.Json;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>Sensor measurement lists in JSON (RFC 8428 section 5, application/senml+json): a pack of records, each one sample or one refusal.</summary>
/// <remarks>
/// A record that is wrong in itself is refused alone. A pack is refused as a whole, as one item, where its text is no JSON array of
/// objects or where a base field cannot be read: what follows would take a wrong name, time or value from it. A record of base
/// fields alone (section 5.1.7) is no item. Every payload gives at least one item, so that the sums close.
/// </remarks>
public static class SenmlJson
{
    /// <summary>How deep a field that is not known may be nested and still be passed over; SenML itself needs two.</summary>
    public const int Deepest = 16;

    private static readonly JsonReaderOptions Strict = new() { MaxDepth = Deepest };

    /// <summary>Decodes a payload and appends its items. Never throws for anything that can arrive. What it can refuse: <see cref="DecoderRefusals.SenmlJson"/>.</summary>
    /// <param name="payload">The bytes as they came.</param>
    /// <param name="receivedAt">What relative times count from; must be set.</param>
    /// <param name="items">Gets one item a record, or one for the whole.</param>
    /// <exception cref="ArgumentNullException">No list.</exception>
    public static void Decode(ReadOnlySpan<byte> payload, Instant receivedAt, List<DecodedItem> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        if (PayloadText.Screen(payload) is { } refused)
        {
            items.Add(refused);
            return;
        }

        var pack = new SenmlPack(payload, receivedAt, items);
        pack.Close(TryReadPack(payload, ref pack));
    }

    private static SenmlFault TryReadPack(ReadOnlySpan<byte> payload, ref SenmlPack pack)
    {
        try
        {
            return ReadPack(payload, ref pack);
        }
        catch (JsonException e)
        {
            return new(RefusalReason.MalformedSenml, $"{e.LineNumber + 1}:{e.BytePositionInLine + 1}");
        }
        catch (InvalidOperationException)
        {
            // The reader's word for an escaped half of a surrogate pair, which is no Unicode text.
            return new(RefusalReason.MalformedSenml, "\\u");
        }
    }

    private static SenmlFault ReadPack(ReadOnlySpan<byte> payload, ref SenmlPack pack)
    {
        var json = new Utf8JsonReader(payload, Strict);
        json.Read();
        if (json.TokenType != JsonTokenType.StartArray) return new(RefusalReason.MalformedSenml, PayloadText.Excerpt(payload));
        while (json.Read() && json.TokenType != JsonTokenType.EndArray)
        {
            if (json.TokenType != JsonTokenType.StartObject) return new(RefusalReason.MalformedSenml, $"#{pack.Count + 1}");
            var start = (int)json.TokenStartIndex;
            var record = ReadRecord(ref json, payload);
            var fault = pack.Add(record, start..(int)json.BytesConsumed);
            if (fault.IsSet) return fault;
        }

        // Reads to the end: anything behind the array is an error.
        json.Read();
        return pack.Count == 0 ? new(RefusalReason.MalformedSenml, "[]") : default;
    }

    // From the object's opening brace to its closing one. Throws only what the reader throws for text that is no JSON.
    private static SenmlRecord ReadRecord(ref Utf8JsonReader json, ReadOnlySpan<byte> payload)
    {
        var record = default(SenmlRecord);
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            var label = SenmlText.At(ref json).In(payload);
            var field = SenmlLabels.Find(label);
            json.Read();
            if (field == SenmlFields.None) record.PassOver(label);
            else record.Take(field, Value(ref json, field));
            json.Skip();
        }

        return record;
    }

    private static SenmlValue Value(ref Utf8JsonReader json, SenmlFields field) => json.TokenType switch
    {
        JsonTokenType.Number when json.TryGetDouble(out var number) => SenmlValue.Of(number),
        JsonTokenType.True => SenmlValue.Of(true),
        JsonTokenType.False => SenmlValue.Of(false),
        // JSON writes octets as text (section 4.3).
        JsonTokenType.String when field == SenmlFields.DataValue => SenmlValue.Data,
        // Only a text that is used is taken out of its escapes.
        JsonTokenType.String => SenmlValue.Of((field & SenmlFields.Names) != 0 ? SenmlText.At(ref json) : default),
        _ => default,
    };
}
