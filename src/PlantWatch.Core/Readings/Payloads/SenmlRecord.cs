using System.Text.Json;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>One record as it stands in the pack, before the base values are applied.</summary>
internal struct SenmlRecord
{
    /// <summary>Fields that are present.</summary>
    public SenmlFields Present;
    public SenmlText BaseName, BaseUnit, Name, Unit;
    public double BaseTime, BaseValue, BaseVersion, Time, Value;
    public bool BooleanValue;

    /// <summary>What spoils this record alone.</summary>
    public SenmlFault RecordFault;

    /// <summary>What spoils the pack: later records rest on a base value that cannot be read.</summary>
    public SenmlFault PackFault;

    public readonly bool Has(SenmlFields field) => (Present & field) != 0;

    /// <summary>Base fields and nothing else, which is no measurement (section 5.1.7).</summary>
    public readonly bool IsBaseOnly => !RecordFault.IsSet && Present != SenmlFields.None && (Present & ~SenmlFields.Base) == 0;

    /// <summary>Reads from the object's opening brace to its closing one. Throws only what the reader throws for text that is no JSON.</summary>
    public static SenmlRecord Read(ref Utf8JsonReader json, ReadOnlySpan<byte> payload)
    {
        var record = default(SenmlRecord);
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            var label = SenmlText.At(ref json).In(payload);
            var field = SenmlLabels.Find(label);
            json.Read();
            if (field == SenmlFields.None) record.PassOver(label);
            else if (record.Has(field)) record.Note(field, RefusalReason.MalformedSenml, label);
            else record.Take(field, label, ref json);
            json.Skip();
        }
        return record;
    }

    /// <summary>Section 4.4: what is not known is ignored unless its label ends in an underscore. A label in b is a base field and holds for what follows (section 12.2).</summary>
    private void PassOver(ReadOnlySpan<byte> label)
    {
        if (label is not [.., (byte)'_']) return;
        var fault = SenmlFault.Of(RefusalReason.UnsupportedSenml, label);
        if (label[0] == (byte)'b') PackFault = PackFault.Or(fault);
        else RecordFault = RecordFault.Or(fault);
    }

    private void Take(SenmlFields field, ReadOnlySpan<byte> label, ref Utf8JsonReader json)
    {
        Present |= field;
        var understood = field switch
        {
            SenmlFields.BaseName => TryText(ref json, out BaseName),
            SenmlFields.BaseTime => TryNumber(ref json, out BaseTime),
            SenmlFields.BaseUnit => TryText(ref json, out BaseUnit),
            SenmlFields.BaseValue => TryNumber(ref json, out BaseValue),
            SenmlFields.BaseVersion => TryNumber(ref json, out BaseVersion),
            SenmlFields.Name => TryText(ref json, out Name),
            SenmlFields.Unit => TryText(ref json, out Unit),
            SenmlFields.Value => TryNumber(ref json, out Value),
            SenmlFields.Time => TryNumber(ref json, out Time),
            SenmlFields.StringValue or SenmlFields.DataValue => json.TokenType == JsonTokenType.String,
            SenmlFields.BooleanValue => TryBoolean(ref json, out BooleanValue),
            // Sums and update times are checked and not used: no reading is made of them.
            _ => TryNumber(ref json, out _),
        };
        if (!understood) Note(field, (field & SenmlFields.AnyValue) != 0 ? RefusalReason.SenmlWithoutNumber : RefusalReason.MalformedSenml, label);
    }

    private void Note(SenmlFields field, RefusalReason reason, ReadOnlySpan<byte> label)
    {
        if ((field & SenmlFields.Base) != 0) PackFault = PackFault.Or(SenmlFault.Of(RefusalReason.MalformedSenml, label));
        else RecordFault = RecordFault.Or(SenmlFault.Of(reason, label));
    }

    private static bool TryText(ref Utf8JsonReader json, out SenmlText text)
    {
        text = json.TokenType == JsonTokenType.String ? SenmlText.At(ref json) : default;
        return json.TokenType == JsonTokenType.String;
    }

    private static bool TryNumber(ref Utf8JsonReader json, out double number)
    {
        number = 0;
        return json.TokenType == JsonTokenType.Number && json.TryGetDouble(out number);
    }

    private static bool TryBoolean(ref Utf8JsonReader json, out bool value)
    {
        value = json.TokenType == JsonTokenType.True;
        return json.TokenType is JsonTokenType.True or JsonTokenType.False;
    }
}

/// <summary>What is wrong, and where. The default is nothing.</summary>
/// <param name="Reason">None when nothing is wrong.</param>
/// <param name="Detail">The label or value at fault.</param>
internal readonly record struct SenmlFault(RefusalReason Reason, string Detail)
{
    public bool IsSet => Reason != RefusalReason.None;

    public static SenmlFault Of(RefusalReason reason, ReadOnlySpan<byte> at) => new(reason, PayloadText.Excerpt(at));

    /// <summary>The first fault stands.</summary>
    public SenmlFault Or(SenmlFault later) => IsSet ? this : later;
}
