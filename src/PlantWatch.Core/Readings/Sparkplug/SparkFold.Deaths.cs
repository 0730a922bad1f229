using System.Globalization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>Deaths: what is gone, and that nothing of it is current any more.</summary>
internal sealed partial class SparkFold
{
    // Where either number is missing nobody can say whose death it is; in doubt it is this one's.
    private void Died(SparkplugPayload death)
    {
        var number = NumberOf(death);
        var isAnother = number is { } said && _state.BirthNumber is { } born && said != born;
        if (_state.Life == SparkLife.Offline || (_state.Life == SparkLife.Online && isAnother)) Note(SparkNoteKind.DeathIgnored, Itself, Written(number));
        else Die(number);
    }

    private void Die(ulong? number)
    {
        // They were sent while it was alive.
        if (!_state.Held.IsEmpty) GiveUp();
        foreach (var device in _state.Devices.Keys.ToList()) SetOffline(device, now);
        _state = _state with { Life = SparkLife.Offline, Since = now, AliasesAreDoubted = false };
        Note(SparkNoteKind.NodeOffline, Itself, Written(number));
    }

    private void DeviceDied(string device, SparkplugPayload death, Instant receivedAt)
    {
        if (_state.Devices.TryGetValue(device, out var known) && known.IsOnline) SetOffline(device, death.SentAt.IsSet ? death.SentAt : receivedAt);
        else Note(SparkNoteKind.DeviceBeforeBirth, device, $"{SparkplugKind.DeviceDeath}");
    }

    private void SetOffline(string device, Instant at)
    {
        var known = _state.Devices[device];
        if (!known.IsOnline) return;
        _state = _state with { Devices = _state.Devices.SetItem(device, known with { IsOnline = false, Since = at }) };
        MakeStale([device], at);
        if (device.Length > 0) Note(SparkNoteKind.DeviceOffline, device, at: at);
    }

    private static string Written(ulong? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";
}
