using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>Births: what there is, under which name, alias and type.</summary>
internal sealed partial class SparkFold
{
    private const string BirthNumberMetric = "bdSeq";

    private void Born(SparkplugPayload birth)
    {
        var number = NumberOf(birth);
        if (birth.Sequence is not { } sequence) Note(SparkNoteKind.WithoutSequence, Itself, $"{SparkplugKind.NodeBirth}");
        else if (_state.Life == SparkLife.Online && birth.SentAt.IsSet && birth.SentAt == _state.BornAt && number == _state.BirthNumber) Note(SparkNoteKind.Repeated, Itself, $"{sequence}");
        else BeBorn(birth, sequence, number);
    }

    private void BeBorn(SparkplugPayload birth, byte sequence, ulong? number)
    {
        var kept = LeaveOldSession(birth.SentAt);
        var at = birth.SentAt.IsSet ? birth.SentAt : now;
        _state = _state with
        {
            Life = SparkLife.Online, Since = at, BirthNumber = number, BornAt = birth.SentAt, Next = (byte)(sequence + 1), NewestSentAt = birth.SentAt,
            AliasesAreDoubted = false, Aliases = ImmutableDictionary<ulong, SparkAlias>.Empty,
        };
        Note(SparkNoteKind.NodeOnline, Itself, number?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "", at: at);
        Define(Itself, birth, at, now);
        _state = _state with { Held = [.. kept.OrderBy(h => Ahead(h.Sequence))] };
        Drain();
        if (kept.Length > 0 && _state.Held.IsEmpty) Note(SparkNoteKind.GapClosed, Itself);
    }

    // What waited and was sent before the new birth belongs to the old session; what was sent after it came too early.
    private ImmutableArray<SparkHeld> LeaveOldSession(Instant bornAt)
    {
        var kept = bornAt.IsSet ? _state.Held.Where(h => h.Message.Payload.SentAt > bornAt).ToImmutableArray() : [];
        _state = _state with { Held = _state.Held.RemoveRange(kept) };
        if (!_state.Held.IsEmpty) GiveUp();
        var waiting = _state.Devices.Where(d => d.Key.Length > 0 && d.Value.IsOnline).Select(d => d.Key).ToList();
        foreach (var device in waiting) SetOffline(device, now);
        return kept;
    }

    private void DeviceBorn(string device, SparkplugPayload birth, Instant receivedAt)
    {
        if (IsTooLarge(device, birth)) ForgetTheDead();
        if (IsTooLarge(device, birth))
        {
            Note(SparkNoteKind.NodeTooLarge, device, $"{birth.Metrics.Length}");
            return;
        }

        var at = birth.SentAt.IsSet ? birth.SentAt : receivedAt;
        _state = _state with { Aliases = _state.Aliases.RemoveRange(_state.Aliases.Where(a => a.Value.Device == device).Select(a => a.Key)) };
        Note(SparkNoteKind.DeviceOnline, device, at: at);
        Define(device, birth, at, receivedAt);
    }

    private bool IsTooLarge(string device, SparkplugPayload birth) =>
        birth.Metrics.Length + _state.Devices.Sum(d => d.Key == device ? 0 : d.Value.Metrics.Count) > SparkNodeState.MostMetrics
        || (!_state.Devices.ContainsKey(device) && _state.Devices.Count > SparkNodeState.MostDevices);

    private void ForgetTheDead() => _state = _state with { Devices = _state.Devices.RemoveRange(_state.Devices.Where(d => d.Key.Length > 0 && !d.Value.IsOnline).Select(d => d.Key)) };

    // All metrics are stale until their value is read, which a birth has for each.
    private void Define(string device, SparkplugPayload birth, Instant at, Instant receivedAt)
    {
        var known = ImmutableDictionary.CreateBuilder<string, SparkKnownMetric>(StringComparer.Ordinal);
        var aliases = _state.Aliases.ToBuilder();
        foreach (var metric in birth.Metrics)
        {
            if (string.IsNullOrEmpty(metric.Name)) continue;
            if (metric.Type != SparkplugType.Unknown || !known.ContainsKey(metric.Name)) known[metric.Name] = new(metric.Type, at);
            if (metric.Alias is { } alias) GiveAlias(aliases, alias, new(device, metric.Name));
        }

        _state = _state with { Devices = _state.Devices.SetItem(device, new(true, at, known.ToImmutable())), Aliases = aliases.ToImmutable() };
        Readings(device, birth, receivedAt, isBirth: true);
    }

    private void GiveAlias(ImmutableDictionary<ulong, SparkAlias>.Builder aliases, ulong alias, SparkAlias target)
    {
        if (!aliases.TryGetValue(alias, out var other)) aliases[alias] = target;
        else if (other != target)
        {
            aliases[alias] = default;
            Note(SparkNoteKind.AliasTwice, target.Device, $"{alias}", target.Metric);
        }
    }

    private static ulong? NumberOf(SparkplugPayload payload)
    {
        foreach (var metric in payload.Metrics)
            if (metric is { Name: BirthNumberMetric, IsNull: false, Field: SparkplugField.Int or SparkplugField.Long }) return metric.Bits;
        return null;
    }
}
