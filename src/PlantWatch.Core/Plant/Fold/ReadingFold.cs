using System.Collections.Immutable;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>One sample of a probe: its identity, its quality, what it means for the probe and the alarms.</summary>
internal static class ReadingFold
{
    public static void Take(Draft draft, int index, Instant measuredAt, MessageArrived message, double raw, in DecodedItem item)
    {
        var state = draft.Probes[index];
        var newest = measuredAt > state.Last.MeasuredAt;
        if (item.Sample.DeviceTime.IsSet && !item.TimeIsRelative)
        {
            if (measuredAt == state.Last.MeasuredAt && state.Last.Quality != Quality.NotReceived && RepeatsNewest(draft, state, message, item, raw)) return;
            draft.Sums.ByDeviceTime++;
        }
        else if (message.Packet is not null) draft.Sums.ByPacket++;
        else draft.Sums.AtLeastOnce++;

        var plan = draft.Plan.Probes[index];
        var working = state.Work.Holds(measuredAt);
        // An electrode in a buffer sees no more of the pool than one in a cell without flow.
        var flow = working ? false : FlowFold.Of(draft, index);
        var quality = QualityOf(draft.Index.LateAfter[index], measuredAt, Instant.Later(draft.Watermark, message.At), flow);
        draft.Readings.Add(new Reading(plan.Id, measuredAt, message.At, raw, quality, newest ? Order.Newest : Order.BackFill));
        if (!newest) return;

        var value = draft.Calibrations.Correct(index, measuredAt, raw);
        var signal = SignalHealth.Next(plan, state.Signal, measuredAt, raw, flow, item.Sample.DeviceTime.IsSet ? (message.At - measuredAt).TotalSeconds : 0);
        if (working) signal = AtWork(state.Signal, signal);
        draft.Probes[index] = state with { Last = new LastReading(measuredAt, message.At, raw, value, quality), Signal = signal, Trust = Leapt(draft, index, signal), Trail = TrendFold.Hear(draft, index, signal, quality, measuredAt, value) };
        if (signal.Standing != state.Signal.Standing)
            draft.Write(message.At, measuredAt, plan.Id, new StandingEntry(plan.Id, signal.Standing, signal.Reasons));
        if ((quality & Quality.Late) != 0) return;
        SupervisionFold.Hear(draft, index, measuredAt, raw, value, quality, signal.LeaptAt != state.Signal.LeaptAt || (state.Work.Holds(state.Last.MeasuredAt) && !working));
        if (plan.Measurand == Measurand.SampleFlow) FlowFold.Look(draft, index, measuredAt, raw);
        else if (plan.Measurand == Measurand.CirculationFlow) CirculationFold.Look(draft, plan, measuredAt, value);
        else if (plan.Measurand == Measurand.FilterPressure) FilterFold.Look(draft, plan, measuredAt, value);
        else if (quality.IsGood())
        {
            LimitFold.Look(draft, index, plan, measuredAt, raw, value);
            if (draft.Probes[index].Trail.Block != state.Trail.Block) TrendFold.Look(draft, index, measuredAt);
        }

        StandingFold.Look(draft, index, measuredAt);
    }

    // A leap that water cannot make is the probe's, until a test says otherwise.
    private static ProbeTrust Leapt(Draft draft, int index, SignalHealth signal)
    {
        var before = draft.Probes[index];
        return signal.LeaptAt.IsSet && signal.LeaptAt != before.Signal.LeaptAt
            ? Reconciliation.Leapt(before.Trust, draft.Plan.Probes[index], draft.Calibrations.All, new(signal.LeaptAt, signal.LeaptBy)) : before.Trust;
    }

    private static readonly ImmutableArray<Reason> WorkedOn = [Reason.Of("signal.worked_on")];

    // Said once: a standing that is the same with every reading is no news.
    private static SignalHealth AtWork(SignalHealth before, SignalHealth now) => now with { Reasons = before.Reasons is [{ Code: "signal.worked_on" }] ? before.Reasons : WorkedOn };

    /// <summary>The newest device time again: the same value is a duplicate, another one a conflict that is refused and kept.</summary>
    private static bool RepeatsNewest(Draft draft, ProbeState state, MessageArrived message, in DecodedItem item, double raw)
    {
        if (state.Last.Raw.Equals(raw)) draft.Sums.Duplicates++;
        else draft.Refuse(message.At, message.Topic, message.Payload[item.Bytes], RefusalReason.ConflictingValue, $"{state.Last.MeasuredAt}: {state.Last.Raw}");
        return true;
    }

    private static Quality QualityOf(TimeSpan lateAfter, Instant measuredAt, Instant now, bool? flow)
    {
        var quality = Quality.Received;
        if (measuredAt < now - lateAfter) quality |= Quality.Late;
        if (flow == false) quality |= Quality.FunctionCheck;
        return quality;
    }
}
