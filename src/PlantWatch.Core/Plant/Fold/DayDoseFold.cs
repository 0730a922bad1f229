using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>What each pump was driven to deliver today: by its strokes where it tells them, else by how long it ran.</summary>
internal static class DayDoseFold
{
    private static readonly TimeSpan Often = TimeSpan.FromMinutes(1);

    // What is added at once: ticks come far oftener, and a gap between them is time in which nobody listened (common practice).
    private static readonly TimeSpan LongestRun = TimeSpan.FromMinutes(5);

    /// <summary>It told its strokes.</summary>
    public static void Stroked(Draft draft, int index, double count, Instant at)
    {
        var (plan, last) = (draft.Plan.Pumps[index], draft.Pumps[index].Strokes);
        if (plan.MillilitresPerStroke is not { } stroke || !last.MeasuredAt.IsSet) return;
        var minutes = Math.Min((at - last.MeasuredAt).TotalMinutes, LongestRun.TotalMinutes);
        var strokes = plan.StrokesAre == StrokeCount.LastMinute ? count * minutes : StrokeRise.Of(last.Value, count, at - last.MeasuredAt) ?? 0;
        Add(draft, index, strokes * stroke / 1000, at);
    }

    /// <summary>It says what it does now: until then it did what it said before.</summary>
    public static void Ran(Draft draft, int index, Instant at)
    {
        var (plan, pump) = (draft.Plan.Pumps[index], draft.Pumps[index]);
        if (plan.StrokesTopic is not null || plan.LitresPerHour is not { } rate) return;
        if (pump.Activity == PumpActivity.Running && pump.Today.UpTo.IsSet) Add(draft, index, rate * Hours(pump.Today.UpTo, at), at);
        else draft.Pumps[index] = pump with { Today = pump.Today with { UpTo = at } };
    }

    /// <summary>Time goes on: a pump that runs delivers, as long as it was heard within the hour.</summary>
    public static void Tick(Draft draft, Instant now)
    {
        for (var i = 0; i < draft.Pumps.Length; i++)
        {
            // A new day: what was too much yesterday is over.
            if (draft.Plan.Pumps[i].DailyLimitLitres is { } limit && draft.Pumps[i].Today.Litres > limit && draft.Pumps[i].Today.Day < StoreFold.DayOf(draft, now)) PumpTroubleAlarms.OfDay(draft, i, now);
            if (draft.Pumps[i] is { Activity: PumpActivity.Running, Today.UpTo: { IsSet: true } upTo, HeardAt: var heard } && now - upTo >= Often && now - heard <= PumpRun.LongestSilence) Ran(draft, i, now);
        }
    }

    private static double Hours(Instant from, Instant to) => Math.Clamp((to - from).TotalHours, 0, LongestRun.TotalHours);

    private static void Add(Draft draft, int index, double litres, Instant at)
    {
        draft.Pumps[index] = draft.Pumps[index] with { Today = draft.Pumps[index].Today.And(litres, StoreFold.DayOf(draft, at), at) };
        TankFold.Delivered(draft, index, litres, at);
        PumpTroubleAlarms.OfDay(draft, index, at);
    }
}
