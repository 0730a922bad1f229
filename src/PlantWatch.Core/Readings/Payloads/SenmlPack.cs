using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>The pack as it is being read, record by record: what both readers, of JSON and of CBOR, do with a record once they have it.</summary>
internal ref struct SenmlPack(ReadOnlySpan<byte> payload, Instant receivedAt, List<DecodedItem> items)
{
    /// <summary>
    /// Most records of one pack: as many as the largest payload can hold in JSON, where the shortest record with its comma is three bytes. CBOR
    /// could hold three times as many, and each costs far more memory than it has bytes.
    /// </summary>
    public const int MostRecords = PayloadText.Largest / 3;

    private readonly List<DecodedItem> _items = items;
    private readonly Instant _receivedAt = receivedAt;
    private readonly int _before = items.Count;
    private SenmlBase _bases = new(payload);

    /// <summary>Records so far.</summary>
    public int Count { get; private set; }

    /// <summary>Takes the next record. A fault that comes back spoils the whole pack; one of the record alone has become its item.</summary>
    public SenmlFault Add(in SenmlRecord record, Range bytes)
    {
        if (++Count > MostRecords) return new(RefusalReason.TooLarge, $"> #{MostRecords}");
        var fault = _bases.Apply(record);
        if (fault.IsSet) return fault with { Detail = $"#{Count} {fault.Detail}" };
        if (record.IsBaseOnly) return default;
        fault = _bases.Resolve(record, _receivedAt, out var sample, out var relative);
        _items.Add(fault.IsSet
            ? DecodedItem.Refused(fault.Reason, $"#{Count} {fault.Detail}".TrimEnd(), bytes)
            : DecodedItem.Of(sample, bytes, relative));
        return default;
    }

    /// <summary>The pack is at its end. A fault of the whole takes the place of its items, and so does that there are none: every payload gives at least one item.</summary>
    public readonly void Close(SenmlFault fault)
    {
        if (!fault.IsSet && _items.Count == _before) fault = new(RefusalReason.SenmlWithoutNumber, "");
        if (!fault.IsSet) return;
        _items.RemoveRange(_before, _items.Count - _before);
        _items.Add(DecodedItem.Refused(fault.Reason, fault.Detail, Range.All));
    }
}
