namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>The property set of a metric (Sparkplug 3.0.0, section 6.4.9): keys and values as two lists, of which only Quality is looked at.</summary>
internal static class SparkplugProperties
{
    private const uint Keys = 1, Values = 2, ValueType = 1, ValueInt = 3;

    /// <summary>What Quality says; good where it says nothing.</summary>
    /// <param name="payload">The whole payload.</param>
    /// <param name="properties">The field of the set.</param>
    /// <param name="fault">What is wrong with the message, and where.</param>
    public static SparkplugQuality QualityOf(ReadOnlySpan<byte> payload, in ProtoField properties, out (ProtoFault Fault, int At) fault)
    {
        var (keys, values, place) = (0, 0, -1);
        var proto = new ProtoReader(payload, properties.Start, properties.End);
        while (proto.TryField(out var field))
        {
            if (field.Wire != ProtoWire.Bytes) continue;
            if (field.Number == Keys && payload[field.Start..field.End].SequenceEqual("Quality"u8)) place = keys;
            if (field.Number == Keys) keys++;
            if (field.Number == Values) values++;
        }

        fault = (proto.Fault, proto.FaultAt);
        if (place < 0) return SparkplugQuality.Good;
        return keys == values ? Read(payload, At(payload, properties, place)) : SparkplugQuality.Unreadable;
    }

    // The lists may be interleaved or not: the value is found by its count.
    private static ProtoField At(ReadOnlySpan<byte> payload, in ProtoField properties, int place)
    {
        var proto = new ProtoReader(payload, properties.Start, properties.End);
        while (proto.TryField(out var field))
            if (field is { Number: Values, Wire: ProtoWire.Bytes } && place-- == 0) return field;
        return default;
    }

    // tck-id-payloads-propertyset-quality-value-type and -value: an Int32 of one of three codes. A type that is left out is no doubt about the code.
    private static SparkplugQuality Read(ReadOnlySpan<byte> payload, in ProtoField value)
    {
        var (type, code) = ((ulong)SparkplugType.Int32, (ulong?)null);
        var proto = new ProtoReader(payload, value.Start, value.End);
        while (proto.TryField(out var field))
        {
            if (field.Wire != ProtoWire.Varint) continue;
            if (field.Number == ValueType) type = field.Bits;
            if (field.Number == ValueInt) code = field.Bits;
        }

        if (proto.Fault != ProtoFault.None || type != (ulong)SparkplugType.Int32) return SparkplugQuality.Unreadable;
        return code switch { 192 => SparkplugQuality.Good, 0 => SparkplugQuality.Bad, 500 => SparkplugQuality.Stale, _ => SparkplugQuality.Unreadable };
    }
}
