using System.Buffers;
using System.Text;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Payloads;

/// <summary>The base values in force at a place in the pack, and how a record is resolved with them (RFC 8428 sections 4.1, 4.5 and 4.6).</summary>
internal ref struct SenmlBase(ReadOnlySpan<byte> payload)
{
    private readonly ReadOnlySpan<byte> _payload = payload;

    /// <summary>The version of RFC 8428, which is the default. A larger one, and the feature bits of RFC 9100 among them, is refused.</summary>
    public const double KnownVersion = 10;

    /// <summary>Times below 2^28 seconds count from the reception (section 4.5.3).</summary>
    public const double SmallestAbsoluteTime = 1 << 28;

    /// <summary>Longest resolved name, in characters. Our bound, not the RFC's: without one a pack of 64 KiB resolves to many megabytes of names.</summary>
    public const int LongestName = 256;

    /// <summary>Longest unit, in characters; the registry's longest has a dozen. Our bound.</summary>
    public const int LongestUnit = 32;

    // Year 9999 ends here: later than any calendar can write.
    private const double LatestSecond = 253_402_300_799;

    private static readonly SearchValues<byte> NameBytes =
        SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-:./_"u8);

    private SenmlText _name, _unit;
    private double _time, _value, _version;
    private bool _hasValue, _anyRecord;

    // Records of a pack tend to share name and unit: the strings are made once.
    private string? _lastName, _lastUnit;

    /// <summary>Takes over the base fields of a record; they hold from this record on.</summary>
    public SenmlFault Apply(in SenmlRecord record)
    {
        if (record.PackFault.IsSet) return record.PackFault;
        if (!double.IsFinite(record.BaseTime)) return new(RefusalReason.NotFinite, "bt");
        if (!double.IsFinite(record.BaseValue)) return new(RefusalReason.NotFinite, "bv");
        if (record.Has(SenmlFields.BaseName)) _name = record.BaseName;
        if (record.Has(SenmlFields.BaseUnit)) _unit = record.BaseUnit;
        if (record.Has(SenmlFields.BaseTime)) _time = record.BaseTime;
        if (record.Has(SenmlFields.BaseValue)) (_value, _hasValue) = (record.BaseValue, true);
        return CheckVersion(record);
    }

    private SenmlFault CheckVersion(in SenmlRecord record)
    {
        var first = !_anyRecord;
        _anyRecord = true;
        if (first) _version = KnownVersion;
        if (!record.Has(SenmlFields.BaseVersion)) return default;
        var version = record.BaseVersion;
        if (version > KnownVersion) return new(RefusalReason.UnsupportedSenml, $"bver {version}");
        // Section 4.4: one version for the whole pack.
        if (!(version >= 1) || version != Math.Floor(version) || (!first && version != _version)) return new(RefusalReason.MalformedSenml, $"bver {version}");
        _version = version;
        return default;
    }

    /// <summary>Resolves a record to a sample; gives what is wrong with it when it is none.</summary>
    public SenmlFault Resolve(in SenmlRecord record, Instant receivedAt, out RawSample sample, out bool timeIsRelative)
    {
        sample = default;
        timeIsRelative = false;
        if (record.RecordFault.IsSet) return record.RecordFault;
        var fault = ResolveValue(record, out var value).Or(ResolveName(record)).Or(ResolveUnit(record));
        if (fault.IsSet) return fault;
        fault = ResolveTime(_time + record.Time, receivedAt, out var time, out timeIsRelative);
        if (fault.IsSet) return fault;
        // A boolean is a switch: 0 or 1 of the unit "/" (section 12.1), so that it can never pass for a pH or a temperature.
        sample = new RawSample(_lastName!, time, value, record.Has(SenmlFields.BooleanValue) ? "/" : _lastUnit);
        return default;
    }

    private SenmlFault ResolveName(in SenmlRecord record)
    {
        var first = _name.In(_payload);
        var second = record.Name.In(_payload);
        if (first.Length + second.Length is 0 or > LongestName) return SenmlFault.Of(RefusalReason.InvalidName, first.IsEmpty ? second : first);
        Span<byte> name = stackalloc byte[first.Length + second.Length];
        first.CopyTo(name);
        second.CopyTo(name[first.Length..]);
        if (name.ContainsAnyExcept(NameBytes) || !char.IsAsciiLetterOrDigit((char)name[0])) return SenmlFault.Of(RefusalReason.InvalidName, name);
        if (_lastName is null || !Ascii.Equals(name, _lastName)) _lastName = Encoding.ASCII.GetString(name);
        return default;
    }

    private SenmlFault ResolveUnit(in SenmlRecord record)
    {
        var unit = (record.Has(SenmlFields.Unit) ? record.Unit : _unit).In(_payload);
        if (unit.Length > LongestUnit) return SenmlFault.Of(RefusalReason.WrongUnit, unit);
        if (unit.IsEmpty) _lastUnit = null;
        else if (_lastUnit is null || !Ascii.Equals(unit, _lastUnit)) _lastUnit = Encoding.UTF8.GetString(unit);
        return default;
    }

    private readonly SenmlFault ResolveValue(in SenmlRecord record, out double value)
    {
        value = 0;
        switch (record.Present & SenmlFields.AnyValue)
        {
            case SenmlFields.Value:
                value = PlainNumber.PositiveZero(_value + record.Value);
                break;
            case SenmlFields.BooleanValue:
                value = record.BooleanValue ? 1 : 0;
                break;
            // Section 4.5.4: a missing value counts as zero beside a base value; a sum alone is no reading.
            case SenmlFields.None when _hasValue && !record.Has(SenmlFields.Sum):
                value = PlainNumber.PositiveZero(_value);
                break;
            default:
                return new(RefusalReason.SenmlWithoutNumber, SenmlLabels.ValuesOf(record.Present));
        }
        return double.IsFinite(value) ? default : new(RefusalReason.NotFinite, "v");
    }

    /// <summary>Zero means that the device gave no time. To the microsecond, which is as fine as a double holds today's seconds.</summary>
    private static SenmlFault ResolveTime(double seconds, Instant receivedAt, out Instant time, out bool relative)
    {
        time = Instant.Never;
        relative = seconds < SmallestAbsoluteTime && seconds != 0;
        if (seconds == 0) return default;
        if (!double.IsFinite(seconds)) return new(RefusalReason.NotFinite, "t");
        var resolved = relative ? (receivedAt.UnixMicroseconds / 1e6) + seconds : seconds;
        if (resolved > LatestSecond) return new(RefusalReason.ClockAhead, $"t {seconds:R}");
        if (resolved < 1) return new(RefusalReason.ClockBehind, $"t {seconds:R}");
        var microseconds = (long)Math.Round((relative ? seconds : resolved) * 1e6);
        time = Instant.FromUnixMicroseconds(relative ? receivedAt.UnixMicroseconds + microseconds : microseconds);
        return default;
    }
}
