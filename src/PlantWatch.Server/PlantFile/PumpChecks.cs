namespace PlantWatch.Server.PlantFile;

/// <summary>What a schema cannot say of a dosing pump: which keys need which, and whether its figures fit together.</summary>
internal static class PumpChecks
{
    public static void Check(Place root, Complaints complaints)
    {
        foreach (var pump in root["circuits"].Items.SelectMany(circuit => circuit["pumps"].Items)) Pump(pump, complaints);
    }

    private static void Pump(Place pump, Complaints complaints)
    {
        With(pump, "strokes_topic", "millilitres_per_stroke", complaints);
        With(pump, "millilitres_per_stroke", "strokes_topic", complaints);
        With(pump, "strokes_are", "strokes_topic", complaints);
        if (pump["daily_limit_litres"].Number is { } limit && pump["litres_per_hour"].Number is { } rate && limit >= 24 * rate)
            complaints.Add(pump["daily_limit_litres"], $"expected less than the pump can deliver in a day ({Text.Number(24 * rate)} L), or it will never be passed; found {Text.Number(limit)}");
    }

    private static void With(Place pump, string key, string needed, Complaints complaints)
    {
        if (pump[key].Exists && !pump[needed].Exists) complaints.Add(pump[key], $"{key} says nothing without {needed}");
    }
}
