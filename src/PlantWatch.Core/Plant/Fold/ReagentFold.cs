using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Reagents: a lot that somebody opens, and the day on which the one in use is out of date.</summary>
internal static class ReagentFold
{
    // A phone's clock may be ahead; no kit is opened for so long.
    private static readonly TimeSpan Ahead = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan LongAgo = TimeSpan.FromDays(5 * 366);

    public static Outcome Note(Draft draft, ReagentOpened said)
    {
        var index = IndexOf(draft, said.ReagentId);
        if (index < 0) return No(TurnedDownKind.NotFound, "reagentId", Reason.Of("reagent.unknown", said.ReagentId));
        var lot = said.Lot with { Number = said.Lot.Number?.Trim() ?? "", NotedBy = said.Lot.NotedBy?.Trim() ?? "" };
        foreach (var known in draft.Reagents[index].Lots)
            if (known.Id == lot.Id) return known == lot ? Outcome.AlreadyDone.Instance : No(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        if (Objection(lot, said.At) is { } no) return no;
        draft.Reagents = draft.Reagents.SetItem(index, draft.Reagents[index].With(lot));
        draft.Write(said.At, lot.OpenedAt, said.ReagentId, new ReagentEntry(said.ReagentId, lot));
        Tick(draft, said.At);
        return Outcome.Done.Instance;
    }

    public static void Tick(Draft draft, Instant now)
    {
        for (var i = 0; i < draft.Reagents.Length; i++)
            if (draft.Plan.Reagents[i] is { IsWatchedHere: true } plan) Look(draft, plan, draft.Reagents[i], now);
    }

    private static void Look(Draft draft, ReagentPlan plan, ReagentState state, Instant now)
    {
        var (key, why) = (RuleBook.ReagentOutOfDate.KeyFor(plan.Id), ReagentWatch.OutOfDate(plan, state, draft.Plan.TimeZone, now));
        if (why is not null || draft.Alarms.Knows(key)) draft.Alarms.Look(RuleBook.ReagentOutOfDate, key, plan.Id, why is not null, now, () => why!);
    }

    private static Outcome.TurnedDown? Objection(ReagentLot lot, Instant now)
    {
        if (lot.NotedBy.Length == 0) return No(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (lot.Number.Length == 0) return No(TurnedDownKind.Invalid, "lot", Reason.Of("field.required"));
        if (lot.LastDay.Year is < 2000 or > 2100) return No(TurnedDownKind.Invalid, "lastDay", Reason.Of("reagent.day_astray"));
        return !lot.OpenedAt.IsSet || lot.OpenedAt > now + Ahead || now - lot.OpenedAt > LongAgo ? No(TurnedDownKind.Invalid, "openedAt", Reason.Of("reagent.opened_astray")) : null;
    }

    internal static int IndexOf(Draft draft, string? id)
    {
        for (var i = 0; i < draft.Reagents.Length; i++)
            if (draft.Reagents[i].Id == id) return i;
        return -1;
    }

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason reason) => Outcome.TurnedDown.Because(kind, field, reason);
}
