using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The circulation of a circuit against what it was designed for.</summary>
internal static class CirculationFold
{
    /// <summary>True when the newest reading says that the water stands.</summary>
    public static bool IsLost(Draft draft, int index)
    {
        var last = draft.Probes[index].Last;
        return last.Quality != Quality.NotReceived && last.Value < draft.Plan.CirculationLost;
    }
}
