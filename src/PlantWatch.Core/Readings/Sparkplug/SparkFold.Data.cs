using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>Values: each becomes a reading, or a note that says why not.</summary>
internal sealed partial class SparkFold
{
    private void Data(string device, SparkplugPayload payload, Instant receivedAt)
    {
        if (_state.Devices.TryGetValue(device, out var known) && known.IsOnline) Readings(device, payload, receivedAt, isBirth: false);
        else
        {
            Note(SparkNoteKind.DeviceBeforeBirth, device, $"{SparkplugKind.DeviceData}");
            WantRebirth();
        }
    }

    private void Readings(string device, SparkplugPayload payload, Instant receivedAt, bool isBirth)
    {
        foreach (var metric in payload.Metrics)
            if (NameOf(device, metric, isBirth) is { } name && !IsControl(name)) Value(device, name, metric, payload.SentAt, receivedAt, isBirth);
    }

    // The node's own handles are no measurements.
    private static bool IsControl(string name) =>
        name == BirthNumberMetric || name.StartsWith("Node Control/", StringComparison.Ordinal) || name.StartsWith("Device Control/", StringComparison.Ordinal);

    private string? NameOf(string device, in SparkplugMetric metric, bool isBirth)
    {
        if (!string.IsNullOrEmpty(metric.Name)) return _state.Devices[device].Metrics.ContainsKey(metric.Name) ? metric.Name : Unknown(SparkNoteKind.UnknownName, device, metric.Name);
        if (isBirth || metric.Alias is not { } alias)
        {
            Note(SparkNoteKind.WithoutName, device);
            return null;
        }

        return _state.Aliases.TryGetValue(alias, out var known) && known.Device == device ? known.Metric : Unknown(SparkNoteKind.UnknownAlias, device, $"{alias}");
    }

    private string? Unknown(SparkNoteKind kind, string device, string detail)
    {
        Note(kind, device, detail);
        WantRebirth();
        return null;
    }

    private void Value(string device, string name, in SparkplugMetric metric, Instant sentAt, Instant receivedAt, bool isBirth)
    {
        var refusal = Number(_state.Devices[device].Metrics[name].Type, metric, out var number, out var detail);
        var at = metric.CapturedAt.IsSet ? metric.CapturedAt : sentAt.IsSet ? sentAt : receivedAt;
        if (refusal != SparkNoteKind.None) Note(refusal, device, detail, name);
        if (refusal == SparkNoteKind.Null && !metric.IsHistorical) SetStale(device, name, at);
        if (refusal != SparkNoteKind.None) return;
        var byAlias = !isBirth && string.IsNullOrEmpty(metric.Name);
        var quality = QualityOf(metric) | (byAlias && _state.AliasesAreDoubted ? Quality.Suspect : 0);
        _readings.Add(new(device, name, at, receivedAt, number, quality));
        // What is of the past says nothing of now.
        if (!metric.IsHistorical) SetStale(device, name, quality.IsGood() ? Instant.Never : at);
    }

    private static SparkNoteKind Number(SparkplugType type, in SparkplugMetric metric, out double number, out string detail)
    {
        (number, detail) = (0, "");
        if (metric.IsTransient) return SparkNoteKind.Transient;
        if (metric.IsNull) return SparkNoteKind.Null;
        if (type == SparkplugType.Unknown) return SparkNoteKind.WithoutType;
        if (metric.Type != SparkplugType.Unknown && metric.Type != type) return SparkNoteKind.WrongType;
        if (metric.Field == SparkplugField.None) return SparkNoteKind.WithoutValue;
        if (metric.HasWrongTime) return SparkNoteKind.WrongTime;
        var fault = SparkplugNumber.Read(type, metric, out number);
        detail = fault == NumberFault.None ? "" : $"{fault}";
        return fault == NumberFault.None ? SparkNoteKind.None : SparkNoteKind.WithoutNumber;
    }

    // Bad and stale are the source's own doubt of its value; what cannot be read is doubt too.
    private static Quality QualityOf(in SparkplugMetric metric) =>
        Quality.Received | (metric.IsHistorical ? Quality.Late : 0) | (metric.Quality == SparkplugQuality.Good ? 0 : Quality.Suspect);

    private void SetStale(string device, string name, Instant since)
    {
        var known = _state.Devices[device];
        var metric = known.Metrics[name];
        if (metric.IsStale == since.IsSet) return;
        _state = _state with { Devices = _state.Devices.SetItem(device, known with { Metrics = known.Metrics.SetItem(name, metric with { StaleSince = since }) }) };
    }
}
