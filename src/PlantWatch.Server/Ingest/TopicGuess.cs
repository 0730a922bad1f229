using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Ingest;

/// <summary>What a topic or a record may be about, by its unit and the words of its name. A guess to begin with: a person says what it is.</summary>
internal static class TopicGuess
{
    private static readonly (string Word, Measurand Is)[] Words =
    [
        ("ph", Measurand.Ph), ("orp", Measurand.Orp), ("redox", Measurand.Orp), ("rx", Measurand.Orp), ("temp", Measurand.Temperature), ("temperature", Measurand.Temperature), ("water", Measurand.Temperature),
        ("conductivity", Measurand.Conductivity), ("cond", Measurand.Conductivity), ("free", Measurand.FreeChlorine), ("cl2", Measurand.FreeChlorine), ("cl", Measurand.FreeChlorine), ("chlorine", Measurand.FreeChlorine),
        ("total", Measurand.TotalChlorine), ("flow", Measurand.CirculationFlow), ("circulation", Measurand.CirculationFlow), ("pressure", Measurand.FilterPressure),
    ];

    private static readonly (string Unit, Measurand Is)[] Units =
        [("pH", Measurand.Ph), ("mV", Measurand.Orp), ("V", Measurand.Orp), ("Cel", Measurand.Temperature), ("degC", Measurand.Temperature), ("S/m", Measurand.Conductivity), ("mg/l", Measurand.FreeChlorine), ("m3/h", Measurand.CirculationFlow), ("kPa", Measurand.FilterPressure)];

    private static readonly char[] Between = ['/', ':', '-', '_', '.', ' '];

    /// <summary>The guess; <see cref="Measurand.None"/> when nothing speaks for anything.</summary>
    public static Measurand Of(string name, string? unit)
    {
        var said = name.ToLowerInvariant().Split(Between, StringSplitOptions.RemoveEmptyEntries);
        // The end of a name says most: hall/flow/ph is a pH.
        var byWord = said.Reverse().SelectMany(word => Words.Where(w => w.Word == word)).Select(w => w.Is).FirstOrDefault();
        if (said.Contains("sample") && said.Contains("flow")) return Measurand.SampleFlow;
        return byWord != Measurand.None ? byWord : Units.FirstOrDefault(u => string.Equals(u.Unit, unit, StringComparison.OrdinalIgnoreCase)).Is;
    }
}
