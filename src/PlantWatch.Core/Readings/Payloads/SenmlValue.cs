namespace PlantWatch.Core.Readings.Payloads;

/// <summary>What kind of value stands behind a label, whatever the pack is written in.</summary>
internal enum SenmlKind : byte
{
    /// <summary>Nothing that a field of RFC 8428 can hold.</summary>
    Other = 0,
    Text, Number, Boolean, Data,
}

/// <summary>The value behind one label, as a reader found it. The default is of a kind that no field takes.</summary>
internal readonly struct SenmlValue
{
    private SenmlValue(SenmlKind kind, double number = 0, bool boolean = false, SenmlText text = default) =>
        (Kind, Number, Boolean, Text) = (kind, number, boolean, text);

    public SenmlKind Kind { get; }

    /// <summary>The number; one that JSON cannot write, NaN or infinity, may stand here and is refused when it is used.</summary>
    public double Number { get; }

    public bool Boolean { get; }

    /// <summary>The text; empty where the field's text is not used.</summary>
    public SenmlText Text { get; }

    public static SenmlValue Of(double number) => new(SenmlKind.Number, number: number);

    public static SenmlValue Of(bool boolean) => new(SenmlKind.Boolean, boolean: boolean);

    public static SenmlValue Of(SenmlText text) => new(SenmlKind.Text, text: text);

    /// <summary>Octets: they are never a reading, so nothing of them is kept.</summary>
    public static SenmlValue Data => new(SenmlKind.Data);
}
