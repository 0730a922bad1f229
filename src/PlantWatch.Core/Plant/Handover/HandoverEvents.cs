using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Handover;

/// <summary>Who leaves writes what who comes must know. Every circuit of the plant is told.</summary>
/// <param name="At">When.</param>
/// <param name="Id">Id of the handover, UUIDv7.</param>
/// <param name="By">Who leaves.</param>
/// <param name="Note">In words.</param>
public sealed record HandoverWritten(Instant At, Guid Id, string By, string Note) : PlantEvent(At);

/// <summary>Who comes in signs what was shown. Every circuit of the plant is told.</summary>
/// <param name="At">When.</param>
/// <param name="Id">Id of the handover that was written, or a new one where nobody wrote any.</param>
/// <param name="By">Who comes in.</param>
/// <param name="Remark">In words; null for none.</param>
/// <param name="Shown">Hash of the sheet of this circuit that was shown.</param>
public sealed record HandoverSigned(Instant At, Guid Id, string By, string? Remark, string Shown) : PlantEvent(At);

/// <summary>What happened to a handover.</summary>
public enum HandoverChange
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Who leaves wrote it.</summary>
    Written,
    /// <summary>Who comes in signed it.</summary>
    TakenOver,
    /// <summary>Another one was written before anybody had signed it.</summary>
    LeftUnsigned,
}

/// <summary>A handover was written, signed, or left unsigned.</summary>
/// <param name="HandoverId">Its id.</param>
/// <param name="Change">What happened.</param>
/// <param name="From">Who left; null where nobody wrote anything.</param>
/// <param name="To">Who came in; null while nobody signed.</param>
/// <param name="Note">What who left wrote.</param>
/// <param name="Remark">What who came in added.</param>
/// <param name="WrittenAt">When it was written; never where it was not.</param>
public sealed record HandoverEntry(Guid HandoverId, HandoverChange Change, string? From, string? To, string? Note, string? Remark, Instant WrittenAt) : EntryBody
{
    /// <summary>What stood in this circuit when it was signed; null before.</summary>
    public HandoverSheet? Sheet { get; init; }

    /// <summary>Its hash; null before.</summary>
    public string? Shown { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "handover";
}

/// <summary>How the handover of a circuit stands: the one that waits for a signature, and the newest that was signed. The default has neither.</summary>
/// <param name="Id">The one that waits; empty when none does.</param>
/// <param name="From">Who wrote it.</param>
/// <param name="Note">What.</param>
/// <param name="WrittenAt">When.</param>
/// <param name="SignedId">The newest that was signed; empty before the first.</param>
/// <param name="SignedBy">Who signed it.</param>
/// <param name="SignedAt">When.</param>
public readonly record struct HandoverStanding(Guid Id, string? From, string? Note, Instant WrittenAt, Guid SignedId, string? SignedBy, Instant SignedAt)
{
    /// <summary>One was written and nobody has signed it.</summary>
    public bool Waits => Id != Guid.Empty;
}
