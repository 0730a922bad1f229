using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Fuzz;

/// <summary>One payload through one decoder: what came of it, what it cost, and what is wrong with that.</summary>
internal sealed class Examination
{
    /// <summary>Memory that a payload may cost whatever it is: an exception of the JSON reader is the most of it.</summary>
    public const int AnyPayload = 16 * 1024;

    /// <summary>Memory that each byte of a payload may cost beside. It comes from the shortest record of CBOR, one byte, that is refused with a word of its own.</summary>
    public const int EachByte = 384;

    /// <summary>What came of it.</summary>
    public List<DecodedItem> Items { get; private set; } = [];

    /// <summary>Bytes that were allocated.</summary>
    public long Allocated { get; private set; }

    /// <summary>What a payload of some length may allocate: 24 MiB for the largest.</summary>
    public static long Allowed(int length) => AnyPayload + ((long)EachByte * Math.Min(length, PayloadText.Largest));

    /// <summary>Decodes, and gives what is wrong; null when nothing is.</summary>
    public string? Fault(Target target, byte[] payload)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        Items = [];
        try
        {
            target.Decode(payload, Items);
        }
        catch (Exception e)
        {
            return $"threw {e.GetType().Name}: {e.Message}";
        }

        Allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        if (Allocated > Allowed(payload.Length)) return $"allocated {Allocated:N0} bytes";
        if (Items.Count == 0) return "gave no item";
        foreach (var item in Items)
            if (Fault(target, item, payload.Length) is { } fault) return fault;
        return null;
    }

    /// <summary>Decodes once more; the same must come of it.</summary>
    public string? Differs(Target target, byte[] payload)
    {
        List<DecodedItem> again = [];
        target.Decode(payload, again);
        return again.SequenceEqual(Items) ? null : "gave something else the second time";
    }

    private static string? Fault(Target target, in DecodedItem item, int length)
    {
        if (item.Bytes.Start.GetOffset(length) < 0 || item.Bytes.End.GetOffset(length) > length || item.Bytes.Start.GetOffset(length) > item.Bytes.End.GetOffset(length)) return "names bytes that are not there";
        return item.IsSample ? Fault(item.Sample) : FaultOfRefusal(target, item);
    }

    private static string? FaultOfRefusal(Target target, in DecodedItem item)
    {
        if (!target.Refusals.Contains(item.Refusal)) return $"refused for {item.Refusal}, which is not in its list";
        if (item.Detail.Length > 120) return $"has a detail of {item.Detail.Length} characters";
        return item.Detail.Any(char.IsControl) ? "has a control character in its detail" : null;
    }

    private static string? Fault(in RawSample sample)
    {
        if (!double.IsFinite(sample.Value)) return $"gave {sample.Value} as a reading";
        if (sample.Value == 0 && double.IsNegative(sample.Value)) return "gave a nought below nought";
        if (sample.Name.Length > 256 || !sample.Name.All(c => char.IsAsciiLetterOrDigit(c) || "-:./_".Contains(c, StringComparison.Ordinal))) return "gave a name that is none";
        if (sample.Unit is { Length: 0 or > 32 }) return "gave a unit that is none";
        return sample.DeviceTime == Instant.Never || sample.DeviceTime.ToString().Length > 0 ? null : "gave a time that is none";
    }
}
