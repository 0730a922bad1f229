using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>Sensor measurement lists in CBOR (RFC 8428 section 6, application/senml+cbor): the same packs as in JSON, by another reader and the same rules.</summary>
/// <remarks>
/// A definite array of records, or the indefinite one of a stream (sensml+cbor). Labels are the integers of the table or the same labels in letters;
/// both of one field in a record are one too many. Numbers are integers, floats of any width or decimal fractions. What spoils a record and what the
/// pack is as in <see cref="SenmlJson"/>; a label that is neither an integer nor a text of one piece spoils the pack, for it may have been a base field.
/// </remarks>
public static class SenmlCbor
{
    /// <summary>Decodes a payload and appends its items. Never throws for anything that can arrive. What it can refuse: <see cref="DecoderRefusals.SenmlCbor"/>.</summary>
    /// <param name="payload">The bytes as they came.</param>
    /// <param name="receivedAt">What relative times count from; must be set.</param>
    /// <param name="items">Gets one item a record, or one for the whole.</param>
    /// <exception cref="ArgumentNullException">No list.</exception>
    public static void Decode(ReadOnlySpan<byte> payload, Instant receivedAt, List<DecodedItem> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        if (PayloadText.ScreenSize(payload) is { } refused)
        {
            items.Add(refused);
            return;
        }

        var pack = new SenmlPack(payload, receivedAt, items);
        var cbor = new CborReader(payload);
        var fault = ReadPack(ref cbor, ref pack);
        pack.Close(fault.IsSet ? fault : Of(cbor, payload));
    }

    private static SenmlFault Of(in CborReader cbor, ReadOnlySpan<byte> payload) => cbor.Fault switch
    {
        CborFault.None => default,
        CborFault.InvalidUtf8 => new(RefusalReason.InvalidUtf8, PayloadText.ByteAt(payload, cbor.FaultAt)),
        _ => new(RefusalReason.MalformedSenml, PayloadText.ByteAt(payload, cbor.FaultAt)),
    };

    // A fault of the reader is left in the reader.
    private static SenmlFault ReadPack(ref CborReader cbor, ref SenmlPack pack)
    {
        if (!cbor.TryHead(out var records)) return default;
        if (records.Major != CborMajor.Array) return new(RefusalReason.MalformedSenml, $"@ {records.At}");
        for (var done = 0UL; cbor.TryNext(records, ref done);)
        {
            if (!cbor.TryHead(out var map)) return default;
            if (map.Major != CborMajor.Map) return new(RefusalReason.MalformedSenml, $"#{pack.Count + 1}");
            if (!TryRecord(ref cbor, map, out var record)) return default;
            var fault = pack.Add(record, map.At..cbor.Position);
            if (fault.IsSet) return fault;
        }

        if (cbor.Fault != CborFault.None) return default;
        if (!cbor.IsAtEnd) return new(RefusalReason.MalformedSenml, $"@ {cbor.Position}");
        return pack.Count == 0 ? new(RefusalReason.MalformedSenml, "[]") : default;
    }

    private static bool TryRecord(ref CborReader cbor, CborHead map, out SenmlRecord record)
    {
        record = default;
        for (var done = 0UL; cbor.TryNext(map, ref done);)
        {
            if (!cbor.TryHead(out var label)) return false;
            if (!TryField(ref cbor, label, ref record)) return false;
        }

        return cbor.Fault == CborFault.None;
    }

    private static bool TryField(ref CborReader cbor, CborHead label, ref SenmlRecord record)
    {
        var letters = ReadOnlySpan<byte>.Empty;
        var field = SenmlFields.None;
        switch (label)
        {
            case { Major: CborMajor.Natural or CborMajor.Negative }:
                if (label.TryInteger(out var integer)) field = SenmlLabels.Find(integer);
                break;
            case { Major: CborMajor.Text, IsIndefinite: false }:
                if (!cbor.TryString(label, out letters)) return false;
                field = SenmlLabels.Find(letters);
                break;
            default:
                record.PackFault = record.PackFault.Or(new(RefusalReason.MalformedSenml, $"@ {label.At}"));
                if (!cbor.TrySkip(label)) return false;
                break;
        }

        if (!cbor.TryHead(out var head)) return false;
        if (field == SenmlFields.None)
        {
            record.PassOver(letters);
            return cbor.TrySkip(head);
        }

        if (!TryValue(ref cbor, head, field, out var value)) return false;
        record.Take(field, value);
        return true;
    }

    private static bool TryValue(ref CborReader cbor, CborHead head, SenmlFields field, out SenmlValue value)
    {
        value = default;
        if (head is { Major: CborMajor.Tag, Argument: CborDecimal.Tag })
        {
            if (CborDecimal.TryRead(ref cbor, out var fraction) && field != SenmlFields.BaseVersion) value = SenmlValue.Of(fraction);
            return cbor.Fault == CborFault.None;
        }

        // Section 6: strings of one piece, and only an unsigned integer for the version.
        var at = cbor.Position;
        if (!cbor.TrySkip(head)) return false;
        if (head is { Major: CborMajor.Text, IsIndefinite: false }) value = SenmlValue.Of(SenmlText.Of(at, (int)head.Argument));
        else if (head is { Major: CborMajor.Bytes, IsIndefinite: false }) value = SenmlValue.Data;
        else if (head.Boolean is { } boolean) value = SenmlValue.Of(boolean);
        else if (head.TryNumber(out var number) && (field != SenmlFields.BaseVersion || head.Major == CborMajor.Natural)) value = SenmlValue.Of(number);
        return true;
    }
}
