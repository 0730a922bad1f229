using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>One step while it is being made.</summary>
internal sealed partial class SparkFold(SparkNodeState state, Instant now, SparkRules rules)
{
    private const string Itself = "";

    private readonly List<SparkReading> _readings = [];
    private readonly List<SparkNote> _notes = [];
    private SparkNodeState _state = state;
    private RebirthWanted? _rebirth;

    public SparkStep Result => new(_state, [.. _readings], [.. _notes], _rebirth);

    public void Take(SparkMessage message)
    {
        if (message.Payload.Fault != SparkplugFault.None)
        {
            Note(SparkNoteKind.Undecodable, message.Topic.Device, $"{message.Payload.Fault} {message.Payload.Detail}".TrimEnd());
            return;
        }

        switch (message.Topic.Kind)
        {
            case SparkplugKind.NodeBirth: Born(message.Payload); break;
            case SparkplugKind.NodeDeath: Died(message.Payload); break;
            case SparkplugKind.NodeData or SparkplugKind.DeviceBirth or SparkplugKind.DeviceDeath or SparkplugKind.DeviceData: InOrder(message); break;
        }
    }

    // In the node's own order.
    private void Fold(SparkMessage message, byte sequence, Instant receivedAt)
    {
        var (payload, device) = (message.Payload, message.Topic.Device);
        _state = _state with { Next = (byte)(sequence + 1), NewestSentAt = payload.SentAt };
        switch (message.Topic.Kind)
        {
            case SparkplugKind.DeviceBirth: DeviceBorn(device, payload, receivedAt); break;
            case SparkplugKind.DeviceDeath: DeviceDied(device, payload, receivedAt); break;
            default: Data(device, payload, receivedAt); break;
        }
    }

    // A clock that was set back must not silence the request for as long as it was set back.
    private void WantRebirth()
    {
        var since = now - _state.RebirthAskedAt;
        var tooSoon = _state.RebirthAskedAt.IsSet && since >= TimeSpan.Zero && since < rules.RebirthEvery;
        if (!rules.MayAskForRebirth || tooSoon) return;
        _rebirth = new(_state.Group, _state.Node);
        _state = _state with { RebirthAskedAt = now };
    }

    private void Note(SparkNoteKind kind, string device, string detail = "", string metric = "", Instant at = default) =>
        _notes.Add(new(kind, device, metric, at.IsSet ? at : now, detail));
}
