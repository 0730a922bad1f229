using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Probes;

/// <summary>What the pumps did lately, against what they usually do.</summary>
internal static class PumpStory
{
    // Days, nights and bathers move a pump by half as much again; only what is beyond a factor of two says something, and little even then.
    private const double Clearly = 2;

    // Below this share of the time a pump hardly runs at all and a ratio means nothing.
    private const double Least = 0.02;

    /// <summary>1 when it ran clearly more than usual, -1 when clearly less, else 0.</summary>
    public static int Trend(PumpRun run)
    {
        if (!run.IsKnown || Math.Max(run.Recent, run.Usual) < Least) return 0;
        return run.Recent > Clearly * run.Usual ? 1 : run.Recent < run.Usual / Clearly ? -1 : 0;
    }

    /// <summary>How far the pH probe read above the test; null without both.</summary>
    public static double? PhGap(StoryInput input) =>
        input.Probe(Measurand.Ph) is { Read.IsKnown: true } probe && input.Test(Measurand.Ph) is { Result: { Censoring: Censoring.None } } test
            ? probe.Read.Value - test.Result.Value : null;
}
