using System.Diagnostics.CodeAnalysis;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>The data types of a metric (Sparkplug 3.0.0, section 6.4.16, DataType).</summary>
[SuppressMessage("Naming", "CA1720:Identifier contains type name", Justification = "The names are the specification's.")]
public enum SparkplugType : byte
{
    /// <summary>None was said, or one beyond the table.</summary>
    Unknown = 0,
    /// <summary>-128 to 127.</summary>
    Int8 = 1,
    /// <summary>-32 768 to 32 767.</summary>
    Int16 = 2,
    /// <summary>32 bits with a sign.</summary>
    Int32 = 3,
    /// <summary>64 bits with a sign.</summary>
    Int64 = 4,
    /// <summary>0 to 255.</summary>
    UInt8 = 5,
    /// <summary>0 to 65 535.</summary>
    UInt16 = 6,
    /// <summary>32 bits.</summary>
    UInt32 = 7,
    /// <summary>64 bits.</summary>
    UInt64 = 8,
    /// <summary>IEEE 754, 32 bits.</summary>
    Float = 9,
    /// <summary>IEEE 754, 64 bits.</summary>
    Double = 10,
    /// <summary>False or true.</summary>
    Boolean = 11,
    /// <summary>A text.</summary>
    String = 12,
    /// <summary>Milliseconds since 1970, UTC.</summary>
    DateTime = 13,
    /// <summary>A text.</summary>
    Text = 14,
    /// <summary>A UUID as text.</summary>
    Uuid = 15,
    /// <summary>A table.</summary>
    DataSet = 16,
    /// <summary>Octets.</summary>
    Bytes = 17,
    /// <summary>A file.</summary>
    File = 18,
    /// <summary>A structure.</summary>
    Template = 19,
    /// <summary>Properties; of properties only.</summary>
    PropertySet = 20,
    /// <summary>Lists of properties; of properties only.</summary>
    PropertySetList = 21,
    /// <summary>The first of the arrays, Int8Array, to the last, DateTimeArray (34).</summary>
    FirstArray = 22,
}

/// <summary>Which field of the message holds a metric's value; the number is the field's.</summary>
[SuppressMessage("Naming", "CA1720:Identifier contains type name", Justification = "The names are the specification's.")]
public enum SparkplugField : byte
{
    /// <summary>None: there is no value.</summary>
    None = 0,
    /// <summary>int_value, 32 bits.</summary>
    Int = 10,
    /// <summary>long_value, 64 bits.</summary>
    Long = 11,
    /// <summary>float_value.</summary>
    Float = 12,
    /// <summary>double_value.</summary>
    Double = 13,
    /// <summary>boolean_value.</summary>
    Boolean = 14,
    /// <summary>string_value.</summary>
    String = 15,
    /// <summary>bytes_value.</summary>
    Bytes = 16,
    /// <summary>dataset_value.</summary>
    DataSet = 17,
    /// <summary>template_value.</summary>
    Template = 18,
    /// <summary>extension_value.</summary>
    Extension = 19,
}

/// <summary>What the property Quality says of a value (Sparkplug 3.0.0, section 6.4.11).</summary>
public enum SparkplugQuality : byte
{
    /// <summary>192, or nothing was said.</summary>
    Good = 0,
    /// <summary>0.</summary>
    Bad,
    /// <summary>500.</summary>
    Stale,
    /// <summary>Something was said that is none of the three, is no Int32, or stands among properties that do not pair up.</summary>
    Unreadable,
}

/// <summary>A metric as it stands in a payload, before anything is known about it. The default has no name, no alias and no value.</summary>
public readonly record struct SparkplugMetric
{
    /// <summary>Its name; null where the payload gives an alias alone.</summary>
    public string? Name { get; init; }

    /// <summary>The number that stands for the name since the birth; null for none.</summary>
    public ulong? Alias { get; init; }

    /// <summary>When its value was captured; <see cref="Instant.Never"/> when the payload does not say.</summary>
    public Instant CapturedAt { get; init; }

    /// <summary>A time was given that no calendar writes.</summary>
    public bool HasWrongTime { get; init; }

    /// <summary>Its type, as a birth says it.</summary>
    public SparkplugType Type { get; init; }

    /// <summary>Of the past: to be stored, and not the current value.</summary>
    public bool IsHistorical { get; init; }

    /// <summary>Not to be stored.</summary>
    public bool IsTransient { get; init; }

    /// <summary>There is no value, said in so many words.</summary>
    public bool IsNull { get; init; }

    /// <summary>What its properties say of the value.</summary>
    public SparkplugQuality Quality { get; init; }

    /// <summary>Where the value stands.</summary>
    public SparkplugField Field { get; init; }

    /// <summary>The bits of a number or switch; 0 for every other value.</summary>
    public ulong Bits { get; init; }

    /// <summary>A short text value; null for every other value and for texts that are longer than any word of the format itself.</summary>
    internal string? Word { get; init; }
}
