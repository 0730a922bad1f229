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
    Names = BaseName | BaseUnit | Name | Unit,
}

/// <summary>Labels to fields, and what a field holds.</summary>
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

    /// <summary>The field of an integer label (RFC 8428 section 6, table 4); None for one that is not in the table, which is closed.</summary>
    public static SenmlFields Find(long label) => label switch
    {
        -1 => SenmlFields.BaseVersion,
        -2 => SenmlFields.BaseName,
        -3 => SenmlFields.BaseTime,
        -4 => SenmlFields.BaseUnit,
        -5 => SenmlFields.BaseValue,
        -6 => SenmlFields.BaseSum,
        0 => SenmlFields.Name,
        1 => SenmlFields.Unit,
        2 => SenmlFields.Value,
        3 => SenmlFields.StringValue,
        4 => SenmlFields.BooleanValue,
        5 => SenmlFields.Sum,
        6 => SenmlFields.Time,
        7 => SenmlFields.UpdateTime,
        8 => SenmlFields.DataValue,
        _ => SenmlFields.None,
    };

    /// <summary>The label of a field in letters, by which people are told of it whatever the pack was written in.</summary>
    public static ReadOnlySpan<byte> NameOf(SenmlFields field) => field switch
    {
        SenmlFields.BaseVersion => "bver"u8,
        SenmlFields.BaseName => "bn"u8,
        SenmlFields.BaseTime => "bt"u8,
        SenmlFields.BaseUnit => "bu"u8,
        SenmlFields.BaseValue => "bv"u8,
        SenmlFields.BaseSum => "bs"u8,
        SenmlFields.Name => "n"u8,
        SenmlFields.Unit => "u"u8,
        SenmlFields.Value => "v"u8,
        SenmlFields.StringValue => "vs"u8,
        SenmlFields.BooleanValue => "vb"u8,
        SenmlFields.Sum => "s"u8,
        SenmlFields.Time => "t"u8,
        SenmlFields.UpdateTime => "ut"u8,
        SenmlFields.DataValue => "vd"u8,
        _ => [],
    };

    /// <summary>What a field holds (section 4.3, table 1).</summary>
    public static SenmlKind KindOf(SenmlFields field) => field switch
    {
        SenmlFields.BaseName or SenmlFields.BaseUnit or SenmlFields.Name or SenmlFields.Unit or SenmlFields.StringValue => SenmlKind.Text,
        SenmlFields.BooleanValue => SenmlKind.Boolean,
        SenmlFields.DataValue => SenmlKind.Data,
        _ => SenmlKind.Number,
    };

    /// <summary>The labels of the values and sums among some fields; empty when there is none, and then without an allocation: a pack may be full of such records.</summary>
    public static string ValuesOf(SenmlFields fields) =>
        (fields & (SenmlFields.AnyValue | SenmlFields.Sum)) == 0 ? "" : string.Join(' ', Values.Where(value => (fields & value.Field) != 0).Select(value => value.Label));

    private static readonly (SenmlFields Field, string Label)[] Values =
    [
        (SenmlFields.Value, "v"), (SenmlFields.StringValue, "vs"), (SenmlFields.BooleanValue, "vb"), (SenmlFields.DataValue, "vd"), (SenmlFields.Sum, "s"),
    ];
}
