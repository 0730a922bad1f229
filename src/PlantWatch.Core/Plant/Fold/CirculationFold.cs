using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The circulation of a circuit against what it was designed for.</summary>
internal static class CirculationFold
{
    // Part of the limit by which it must have come back before the alarm may clear.
    private const double Back = 0.05;

    /// <summary>A flow came in.</summary>
    public static void Look(Draft draft, ProbePlan probe, Instant at, double value)
    {
        LowOrLost(draft, probe, at, value);
        TurnoverFold.Look(draft, probe, at, value);
    }

    private static void LowOrLost(Draft draft, ProbePlan probe, Instant at, double value)
    {
        if (draft.Plan.CirculationLow is not { } low) return;
        var key = RuleBook.CirculationLow.KeyFor(probe.Id);
        var holds = value < low * (draft.Alarms.IsActive(key) ? 1 + Back : 1);
        // On its way back from nil it is not news that it is only low.
        var lost = value < draft.Plan.CirculationLost || draft.Alarms.Find(key) is { Active: true, Cause.Code: "circulation.lost" };
        if (holds || draft.Alarms.Knows(key))
            draft.Alarms.Look(RuleBook.CirculationLow, key, probe.Id, holds, at, () => Reason.Of(
                lost ? "circulation.lost" : "circulation.low", probe.Name, value, low, Measurand.CirculationFlow.Unit()));
    }

    /// <summary>True when the newest reading says that the water stands.</summary>
    public static bool IsLost(Draft draft, int index)
    {
        var last = draft.Probes[index].Last;
        return last.Quality != Quality.NotReceived && last.Value < draft.Plan.CirculationLost;
    }
}
