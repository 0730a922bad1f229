using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.PlantFile;

/// <summary>Limits must limit something, be possible, and stand once for each measurand of a pool.</summary>
internal static class LimitChecks
{
    public static void Check(Place root, Complaints complaints)
    {
        foreach (var circuit in root["circuits"].Items)
            foreach (var pool in circuit["pools"].Items)
            {
                Twins(pool["limits"], complaints);
                foreach (var limit in pool["limits"].Items)
                {
                    Ends(limit, complaints);
                    Loosened(root, limit, complaints);
                    Room(limit, complaints);
                    if (limit["measurand"].String == "orp") SameElectrode(circuit, pool, limit, complaints);
                    else if (limit["reference_electrode"] is { Exists: true } electrode)
                        complaints.Add(electrode, "only an orp limit has a reference electrode that its numbers are against");
                }
            }
    }

    private static void Twins(Place limits, Complaints complaints)
    {
        var first = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (var measurand in limits.Items.Select(limit => limit["measurand"]))
            if (measurand.String is { } name && !first.TryAdd(name, measurand))
                complaints.Add(measurand, $"{Text.Short(name)} is limited twice in this pool; the first is on line {first[name].Line}");
    }

    private static void Ends(Place limit, Complaints complaints)
    {
        Place low = limit["low"], high = limit["high"];
        if (limit.Node is PlantMapping && !low.Exists && !high.Exists)
            complaints.Add(limit, "expected low, high or both; a limit with neither limits nothing");
        if (low.Number is { } l && high.Number is { } h && l > h)
            complaints.Add(low, $"expected low at or below high, found low {Text.Number(l)} above high {Text.Number(h)}");
        if (EnumWords<Measurand>.Find(limit["measurand"].String) is not { } measurand) return;
        Possible(low, measurand, complaints);
        Possible(high, measurand, complaints);
    }

    // Between two deadbands that meet no value is inside: an alarm would never clear.
    private static void Room(Place limit, Complaints complaints)
    {
        if (limit["deadband"].Number is { } band && limit["low"].Number is { } low && limit["high"].Number is { } high && low <= high && 2 * band >= high - low)
            complaints.Add(limit["deadband"], $"expected less than half of what lies between low and high, {Text.Number((high - low) / 2)}, found {Text.Number(band)}; the alarm would never clear");
    }

    // A looser limit that nobody may stand for would be passed over in silence.
    private static void Loosened(Place root, Place limit, Complaints complaints)
    {
        if (limit["loosened_by"].Exists != limit["loosened_why"].Exists)
            complaints.Add(limit, "loosened_by and loosened_why belong together: who stands for the looser limit, and why");
        else if (limit["loosened_by"].String is { } by && !root["people"].Items.Any(p => string.Equals(p["name"].String, by.Trim(), StringComparison.OrdinalIgnoreCase) && p["role"].String is "engineer" or "administrator"))
            complaints.Add(limit["loosened_by"], $"expected the name of an engineer or administrator among people, found '{Text.Short(by)}'");
    }

    private static void Possible(Place end, Measurand measurand, Complaints complaints)
    {
        var possible = measurand.Possible();
        if (end.Number is { } value && !possible.Contains(value))
            complaints.Add(end, $"expected what {EnumWords<Measurand>.Word(measurand)} can be, {ProbeChecks.Bounds(possible)}{ProbeChecks.Unit(measurand)}, found {Text.Number(value)}");
    }

    // The same water reads tens of millivolts apart against two different electrodes.
    private static void SameElectrode(Place circuit, Place pool, Place limit, Complaints complaints)
    {
        if (limit["reference_electrode"].String is not { } own) return;
        foreach (var probe in circuit["probes"].Items)
        {
            var pools = probe["pool"];
            if (probe["measurand"].String != "orp" || (pools.String is { } seen && seen != pool["id"].String)) continue;
            if (probe["reference_electrode"].String is { } other && Plain(other) != Plain(own))
                complaints.Add(limit["reference_electrode"],
                    $"expected '{Text.Short(other)}' as on the probe '{Text.Short(probe["id"].String ?? "?")}', found '{Text.Short(own)}'; mV against two electrodes cannot be compared{Instead(limit, own, other)}");
        }
    }

    // The figure to write instead, where both electrodes are known. 25 degC is near enough to pools: it moves by a millivolt in five degrees.
    private static string Instead(Place limit, string own, string other)
    {
        var (end, from, to) = (limit["low"].Number is null ? limit["high"] : limit["low"], ReferenceElectrodeNames.Read(own), ReferenceElectrodeNames.Read(other));
        if (end.Number is not { } value || !Quantity.TryFrom(value, out Millivolts limited)) return "";
        var turned = ReferencePotential.Convert(limited, from, to, Celsius.From(25));
        return turned.Reading.IsKnown ? $"; {Text.Number(value)} against '{Text.Short(own)}' is {Text.Number(Math.Round(turned.Reading.Value))} against '{Text.Short(other)}' at 25 degC" : "";
    }

    private static string Plain(string electrode) => string.Concat(electrode.Where(c => !char.IsWhiteSpace(c))).ToUpperInvariant();
}
