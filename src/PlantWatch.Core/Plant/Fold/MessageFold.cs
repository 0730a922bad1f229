using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>From a message to readings: who listens, was it taken before, what does it say.</summary>
internal static class MessageFold
{
    public static void Fold(Draft draft, MessageArrived message, List<DecodedItem> items)
    {
        draft.Sums.Messages++;
        // QoS 0 has no packet identifier, and nothing can be told by it.
        if (message.Packet is { PacketId: 0 }) message = message with { Packet = null };
        var route = draft.Index.Find(message.Topic);
        if (route is null) RefuseWhole(draft, message, RefusalReason.UnknownTopic);
        else if (message.Retained) RefuseWhole(draft, message, RefusalReason.Retained);
        else Open(draft, message, route, items);
    }

    private static void Open(Draft draft, MessageArrived message, TopicRoute route, List<DecodedItem> items)
    {
        if (route.Format == PayloadFormat.Number || route.PumpState >= 0)
        {
            OpenOne(draft, message, route);
            return;
        }

        items.Clear();
        if (route.Format == PayloadFormat.SenmlCbor) SenmlCbor.Decode(message.Payload.Span, message.At, items);
        else SenmlJson.Decode(message.Payload.Span, message.At, items);
        draft.Sums.Received += items.Count;
        if (WasTaken(draft, message))
        {
            draft.Sums.Duplicates += items.Count;
            return;
        }

        foreach (ref readonly var item in System.Runtime.InteropServices.CollectionsMarshal.AsSpan(items)) One(draft, message, route, item);
    }

    // Nearly every message of a plant is one plain number: no list for it.
    private static void OpenOne(Draft draft, MessageArrived message, TopicRoute route)
    {
        var item = route.PumpState >= 0 ? PumpStateWords.Decode(message.Payload.Span) : PlainNumber.Decode(message.Payload.Span);
        draft.Sums.Received++;
        if (WasTaken(draft, message)) draft.Sums.Duplicates++;
        else One(draft, message, route, item);
    }

    private static void One(Draft draft, MessageArrived message, TopicRoute route, in DecodedItem item)
    {
        if (item.IsSample) Take(draft, message, route, item);
        else draft.Refuse(message.At, message.Topic, message.Payload[item.Bytes], item.Refusal, item.Detail);
    }

    private static void Take(Draft draft, MessageArrived message, TopicRoute route, in DecodedItem item)
    {
        if (route.PumpState >= 0)
        {
            PumpFold.State(draft, route.PumpState, message, item.Sample.Value);
            return;
        }

        if (route.PumpTank >= 0)
        {
            PumpFold.Tank(draft, route.PumpTank, message, item.Sample.Value);
            return;
        }

        if (route.PumpStrokes >= 0)
        {
            PumpFold.Strokes(draft, route.PumpStrokes, message, item.Sample.Value);
            return;
        }

        var (reason, detail) = Place(draft, route, message.At, item.Sample, out var probe, out var value, out var measuredAt);
        if (reason != RefusalReason.None) draft.Refuse(message.At, message.Topic, message.Payload[item.Bytes], reason, detail);
        else ReadingFold.Take(draft, probe, measuredAt, message, value, item);
    }

    private static (RefusalReason, string) Place(
        Draft draft, TopicRoute route, Instant receivedAt, in RawSample sample, out int probe, out double value, out Instant measuredAt)
    {
        value = sample.Value;
        measuredAt = sample.DeviceTime.IsSet ? sample.DeviceTime : receivedAt;
        if (!route.TryProbe(sample.Name, out probe, out var scale)) return (RefusalReason.UnknownName, sample.Name);
        var plan = draft.Plan.Probes[probe];
        // A unit in the payload says what was sent; the plant file's unit is for payloads that name none.
        if (sample.Unit is { } unit && !ReadingUnits.TryScale(plan.Measurand, unit, out scale))
            return (RefusalReason.WrongUnit, $"{sample.Name} {unit}");
        value = scale.Apply(value);
        if (!plan.Range.Contains(value)) return (RefusalReason.OutsideRange, $"{value} not in {plan.Range.Low}..{plan.Range.High}");
        if (measuredAt > receivedAt + DeviceClock.AheadTolerance) return (RefusalReason.ClockAhead, measuredAt.ToString());
        if (measuredAt < receivedAt - DeviceClock.OldestBackFill) return (RefusalReason.ClockBehind, measuredAt.ToString());
        return (RefusalReason.None, "");
    }

    private static void RefuseWhole(Draft draft, MessageArrived message, RefusalReason reason)
    {
        draft.Sums.Received++;
        if (WasTaken(draft, message)) draft.Sums.Duplicates++;
        else draft.Refuse(message.At, message.Topic, message.Payload, reason, "");
    }

    private static bool WasTaken(Draft draft, MessageArrived message) =>
        message.Packet is { } packet && draft.Packets.WasTaken(packet, ContentHash.Of(message.Topic, message.Payload.Span));
}
