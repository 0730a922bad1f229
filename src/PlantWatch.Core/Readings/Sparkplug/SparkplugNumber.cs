namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>Why a metric's value is no number of its type: a closed list, each with a test.</summary>
public enum NumberFault : byte
{
    /// <summary>It is one.</summary>
    None = 0,
    /// <summary>The type holds no number and no switch: a text, a time, a table.</summary>
    NotANumber,
    /// <summary>The value stands in a field that its type does not use.</summary>
    WrongField,
    /// <summary>The number lies outside its type.</summary>
    OutsideType,
    /// <summary>NaN or infinity.</summary>
    NotFinite,
}

/// <summary>A value as a number, by the type that the birth gave it.</summary>
/// <remarks>
/// The fields of the wire have no sign, so integers below 0 travel as two's complement (Sparkplug 3.0.0, section 6.4.16: Int8 to Int32 in uint32, Int64
/// in uint64). Encoders differ in what they do with the upper bits of a narrow type, and in which of the two fields a UInt32 goes: whatever can
/// only mean one number is taken.
/// </remarks>
public static class SparkplugNumber
{
    /// <summary>Reads the value; a switch is 0 or 1.</summary>
    public static NumberFault Read(SparkplugType type, in SparkplugMetric metric, out double number)
    {
        number = 0;
        return type switch
        {
            >= SparkplugType.Int8 and <= SparkplugType.UInt64 => Whole(type, metric, out number),
            SparkplugType.Float or SparkplugType.Double => Real(metric, out number),
            SparkplugType.Boolean => Switch(metric, out number),
            _ => NumberFault.NotANumber,
        };
    }

    private static NumberFault Whole(SparkplugType type, in SparkplugMetric metric, out double number)
    {
        number = 0;
        if (metric.Field is not (SparkplugField.Int or SparkplugField.Long)) return NumberFault.WrongField;
        if (type == SparkplugType.UInt64) number = metric.Bits;
        else if (Narrow(type, metric) is { } whole) number = whole;
        else return NumberFault.OutsideType;
        return NumberFault.None;
    }

    // Null for a number outside the type.
    private static long? Narrow(SparkplugType type, in SparkplugMetric metric)
    {
        var bits = metric.Bits;
        // 32 bits with a sign, or all of 64.
        var signed = metric.Field == SparkplugField.Int ? (int)(uint)bits : (long)bits;
        return type switch
        {
            SparkplugType.Int8 => bits <= byte.MaxValue ? (sbyte)bits : signed is >= sbyte.MinValue and < 0 ? signed : null,
            SparkplugType.Int16 => bits <= ushort.MaxValue ? (short)bits : signed is >= short.MinValue and < 0 ? signed : null,
            SparkplugType.Int32 => bits <= uint.MaxValue ? (int)bits : signed is >= int.MinValue and < 0 ? signed : null,
            // Half of what 32 bits hold could be meant with a sign or without.
            SparkplugType.Int64 => metric.Field == SparkplugField.Long || signed >= 0 ? signed : null,
            SparkplugType.UInt8 => bits <= byte.MaxValue ? (long)bits : null,
            SparkplugType.UInt16 => bits <= ushort.MaxValue ? (long)bits : null,
            _ => bits <= uint.MaxValue ? (long)bits : null,
        };
    }

    private static NumberFault Real(in SparkplugMetric metric, out double number)
    {
        number = metric.Field switch
        {
            SparkplugField.Float => BitConverter.UInt32BitsToSingle((uint)metric.Bits),
            SparkplugField.Double => BitConverter.UInt64BitsToDouble(metric.Bits),
            _ => 0,
        };
        if (metric.Field is not (SparkplugField.Float or SparkplugField.Double)) return NumberFault.WrongField;
        if (!double.IsFinite(number)) return NumberFault.NotFinite;
        // Minus nought is nought.
        number += 0.0;
        return NumberFault.None;
    }

    private static NumberFault Switch(in SparkplugMetric metric, out double number)
    {
        number = metric.Bits == 0 ? 0 : 1;
        return metric.Field == SparkplugField.Boolean ? NumberFault.None : NumberFault.WrongField;
    }
}
