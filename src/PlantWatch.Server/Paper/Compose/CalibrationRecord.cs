using PlantWatch.Core.Plans;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The probe calibration record: what was done on each probe, in which solutions, what was corrected in its record since, and what each day of it is worth.</summary>
internal static class CalibrationRecord
{
    /// <summary>Its sections.</summary>
    public static async Task<IReadOnlyList<Section>> SectionsAsync(SheetDraft draft, CancellationToken cancellation)
    {
        var sections = new List<Section>();
        foreach (var source in draft.Sources)
        {
            var ratings = new RatingTable(draft, source);
            foreach (var probe in source.Pools.SelectMany(ratings.ProbesOf).DistinctBy(p => p.Id)) sections.Add(await OfProbeAsync(draft, source, probe, ratings, cancellation));
        }

        return [.. sections, new(draft.Words.Paper("rating_scale"), [new Remark(draft.Words.Paper("rating_says"))]), .. Ending.Sections(draft, draft.Words.Paper("sign_calibration"))];
    }

    private static async Task<Section> OfProbeAsync(SheetDraft draft, SheetSource source, ProbePlan probe, RatingTable ratings, CancellationToken cancellation)
    {
        var (words, table) = (draft.Words, new CalibrationTable(source, probe, draft.Words));
        var place = source.Plan.Pools.FirstOrDefault(p => p.Id == probe.PoolId)?.Name ?? source.Plan.Name;
        return new($"{place}: {probe.Name}",
        [
            new Facts([new(words.Paper("quantity"), words.Heading(probe.Measurand)), new(words.Paper("origin"), words.PaperWord("origin", probe.Origin))]),
            table.Services(), table.Solutions(), table.Corrected(), await ratings.OfAsync(probe, cancellation),
        ]);
    }
}
