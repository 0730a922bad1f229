using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>What the probes of a pool read at the times of its tests, beside those tests; at the rounds that nobody walked too.</summary>
internal sealed class ProbeTable(SheetSource source, PoolPlan pool, ISeriesStore series, Wording words)
{
    private readonly Dictionary<(Guid, string), Judgement> _judged = source.Wide.Select(r => r.Body).OfType<JudgementEntry>()
        .GroupBy(j => (j.Judgement.CheckId, j.Judgement.ProbeId)).ToDictionary(g => g.Key, g => g.Last().Judgement);

    /// <summary>The table.</summary>
    public async Task<Table> MakeAsync(IEnumerable<DutyRound> missed, CancellationToken cancellation)
    {
        var rows = new List<(Instant At, List<Cell> Cells)>();
        foreach (var check in Tests.Of(source, pool.Id).Select(t => t.Check).Concat(missed.Select(Empty)))
        {
            var windows = await CheckWindows.ReadAsync(source.Worker, series, check, cancellation);
            foreach (var window in windows)
                if (source.Plan.Probes.First(p => p.Id == window.Series) is var probe && !probe.Measurand.IsOfPlant()) rows.Add((check.SampledAt, Row(check, probe, window)));
        }

        return new(words.Paper("probes_caption", pool.Name), Columns(), [.. rows.OrderBy(r => r.At).Select(r => r.Cells)], words.Paper("probes_none"));
    }

    // A round that nobody walked has a time and no results.
    private ManualCheck Empty(DutyRound round) => new() { Id = Guid.Empty, PoolId = pool.Id, SampledAt = round.DueAt, EnteredAt = round.DueAt, Who = "" };

    private Column[] Columns() =>
    [
        new(words.Paper("time"), ColumnKind.Time), new(words.Paper("probe")), new(words.Paper("by_hand"), ColumnKind.Number), new(words.Paper("as_read"), ColumnKind.Number),
        new(words.Paper("as_corrected"), ColumnKind.Number), new(words.Paper("judged"), Wide: true),
    ];

    private List<Cell> Row(ManualCheck check, ProbePlan probe, ProbeWindow window)
    {
        var (judged, unit) = (_judged.GetValueOrDefault((check.Id, probe.Id)), probe.Measurand.Unit());
        var read = window.Count > 0;
        Cell asRead = read ? new Number(window.Mean, unit) { Note = words.Paper("readings", window.Count, window.Count + window.Excluded) }
            : new Dash { Note = words.Paper(window.Excluded > 0 ? "none_good" : "no_reading") };
        return
        [
            new When(check.SampledAt), new Text(probe.Name) { Note = words.Find($"name.{probe.Measurand.Key()}") }, Figure.Of(check.Result(probe.Measurand), Core.Plans.Packs.LimitsInForce.None, words),
            asRead, Corrected(probe, judged, check.SampledAt, window, unit), new Text(Said(judged, check)),
        ];
    }

    // As it was judged then, with its uncertainty; else by the calibration and the corrections that hold.
    private Cell Corrected(ProbePlan probe, Judgement? judged, Instant at, ProbeWindow window, string unit)
    {
        if (judged is { Probe: { IsKnown: true } then }) return new Number(then.Value, unit) { U = then.Expanded, Note = words.Paper("worked_out") };
        return window.Count > 0 && SeriesApi.Correction(source.State, probe.Id) is { } correct ? new Number(correct(at, window.Mean), unit) { Note = words.Paper("worked_out") } : Blank.Cell;
    }

    private string Said(Judgement? judged, ManualCheck check)
    {
        if (check.Id == Guid.Empty) return words.Paper("not_tested");
        return judged is null ? "" : PaperWords.Joined(": ", words.PaperWord("verdict", judged.Verdict), judged.Reasons.IsEmpty ? null : words.Text(judged.Reasons[0]));
    }
}
