using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>What a dosing pump says of itself and its tank. Both are kept as series beside the probes.</summary>
internal static class PumpFold
{
    // A counter that has run for centuries.
    private const double MostStrokes = 1e12;

    public static void State(Draft draft, int index, MessageArrived message, double code)
    {
        var plan = draft.Plan.Pumps[index];
        var pump = draft.Pumps[index];
        Store(draft, plan.StateSeries, message, code);
        var activity = PumpStateWords.ActivityOf(code);
        DayDoseFold.Ran(draft, index, message.At);
        SupervisionFold.Turns(draft, index, activity, message.At);
        pump = draft.Pumps[index];
        draft.Pumps[index] = pump with
        {
            Activity = activity,
            Since = activity == pump.Activity ? pump.Since : message.At,
            HeardAt = message.At,
            Run = Counted(pump, activity, message.At),
        };
        if (plan.StrokesTopic is null) TankFold.Heard(draft, index, pump.HeardAt, message.At);
        draft.Alarms.Look(RuleBook.PumpFault, RuleBook.PumpFault.KeyFor(plan.Id), plan.Id, activity == PumpActivity.Fault, message.At,
            () => Reason.Of("pump.fault", plan.Name));
    }

    // What it did until now is counted; that it runs now is known at once.
    private static PumpRun Counted(PumpState pump, PumpActivity now, Instant at)
    {
        var run = pump.Run.Until(pump.Activity, at);
        return now == PumpActivity.Running ? run with { RanAt = at } : run;
    }

    public static void Tank(Draft draft, int index, MessageArrived message, double percent)
    {
        var plan = draft.Plan.Pumps[index];
        if (percent is < 0 or > 100)
        {
            draft.Refuse(message.At, message.Topic, message.Payload, RefusalReason.OutsideRange, $"{percent} not in 0..100");
            return;
        }

        Store(draft, plan.TankSeries, message, percent);
        draft.Pumps[index] = draft.Pumps[index] with { Tank = new LastReading(message.At, message.At, percent, percent, Quality.Received) };
        if (plan.TankLitres is { } full) SupervisionFold.Holds(draft, index, percent * (full / 100), message.At);
        TankFold.Level(draft, index, message.At, percent);
        var key = RuleBook.TankLow.KeyFor(plan.Id);
        // A refill lifts the level by far more than the waves of a tank: two per cent are enough of a deadband.
        var low = percent < plan.TankLowPercent + (draft.Alarms.IsActive(key) ? 2 : 0);
        draft.Alarms.Look(RuleBook.TankLow, key, plan.Id, low, message.At, () => Reason.Of("pump.tank_low", plan.Name, percent, plan.TankLowPercent));
    }

    public static void Strokes(Draft draft, int index, MessageArrived message, double count)
    {
        var most = draft.Plan.Pumps[index].StrokesAre == StrokeCount.LastMinute ? StrokeRise.MostPerMinute : MostStrokes;
        if (!(count >= 0 && count <= most))
        {
            draft.Refuse(message.At, message.Topic, message.Payload, RefusalReason.OutsideRange, $"{count} not in 0..{most}");
            return;
        }

        Store(draft, draft.Plan.Pumps[index].StrokesSeries, message, count);
        DayDoseFold.Stroked(draft, index, count, message.At);
        DosingFlowFold.Stroked(draft, index, count, message.At);
        SupervisionFold.Stroked(draft, index, count, message.At);
        TankFold.Heard(draft, index, draft.Pumps[index].Strokes.MeasuredAt, message.At);
        draft.Pumps[index] = draft.Pumps[index] with { Strokes = new LastReading(message.At, message.At, count, count, Quality.Received) };
    }

    private static void Store(Draft draft, string series, MessageArrived message, double value)
    {
        if (message.Packet is not null) draft.Sums.ByPacket++;
        else draft.Sums.AtLeastOnce++;
        draft.Readings.Add(new Reading(series, message.At, message.At, value, Quality.Received, Order.Newest));
    }
}
