namespace PlantWatch.Core.Readings.Payloads;

/// <summary>One record as it stands in the pack, before the base values are applied: the same whether it was read from JSON or from CBOR.</summary>
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

    /// <summary>Section 4.4: what is not known is ignored unless its label ends in an underscore. A label in b is a base field and holds for what follows (section 12.2).</summary>
    public void PassOver(ReadOnlySpan<byte> label)
    {
        if (label is not [.., (byte)'_']) return;
        var fault = SenmlFault.Of(RefusalReason.UnsupportedSenml, label);
        if (label[0] == (byte)'b') PackFault = PackFault.Or(fault);
        else RecordFault = RecordFault.Or(fault);
    }

    /// <summary>Takes one field over; a second one of its label is a fault, for nobody can say which is meant.</summary>
    public void Take(SenmlFields field, in SenmlValue value)
    {
        if (Has(field))
        {
            Note(field, RefusalReason.MalformedSenml);
            return;
        }

        Present |= field;
        if (value.Kind != SenmlLabels.KindOf(field)) Note(field, (field & SenmlFields.AnyValue) != 0 ? RefusalReason.SenmlWithoutNumber : RefusalReason.MalformedSenml);
        else Put(field, value);
    }

    // Sums and update times are checked and not used: no reading is made of them, nor of texts and octets.
    private void Put(SenmlFields field, in SenmlValue value)
    {
        switch (field)
        {
            case SenmlFields.BaseName: BaseName = value.Text; break;
            case SenmlFields.BaseTime: BaseTime = value.Number; break;
            case SenmlFields.BaseUnit: BaseUnit = value.Text; break;
            case SenmlFields.BaseValue: BaseValue = value.Number; break;
            case SenmlFields.BaseVersion: BaseVersion = value.Number; break;
            case SenmlFields.Name: Name = value.Text; break;
            case SenmlFields.Unit: Unit = value.Text; break;
            case SenmlFields.Value: Value = value.Number; break;
            case SenmlFields.Time: Time = value.Number; break;
            case SenmlFields.BooleanValue: BooleanValue = value.Boolean; break;
        }
    }

    private void Note(SenmlFields field, RefusalReason reason)
    {
        var label = SenmlLabels.NameOf(field);
        if ((field & SenmlFields.Base) != 0) PackFault = PackFault.Or(SenmlFault.Of(RefusalReason.MalformedSenml, label));
        else RecordFault = RecordFault.Or(SenmlFault.Of(reason, label));
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
