using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>Why something that arrived was not stored as a reading. A closed list: each has a test, and its bytes are kept.</summary>
public enum RefusalReason
{
    /// <summary>Not refused.</summary>
    None = 0,
    /// <summary>No probe or pump of the plant file has this topic.</summary>
    UnknownTopic,
    /// <summary>The payload is empty.</summary>
    Empty,
    /// <summary>The payload is larger than a probe can need.</summary>
    TooLarge,
    /// <summary>The payload is not valid UTF-8.</summary>
    InvalidUtf8,
    /// <summary>The text is not a decimal number.</summary>
    NotANumber,
    /// <summary>NaN or infinity.</summary>
    NotFinite,
    /// <summary>Outside the physical range the plant file gives for the instrument.</summary>
    OutsideRange,
    /// <summary>A retained message: a last value, not a new sample.</summary>
    Retained,
    /// <summary>Device time lies ahead of the receive time by more than the tolerance.</summary>
    ClockAhead,
    /// <summary>Device time lies further in the past than any back-fill the plant keeps.</summary>
    ClockBehind,
    /// <summary>Another value is already stored for this device time; the first one stands.</summary>
    ConflictingValue,
    /// <summary>Not the JSON or CBOR that it should be, or not an array of SenML records.</summary>
    MalformedSenml,
    /// <summary>A SenML version or a mandatory field (label ending in _) that is not understood.</summary>
    UnsupportedSenml,
    /// <summary>A SenML record without exactly one value, or with a value that is no number.</summary>
    SenmlWithoutNumber,
    /// <summary>A SenML name that breaks RFC 8428 section 4.5.1.</summary>
    InvalidName,
    /// <summary>No probe of the topic has this record name.</summary>
    UnknownName,
    /// <summary>The unit cannot be converted to the probe's.</summary>
    WrongUnit,
    /// <summary>Not one of the words or codes of a pump's state.</summary>
    UnknownState,
    /// <summary>Our own fold failed on it: a defect, set aside with its bytes so that nothing else waits.</summary>
    Defect,
}

/// <summary>A refused item: kept with its bytes and the reason, counted, shown.</summary>
/// <param name="Id">UUIDv7.</param>
/// <param name="ReceivedAt">When it arrived.</param>
/// <param name="Topic">Where.</param>
/// <param name="Payload">The bytes as they came.</param>
/// <param name="Reason">Why.</param>
/// <param name="Detail">The offending part in words: a record name, a value and its range.</param>
public sealed record Refusal(Guid Id, Instant ReceivedAt, string Topic, ReadOnlyMemory<byte> Payload, RefusalReason Reason, string Detail);
