using System.Collections.Immutable;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant;

/// <summary>The answer to one event, for whoever waits for it. Expected failure is a value with a name.</summary>
public abstract record Outcome
{
    /// <summary>Done, and nothing more to say.</summary>
    public sealed record Done : Outcome
    {
        /// <summary>The one instance.</summary>
        public static Done Instance { get; } = new();
    }

    /// <summary>A check was taken into the record.</summary>
    /// <param name="Judgements">What it says of each probe.</param>
    /// <param name="Remarks">What is unlikely about the check itself, by field; the check is kept all the same.</param>
    public sealed record CheckTaken(ImmutableArray<Judgement> Judgements, ImmutableArray<FieldRemark> Remarks) : Outcome;

    /// <summary>The very same request was already carried out; nothing was changed.</summary>
    public sealed record AlreadyDone : Outcome
    {
        /// <summary>The one instance.</summary>
        public static AlreadyDone Instance { get; } = new();
    }

    /// <summary>Turned down; nothing was changed.</summary>
    /// <param name="Kind">What sort of no.</param>
    /// <param name="Remarks">What is wrong, by field.</param>
    public sealed record TurnedDown(TurnedDownKind Kind, ImmutableArray<FieldRemark> Remarks) : Outcome
    {
        /// <summary>One remark on one field.</summary>
        public static TurnedDown Because(TurnedDownKind kind, string field, Reason reason) => new(kind, [new(field, reason)]);
    }
}

/// <summary>Sorts of no.</summary>
public enum TurnedDownKind
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>A field is impossible.</summary>
    Invalid,
    /// <summary>The thing named does not exist here.</summary>
    NotFound,
    /// <summary>The id is taken by different content, or the state does not allow it.</summary>
    Conflict,
}
