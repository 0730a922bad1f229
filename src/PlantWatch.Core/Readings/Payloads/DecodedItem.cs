namespace PlantWatch.Core.Readings.Payloads;

/// <summary>One item of a payload: a sample, or the reason why it is none. The default is refused as <see cref="RefusalReason.Empty"/>, so a zeroed item never looks like a reading.</summary>
public readonly record struct DecodedItem
{
    private readonly bool _isSample;
    private readonly RefusalReason _refusal;
    private readonly string? _detail;

    private DecodedItem(bool isSample, RawSample sample, bool timeIsRelative, RefusalReason refusal, string? detail, Range bytes)
    {
        _isSample = isSample;
        Sample = sample;
        TimeIsRelative = timeIsRelative;
        _refusal = refusal;
        _detail = detail;
        Bytes = bytes;
    }

    /// <summary>The sample; meaningless unless <see cref="IsSample"/>.</summary>
    public RawSample Sample { get; }

    /// <summary>True when the item is a sample.</summary>
    public bool IsSample => _isSample;

    /// <summary>
    /// True when the device time was counted from the reception. It tells when, but it is no identity: a redelivered packet resolves to another time.
    /// </summary>
    public bool TimeIsRelative { get; }

    /// <summary>Why there is no sample; <see cref="RefusalReason.None"/> when there is one.</summary>
    public RefusalReason Refusal => _isSample ? RefusalReason.None : _refusal == RefusalReason.None ? RefusalReason.Empty : _refusal;

    /// <summary>The offending part: an excerpt, a record and its label, a size. Short, free of control characters, empty for a sample.</summary>
    public string Detail => _detail ?? "";

    /// <summary>Which bytes of the payload the item came from: a record of a pack, or all. A refusal keeps these and not the whole pack once for each bad record.</summary>
    public Range Bytes { get; }

    /// <summary>An item that is a sample.</summary>
    public static DecodedItem Of(RawSample sample, Range bytes, bool timeIsRelative = false) =>
        new(true, sample, timeIsRelative, RefusalReason.None, null, bytes);

    /// <summary>An item that is refused; <see cref="RefusalReason.None"/> is no reason and counts as <see cref="RefusalReason.Empty"/>.</summary>
    public static DecodedItem Refused(RefusalReason reason, string detail, Range bytes) =>
        new(false, default, false, reason, detail, bytes);
}
