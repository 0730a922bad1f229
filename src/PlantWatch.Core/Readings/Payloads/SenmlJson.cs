using System.Text.Json;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>Sensor measurement lists in JSON (RFC 8428, application/senml+json): a pack of records, each one sample or one refusal.</summary>
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

    /// <summary>Decodes a payload and appends its items. Never throws for anything that can arrive.</summary>
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
        var before = items.Count;
        var fault = TryReadPack(payload, receivedAt, items);
        if (!fault.IsSet && items.Count == before) fault = new(RefusalReason.SenmlWithoutNumber, "");
        if (!fault.IsSet) return;
        items.RemoveRange(before, items.Count - before);
        items.Add(DecodedItem.Refused(fault.Reason, fault.Detail, Range.All));
    }

    private static SenmlFault TryReadPack(ReadOnlySpan<byte> payload, Instant receivedAt, List<DecodedItem> items)
    {
        try
        {
            return ReadPack(payload, receivedAt, items);
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

    private static SenmlFault ReadPack(ReadOnlySpan<byte> payload, Instant receivedAt, List<DecodedItem> items)
    {
        var json = new Utf8JsonReader(payload, Strict);
        var bases = new SenmlBase(payload);
        json.Read();
        if (json.TokenType != JsonTokenType.StartArray) return new(RefusalReason.MalformedSenml, PayloadText.Excerpt(payload));
        var number = 1;
        for (; json.Read() && json.TokenType != JsonTokenType.EndArray; number++)
        {
            if (json.TokenType != JsonTokenType.StartObject) return new(RefusalReason.MalformedSenml, $"#{number}");
            var start = (int)json.TokenStartIndex;
            var record = SenmlRecord.Read(ref json, payload);
            var fault = bases.Apply(record);
            if (fault.IsSet) return fault with { Detail = $"#{number} {fault.Detail}" };
            if (record.IsBaseOnly) continue;
            var bytes = start..(int)json.BytesConsumed;
            fault = bases.Resolve(record, receivedAt, out var sample, out var relative);
            items.Add(fault.IsSet
                ? DecodedItem.Refused(fault.Reason, $"#{number} {fault.Detail}".TrimEnd(), bytes)
                : DecodedItem.Of(sample, bytes, relative));
        }
        // Reads to the end: anything behind the array is an error.
        json.Read();
        return number == 1 ? new(RefusalReason.MalformedSenml, "[]") : default;
    }
}
