using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Rounds through the plant room.</summary>
internal static class RoundFold
{
    // A phone's clock may be ahead: twice what a check is allowed (our choice, because nothing of the water is judged by the minute of a round).
    private static readonly TimeSpan Ahead = 2 * ImpossibleChecks.ClockTolerance;

    // A round is typed in on the day after, or from paper within the month (our choice, because a sheet is put away with its month).
    private static readonly TimeSpan LongAgo = TimeSpan.FromDays(31);
    private static readonly TimeOnly Noon = new(12, 0);

    public static Outcome Walk(Draft draft, PlantRoundDone said)
    {
        var (round, plan) = (said.Round, draft.Plan.RoundInForce);
        if (draft.Round.Known.Contains(round.Id)) return Outcome.AlreadyDone.Instance;
        if (Objection(plan, round, said.At) is { } no) return no;
        var lines = RoundFindings.Of(draft.Plan, plan, round, draft.Round, since => Bathers(draft, since, round.WalkedAt));
        draft.Round = draft.Round.With(round);
        draft.Write(said.At, round.WalkedAt, draft.Plan.Id, new RoundEntry(round, lines));
        return Outcome.Done.Instance;
    }

    /// <summary>How many bathed between two readings of a meter, of each day and pool by the newest count; null where nobody counted.</summary>
    /// <remarks>
    /// A count is of a whole day, a reading of an hour. Our choice: a day's bathers come after a reading of its morning and before one of its afternoon, parted at noon, because most rounds are walked
    /// before the house opens or after it has closed. So a round of the morning has yesterday's in it, and today's, which is not written yet, is the next one's.
    /// </remarks>
    private static int? Bathers(Draft draft, Instant since, Instant until)
    {
        if (!SiteClock.TryOf(draft.Plan.TimeZone, out var clock)) return null;
        var (first, end) = (NextToCome(clock, since), NextToCome(clock, until));
        var counts = draft.Bathers.Where(b => b.Day >= first && b.Day < end).GroupBy(b => (b.PoolId, b.Day)).Select(g => g.Last().Number).ToArray();
        return counts.Length == 0 ? null : counts.Sum();
    }

    // The first day whose bathers come after a reading.
    private static DateOnly NextToCome(SiteClock clock, Instant read)
    {
        var day = clock.DayOf(read);
        return read < clock.At(day, Noon) ? day : day.AddDays(1);
    }

    private static Outcome.TurnedDown? Objection(RoundPlan plan, PlantRound round, Instant now)
    {
        if (string.IsNullOrWhiteSpace(round.By)) return No("by", Reason.Of("field.required"));
        if (!round.WalkedAt.IsSet || round.WalkedAt > now + Ahead || now - round.WalkedAt > LongAgo) return No("walkedAt", Reason.Of("round.walked_astray"));
        if (round.Readings.IsEmpty && string.IsNullOrWhiteSpace(round.Remark)) return No("readings", Reason.Of("round.empty"));
        for (var i = 0; i < round.Readings.Length; i++)
            if (OfReading(plan, round, i) is { } why) return No($"readings[{i}]", why);
        return null;
    }

    private static Reason? OfReading(RoundPlan plan, PlantRound round, int i)
    {
        var reading = round.Readings[i];
        if (plan.Items.FirstOrDefault(item => item.Id == reading.ItemId) is not { } item) return Reason.Of("round.item_unknown", reading.ItemId);
        if (round.Readings.Take(i).Any(r => r.ItemId == reading.ItemId)) return Reason.Of("round.item_twice");
        if (item.Kind == RoundReadingKind.Works) return reading.Works is null ? Reason.Of("round.say_whether") : null;
        var possible = item.Kind.Possible();
        return reading.Value is { } value && possible.Contains(value) ? null : Reason.Of("round.impossible", possible.Low, possible.High, item.Kind.Unit());
    }

    private static Outcome.TurnedDown No(string field, Reason why) => Outcome.TurnedDown.Because(TurnedDownKind.Invalid, field, why);
}
