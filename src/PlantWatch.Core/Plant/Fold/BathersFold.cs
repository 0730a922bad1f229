using PlantWatch.Core.Reasons;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>How many bathed on a day, and for how long a product lasts: told by people and by the shell, and remembered.</summary>
internal static class BathersFold
{
    private const int Remembered = 256;
    private const int Most = 100_000;
    private const int OldestDays = 400;

    public static Outcome Count(Draft draft, BathersCounted said)
    {
        var count = said.Count with { By = said.Count.By?.Trim() ?? "", SaidAt = said.At };
        foreach (var known in draft.Bathers)
            if (known.Id == count.Id)
                return known with { SaidAt = said.At } == count ? Outcome.AlreadyDone.Instance : Outcome.TurnedDown.Because(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        if (draft.Index.Pool(count.PoolId) < 0) return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "poolId", Reason.Of("pool.unknown", count.PoolId));
        if (Objection(count, StoreFold.DayOf(draft, said.At)) is var (field, why)) return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, field, why);
        draft.Bathers = draft.Bathers.Length < Remembered ? draft.Bathers.Add(count) : draft.Bathers.RemoveAt(0).Add(count);
        draft.Entries.Add(new RecordEntry(count.Id, said.At, said.At, count.PoolId, new BathersEntry(count)));
        return Outcome.Done.Instance;
    }

    private static (string Field, Reason Why)? Objection(BatherCount count, DateOnly today)
    {
        if (count.By.Length == 0) return ("by", Reason.Of("field.required"));
        if (count.Number is < 0 or > Most) return ("number", Reason.Of("bathers.number_impossible"));
        return count.Day > today || count.Day < today.AddDays(-OldestDays) ? ("day", Reason.Of("bathers.day_astray")) : null;
    }
}
