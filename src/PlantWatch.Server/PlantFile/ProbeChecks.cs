using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Server.PlantFile;

/// <summary>What a schema cannot say of one probe: its unit, its range, and keys that have no meaning for it.</summary>
internal static class ProbeChecks
{
    public static void Check(Place root, Complaints complaints)
    {
        foreach (var probe in root["circuits"].Items.SelectMany(circuit => circuit["probes"].Items))
        {
            if (EnumWords<Measurand>.Find(probe["measurand"].String) is { } measurand)
            {
                Unit(probe["unit"], measurand, complaints);
                Range(probe["range"], measurand, complaints);
                if (measurand is not Measurand.Orp)
                    Meaningless(probe["reference_electrode"], "only an orp probe has a reference electrode that its numbers are against", complaints);
            }
            Slope(probe["calibration"]["slope_percent"], complaints);
            if (probe["format"].String == "number")
                Meaningless(probe["record"], "a plain number has no record name; expected format: senml_json or senml_cbor, or no record", complaints);
        }
    }

    private static void Unit(Place unit, Measurand measurand, Complaints complaints)
    {
        if (unit.String is not { } text || ReadingUnits.TryScale(measurand, text, out _)) return;
        var known = ReadingUnits.Of(measurand);
        complaints.Add(unit, $"expected a unit of {EnumWords<Measurand>.Word(measurand)}: {string.Join(", ", known)}; found '{Text.Short(text)}'{Spelling.DidYouMean(text, known)}");
    }

    private static void Range(Place range, Measurand measurand, Complaints complaints)
    {
        if (range.Items.Select(end => end.Number).ToArray() is not [{ } low, { } high]) return;
        var possible = measurand.Possible();
        var found = $"found [{Text.Number(low)}, {Text.Number(high)}]";
        if (low >= high)
            complaints.Add(range, $"expected the lower end first and below the higher one, {found}");
        else if (!possible.Contains(low) || !possible.Contains(high))
            complaints.Add(range, $"expected a range within what {EnumWords<Measurand>.Word(measurand)} can be, {Bounds(possible)}{Unit(measurand)}, {found}");
    }

    private static void Slope(Place slope, Complaints complaints)
    {
        if (slope.Items.Select(end => end.Number).ToArray() is [{ } low, { } high] && low >= high)
            complaints.Add(slope, $"expected the lower end first and below the higher one, found [{Text.Number(low)}, {Text.Number(high)}]");
    }

    private static void Meaningless(Place place, string message, Complaints complaints)
    {
        if (place.Exists) complaints.Add(place, message);
    }

    internal static string Bounds(ValueRange range) => $"{Text.Number(range.Low)} to {Text.Number(range.High)}";

    internal static string Unit(Measurand measurand) => measurand.Unit() is { Length: > 0 } unit ? $" {unit}" : "";
}
