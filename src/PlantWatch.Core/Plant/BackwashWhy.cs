using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant;

/// <summary>A backwash soon after another says why. Asked at the door: a journal of before it was asked keeps what was taken.</summary>
public static class BackwashWhy
{
    /// <summary>Why it cannot begin so; null when it says why, or need not.</summary>
    public static Outcome.TurnedDown? Objection(CircuitState state, BackwashBegun said)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(said);
        if (!string.IsNullOrWhiteSpace(said.Why) || state.Filters.FirstOrDefault(f => f.Id == said.FilterId) is not { } filter) return null;
        // Sent again, or one is under way: other words are said of that.
        if (filter.Backwash.Id == said.Id || (filter.Backwash.IsOpen && filter.Backwash.Holds(said.At))) return null;
        var isDirty = state.Alarms.GetValueOrDefault(RuleBook.FilterPressureRisen.KeyFor(said.FilterId)) is { Active: true };
        return BackwashQuiet.NeedsWhy(filter, isDirty, said.At)
            ? Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "why", Reason.Of("backwash.again_why", (said.At - filter.Backwash.Until).TotalMinutes)) : null;
    }
}
