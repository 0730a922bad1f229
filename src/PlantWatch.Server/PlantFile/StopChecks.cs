using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Server.PlantFile;

/// <summary>A stop may be edited and never removed: tighter with a reason, looser only by an administrator and so far.</summary>
internal static class StopChecks
{
    public static void Check(Place root, Complaints complaints)
    {
        var first = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (var stop in root["stops"].Items)
        {
            if (stop["measurand"].String is not { } name || EnumWords<Measurand>.Find(name) is not { } measurand || !Stops.TryUsual(measurand, out var usual, out _)) continue;
            if (!first.TryAdd(name, stop["measurand"])) complaints.Add(stop["measurand"], $"the stop on {Text.Short(name)} is edited twice; the first is on line {first[name].Line}");
            Ends(stop, measurand, usual, complaints);
            Loosened(root, stop, measurand, complaints);
        }
    }

    private static void Ends(Place stop, Measurand measurand, ValueRange usual, Complaints complaints)
    {
        Place low = stop["low"], high = stop["high"];
        if (!low.Exists && !high.Exists) complaints.Add(stop, "expected low, high or both; a stop is edited or left out, and never removed");
        if (measurand == Measurand.Temperature && low.Exists) complaints.Add(low, "water temperature has no lower stop");
        else if ((low.Number ?? usual.Low) >= (high.Number ?? usual.High)) complaints.Add(stop, $"expected something inside the stop, found nothing between {Text.Number(low.Number ?? usual.Low)} and {Text.Number(high.Number ?? usual.High)}");
        var furthest = Stops.Furthest(measurand);
        foreach (var end in new[] { low, high })
            if (end.Number is { } value && !furthest.Contains(value))
                complaints.Add(end, $"a stop stays a stop: {EnumWords<Measurand>.Word(measurand)} can be set from {Text.Number(furthest.Low)} to {Text.Number(furthest.High)}{ProbeChecks.Unit(measurand)}, found {Text.Number(value)}");
    }

    // A looser stop that nobody may stand for would be passed over in silence.
    private static void Loosened(Place root, Place stop, Measurand measurand, Complaints complaints)
    {
        if (!Stops.IsLooser(new(measurand, stop["low"].Number, stop["high"].Number, ""))) return;
        if (stop["by"].String is not { } by) complaints.Add(stop, "a stop that is looser than usual needs 'by', the administrator who stands for it");
        else if (!root["people"].Items.Any(p => string.Equals(p["name"].String, by.Trim(), StringComparison.OrdinalIgnoreCase) && p["role"].String is "administrator"))
            complaints.Add(stop["by"], $"expected the name of an administrator among people, found '{Text.Short(by)}'");
    }
}
