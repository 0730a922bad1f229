using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>How much of each day the record of probes holds, and what it is worth.</summary>
internal sealed class RatingTable(SheetDraft draft, SheetSource source)
{
    /// <summary>Probes side by side, a line a day: the share of good readings, with the rating under it.</summary>
    public async Task<Table> SideBySideAsync(PoolPlan pool, CancellationToken cancellation)
    {
        var days = new SortedDictionary<string, Dictionary<string, DayQualityView>>(StringComparer.Ordinal);
        ProbePlan[] probes = [.. ProbesOf(pool)];
        foreach (var probe in probes)
            foreach (var day in await DaysAsync(probe, cancellation))
            {
                if (!days.TryGetValue(day.Day, out var row)) days[day.Day] = row = [];
                row[probe.Id] = day;
            }

        return new(draft.Words.Paper("availability_caption", pool.Name), [new(draft.Words.Paper("day")), .. probes.Select(p => new Column(p.Name, ColumnKind.Number, "%"))],
            [.. days.Select(d => (IReadOnlyList<Cell>)[new Text(d.Key), .. probes.Select(p => Share(d.Value.GetValueOrDefault(p.Id)))])], draft.Words.Paper("availability_none"));
    }

    /// <summary>One probe, a line a day, with the error and why.</summary>
    public async Task<Table> OfAsync(ProbePlan probe, CancellationToken cancellation) => new(
        draft.Words.Paper("rating_caption", probe.Name),
        [new(draft.Words.Paper("day")), new(draft.Words.Paper("rating")), new(draft.Words.Paper("share"), ColumnKind.Number, "%"), new(draft.Words.Paper("error"), ColumnKind.Number, probe.Measurand.Unit()), new(draft.Words.Paper("why"), Wide: true)],
        [.. (await DaysAsync(probe, cancellation)).Select(d => (IReadOnlyList<Cell>)[new Text(d.Day), new Text(draft.Words.PaperWord("rated", d.Rating)), Percent(d.Completeness), d.Error is { } error ? new Number(error, probe.Measurand.Unit()) : Dash.Cell, new Text(string.Join("; ", d.Why.Select(w => w.Text)))])],
        draft.Words.Paper("availability_none"));

    /// <summary>The probes in a pool's water, and those in water that it shares.</summary>
    public IEnumerable<ProbePlan> ProbesOf(PoolPlan pool) => source.Plan.Probes.Where(p => (p.PoolId is null || p.PoolId == pool.Id) && !p.Measurand.IsOfPlant());

    private Task<IReadOnlyList<DayQualityView>> DaysAsync(ProbePlan probe, CancellationToken cancellation) =>
        new QualityReader(source.Worker, probe, draft.Series, draft.Record, draft.Words).DaysAsync(draft.Span.From, draft.Span.To, cancellation);

    private Cell Share(DayQualityView? day) => day is null ? Dash.Cell : Percent(day.Completeness, draft.Words.PaperWord("rated", day.Rating));

    private static Number Percent(double share, string? note = null) => new(Math.Round(100 * share), "%") { Note = note };
}
