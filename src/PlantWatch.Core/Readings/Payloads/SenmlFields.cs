namespace PlantWatch.Core.Readings.Payloads;

/// <summary>The fields of RFC 8428 section 4.3, table 1, as a set: a record has each at most once.</summary>
[Flags]
internal enum SenmlFields
{
    None = 0,
    BaseName = 1, BaseTime = 1 << 1, BaseUnit = 1 << 2, BaseValue = 1 << 3, BaseSum = 1 << 4, BaseVersion = 1 << 5,
    Name = 1 << 6, Unit = 1 << 7, Value = 1 << 8, StringValue = 1 << 9, BooleanValue = 1 << 10, DataValue = 1 << 11,
    Sum = 1 << 12, Time = 1 << 13, UpdateTime = 1 << 14,
    Base = BaseName | BaseTime | BaseUnit | BaseValue | BaseSum | BaseVersion,
    AnyValue = Value | StringValue | BooleanValue | DataValue,
}

/// <summary>Labels to fields.</summary>
internal static class SenmlLabels
{
    /// <summary>The field of a label; None for one that RFC 8428 does not define.</summary>
    public static SenmlFields Find(ReadOnlySpan<byte> label) => label.Length switch
    {
        1 => label[0] switch
        {
            (byte)'n' => SenmlFields.Name,
            (byte)'u' => SenmlFields.Unit,
            (byte)'v' => SenmlFields.Value,
            (byte)'s' => SenmlFields.Sum,
            (byte)'t' => SenmlFields.Time,
            _ => SenmlFields.None,
        },
        2 => ((char)label[0], (char)label[1]) switch
        {
            ('b', 'n') => SenmlFields.BaseName,
            ('b', 't') => SenmlFields.BaseTime,
            ('b', 'u') => SenmlFields.BaseUnit,
            ('b', 'v') => SenmlFields.BaseValue,
            ('b', 's') => SenmlFields.BaseSum,
            ('v', 's') => SenmlFields.StringValue,
            ('v', 'b') => SenmlFields.BooleanValue,
            ('v', 'd') => SenmlFields.DataValue,
            ('u', 't') => SenmlFields.UpdateTime,
            _ => SenmlFields.None,
        },
        4 when label.SequenceEqual("bver"u8) => SenmlFields.BaseVersion,
        _ => SenmlFields.None,
    };

    /// <summary>The labels of the values and sums among some fields; empty when there is none.</summary>
    public static string ValuesOf(SenmlFields fields)
    {
        (SenmlFields Field, string Label)[] values =
        [
            (SenmlFields.Value, "v"), (SenmlFields.StringValue, "vs"), (SenmlFields.BooleanValue, "vb"), (SenmlFields.DataValue, "vd"), (SenmlFields.Sum, "s"),
        ];
        return string.Join(' ', values.Where(value => (fields & value.Field) != 0).Select(value => value.Label));
    }
}
