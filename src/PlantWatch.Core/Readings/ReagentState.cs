using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>What is known of a reagent.</summary>
/// <param name="Id">The reagent's id.</param>
/// <param name="Lots">The newest lots, in the order of their opening: a test that is told late is judged by the lot of its time.</param>
public sealed record ReagentState(string Id, ImmutableArray<ReagentLot> Lots)
{
    /// <summary>How many lots are remembered.</summary>
    public const int Remembered = 12;

    /// <summary>The lot in use at an instant: the newest one opened by then. Null when none was noted.</summary>
    public ReagentLot? InUse(Instant at)
    {
        ReagentLot? newest = null;
        foreach (var lot in Lots)
            if (lot.OpenedAt <= at) newest = lot;
        return newest;
    }

    /// <summary>With one lot more.</summary>
    public ReagentState With(ReagentLot lot)
    {
        // Of two opened at the same moment the one that was noted last is in use: it is the correction.
        ImmutableArray<ReagentLot> all = [.. Lots.Where(l => l.OpenedAt <= lot.OpenedAt), lot, .. Lots.Where(l => l.OpenedAt > lot.OpenedAt)];
        return this with { Lots = all.Length > Remembered ? all.RemoveAt(0) : all };
    }
}

/// <summary>A lot of a reagent, as somebody noted it when it was opened.</summary>
/// <param name="Id">Id of the note, UUIDv7.</param>
/// <param name="Number">Lot number as printed.</param>
/// <param name="LastDay">The last day on which it may be used, as printed; of a printed month its last day.</param>
/// <param name="OpenedAt">When it was opened.</param>
/// <param name="NotedBy">Who noted it.</param>
public sealed record ReagentLot(Guid Id, string Number, DateOnly LastDay, Instant OpenedAt, string NotedBy);
