using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>The order of messages: what is due is taken, what is early waits, and what is missing for too long is given up.</summary>
internal sealed partial class SparkFold
{
    // Half of the circle of 256 numbers: what is further ahead than this may as well be behind.
    private const int Half = 128;

    /// <summary>Gives up what has been missing for the whole of the reorder timeout.</summary>
    public void LetTimePass()
    {
        if (!_state.Held.IsEmpty && Waited >= rules.ReorderTimeout) GiveUp();
        // The request itself may be lost: it is said again until a birth answers it.
        if (_state.AliasesAreDoubted && _state.Life == SparkLife.Online) WantRebirth();
    }

    private TimeSpan Waited => now - _state.Held.Min(h => h.ReceivedAt);

    private void InOrder(SparkMessage message)
    {
        if (_state.Life != SparkLife.Online)
        {
            Note(SparkNoteKind.BeforeBirth, message.Topic.Device, $"{message.Topic.Kind}");
            WantRebirth();
        }
        else if (message.Payload.Sequence is not { } sequence) Note(SparkNoteKind.WithoutSequence, message.Topic.Device, $"{message.Topic.Kind}");
        else if (sequence == _state.Next && HasBegunAnew(message.Payload)) GiveUpAt(new(message, sequence, now));
        else if (sequence == _state.Next) FoldAndDrain(message, sequence);
        else if (IsRepeated(message.Payload, sequence)) Note(SparkNoteKind.Repeated, message.Topic.Device, $"{sequence}");
        else Hold(new(message, sequence, now));
    }

    // What waits should have been sent after what is due. Where it was not, the numbers have begun anew with a birth that was lost, and this is the number's second coming.
    private bool HasBegunAnew(SparkplugPayload due) =>
        _state.Held.Any(h => Ahead(h.Sequence) >= Half || (due.SentAt.IsSet && h.Message.Payload.SentAt.IsSet && h.Message.Payload.SentAt < due.SentAt));

    private void GiveUpAt(SparkHeld second)
    {
        _state = _state with { Held = _state.Held.Add(second) };
        GiveUp();
    }

    // Behind by its number and by its clock. Behind by its number alone, it follows a gap of more than half the circle.
    private bool IsRepeated(SparkplugPayload payload, byte sequence) =>
        _state.Held.Any(h => h.Sequence == sequence)
        || (Ahead(sequence) >= Half && payload.SentAt.IsSet && payload.SentAt <= _state.NewestSentAt);

    private byte Ahead(byte sequence) => (byte)(sequence - _state.Next);

    private void Hold(SparkHeld early)
    {
        if (_state.Held.IsEmpty) Note(SparkNoteKind.GapOpened, early.Message.Topic.Device, $"{_state.Next} {early.Sequence}");
        _state = _state with { Held = [.. _state.Held.Add(early).OrderBy(h => Ahead(h.Sequence))] };
        if (_state.Held.Length > SparkNodeState.MostHeld) GiveUp();
    }

    private void FoldAndDrain(SparkMessage message, byte sequence)
    {
        var waited = !_state.Held.IsEmpty;
        Fold(message, sequence, now);
        Drain();
        if (waited && _state.Held.IsEmpty) Note(SparkNoteKind.GapClosed, Itself);
    }

    private void Drain()
    {
        while (!_state.Held.IsEmpty && _state.Held[0].Sequence == _state.Next) FoldFirst();
    }

    private void FoldFirst()
    {
        var first = _state.Held[0];
        _state = _state with { Held = _state.Held.RemoveAt(0) };
        Fold(first.Message, first.Sequence, first.ReceivedAt);
    }

    // What is read after a loss is read in doubt of its aliases: the message that is missing may have been a birth.
    private void GiveUp()
    {
        _state = _state with { Held = [.. InTime(_state.Held)] };
        var missing = _state.Held.Aggregate((Due: _state.Next, Count: 0), (sum, h) => ((byte)(h.Sequence + 1), sum.Count + (byte)(h.Sequence - sum.Due))).Count;
        Note(SparkNoteKind.MessagesLost, Itself, $"{missing}");
        MakeStale(_state.Devices.Keys, now);
        _state = _state with { AliasesAreDoubted = true };
        while (!_state.Held.IsEmpty) FoldFirst();
    }

    // By the node's clock where it has one: numbers may have begun anew among them.
    private IEnumerable<SparkHeld> InTime(ImmutableArray<SparkHeld> held) =>
        held.All(h => h.Message.Payload.SentAt.IsSet) ? held.OrderBy(h => h.Message.Payload.SentAt).ThenBy(h => Ahead(h.Sequence)) : held;

    private void MakeStale(IEnumerable<string> devices, Instant since)
    {
        var all = _state.Devices.ToBuilder();
        foreach (var name in devices) all[name] = all[name] with { Metrics = Stale(all[name].Metrics, since) };
        _state = _state with { Devices = all.ToImmutable() };
    }

    // What is stale already has been so for longer.
    private static ImmutableDictionary<string, SparkKnownMetric> Stale(ImmutableDictionary<string, SparkKnownMetric> metrics, Instant since) =>
        metrics.SetItems(metrics.Where(m => !m.Value.IsStale).Select(m => KeyValuePair.Create(m.Key, m.Value with { StaleSince = since })));
}
