using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

//      GET  /api/v1/handover          HandoverView: what stands, what changed since the last signature, what was handed over before
//      POST /api/v1/handover/note     HandoverNote -> HandoverView: who leaves writes it
//      POST /api/v1/handover/sign     HandoverSignature -> HandoverView: who comes in signs what was shown

/// <summary>Who leaves writes what who comes must know.</summary>
/// <param name="Id">UUIDv7: sending it again is harmless.</param>
/// <param name="By">Who leaves.</param>
/// <param name="Note">In words.</param>
public sealed record HandoverNote(Guid Id, string? By, string? Note);

/// <summary>Who comes in signs.</summary>
/// <param name="Id">The handover that waits, or a new UUIDv7 where nobody wrote one.</param>
/// <param name="By">Who comes in.</param>
/// <param name="Remark">In words; null for none.</param>
/// <param name="Shown">What was shown, as the view told it: where something changed since, it has to be read again.</param>
public sealed record HandoverSignature(Guid Id, string? By, string? Remark, string? Shown);

/// <summary>What a line did since the last signature.</summary>
public enum HandoverMove
{
    /// <summary>There is no signature to hold it against.</summary>
    None = 0,
    /// <summary>It was not there.</summary>
    New,
    /// <summary>It was there and stands otherwise now.</summary>
    Changed,
    /// <summary>It stands as it stood.</summary>
    Same,
    /// <summary>It was there and is not any more.</summary>
    Gone,
}

/// <summary>The handover page.</summary>
/// <param name="Shown">Names the sheets that are shown, a circuit each: to be sent back with the signature.</param>
/// <param name="Waiting">The one that waits for a signature; null when none does.</param>
/// <param name="Last">The newest that was signed; null before the first.</param>
/// <param name="Lines">What stands.</param>
/// <param name="Gone">What stood at the last signature and does not any more.</param>
/// <param name="Past">Handovers, newest first, the unsigned among them.</param>
public sealed record HandoverView(string Shown, HandoverSaid? Waiting, HandoverSaid? Last, IReadOnlyList<HandoverLineView> Lines, IReadOnlyList<HandoverLineView> Gone, IReadOnlyList<PastHandover> Past);

/// <summary>A handover in its words.</summary>
/// <param name="Id">Its id.</param>
/// <param name="From">Who left; null where nobody wrote anything.</param>
/// <param name="To">Who came in; null while nobody signed.</param>
/// <param name="Note">What who left wrote.</param>
/// <param name="Remark">What who came in added.</param>
/// <param name="WrittenAt">When it was written; null where it was not.</param>
/// <param name="SignedAt">When it was signed; null while it was not.</param>
public sealed record HandoverSaid(Guid Id, string? From, string? To, string? Note, string? Remark, Instant? WrittenAt, Instant? SignedAt);

/// <summary>A handover of the record.</summary>
/// <param name="Said">Its words.</param>
/// <param name="Lines">What stood when it was signed.</param>
/// <param name="Intact">The lines are those that were signed: their hash is the one of the signature. True where nothing was signed.</param>
public sealed record PastHandover(HandoverSaid Said, IReadOnlyList<HandoverLineView> Lines, bool Intact);

/// <summary>A line of a handover.</summary>
/// <param name="Part">What it is about.</param>
/// <param name="Key">What tells it from the others of its part.</param>
/// <param name="Circuit">Its circuit.</param>
/// <param name="SubjectName">What people call the thing.</param>
/// <param name="Title">What it is: the title of an alarm, the name of a task, the tests of a check; null for pools and jobs.</param>
/// <param name="Text">What the plant says of it, or what a job is about.</param>
/// <param name="Said">What people said to it.</param>
/// <param name="State">Where it stands.</param>
/// <param name="Move">What it did since the last signature.</param>
public sealed record HandoverLineView(HandoverPart Part, string Key, string Circuit, string SubjectName, string? Title, string? Text, string? Said, string State, HandoverMove Move);
