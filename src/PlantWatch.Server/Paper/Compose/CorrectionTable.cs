using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>Every correction that touches the span: what was said, what is said now, by whom, when and why.</summary>
internal sealed class CorrectionTable(IReadOnlyList<SheetSource> sources, Wording words)
{
    /// <summary>The table.</summary>
    public Table Make()
    {
        var rows = sources.SelectMany(s => OfTests(s).Concat(OfDoses(s)).Concat(OfProbes(s))).OrderBy(r => r.At).Select(r => r.Cells);
        return new(words.Paper("corrections_caption"), Columns(), [.. rows], words.Paper("corrections_none"));
    }

    private Column[] Columns() =>
    [
        new(words.Paper("corrected_at"), ColumnKind.Time), new(words.Paper("what")), new(words.Paper("was"), Wide: true), new(words.Paper("is"), Wide: true), new(words.Paper("by")), new(words.Paper("why"), Wide: true),
    ];

    private IEnumerable<(Core.Quantities.Instant At, Cell[] Cells)> OfTests(SheetSource source) => Tests.Corrections(source).Select(c => (c.Now.ArrivedAt, Row(
        c.Now.ArrivedAt, PaperWords.And(words.Paper("test"), PoolName(source, c.Now.Check.PoolId)), c.Was is null ? words.Paper("not_found") : Said(source, c.Was.Check), Said(source, c.Now.Check), c.Now.Check.Who, c.Now.Check.CorrectionReason)));

    private IEnumerable<(Core.Quantities.Instant At, Cell[] Cells)> OfDoses(SheetSource source)
    {
        DoseEntry[] all = [.. source.Wide.Select(r => r.Body).OfType<DoseEntry>()];
        foreach (var now in all.Where(d => d.Dose.Corrects is not null && source.Concerns(d.Dose.PoolId)))
        {
            var was = all.FirstOrDefault(d => d.Dose.Id == now.Dose.Corrects);
            if (!source.Span.Holds(now.Dose.GivenAt) && !(was is not null && source.Span.Holds(was.Dose.GivenAt))) continue;
            yield return (now.ArrivedAt, Row(now.ArrivedAt, PaperWords.And(words.Paper("dose"), PoolName(source, now.Dose.PoolId)),
                was is null ? words.Paper("not_found") : Given(source, was), Given(source, now), now.Dose.By, now.Dose.CorrectionReason));
        }
    }

    // A correction of a probe's record is a layer over it: what was read stays.
    private IEnumerable<(Core.Quantities.Instant At, Cell[] Cells)> OfProbes(SheetSource source) => source.State.Corrections
        .Where(c => c.From < source.Span.To && c.To > source.Span.From && source.Concerns(c.ProbeId))
        .Select(c => (c.MadeAt, Row(
            c.MadeAt, PaperWords.And(words.Paper("record_of"), source.Plan.Probes.FirstOrDefault(p => p.Id == c.ProbeId)?.Name ?? c.ProbeId), words.Paper("as_it_was_read"),
            words.Paper(c.IsInForce ? "record_corrected" : "record_withdrawn", source.Span.Say(c.From), source.Span.Say(c.To), c.WithdrawnBy ?? ""), c.MadeBy, PaperWords.Joined("; ", c.Why, c.WithdrawnWhy))));

    private Cell[] Row(Core.Quantities.Instant at, string what, string was, string now, string by, string? why) =>
        [new When(at), new Text(what), new Text(was), new Text(now), new Text(by), why is null ? Dash.Cell : new Text(why)];

    private string Said(SheetSource source, ManualCheck check) => PaperWords.And(
    [
        source.Span.Say(check.SampledAt), .. check.Results.Select(r => words.Text(ActFigures.Tested(r))),
        check.BottomVisible is { } seen ? words.Paper(seen ? "bottom_was_seen" : "bottom_not_seen") : null, check.Bathers is { } bathers ? words.Paper("so_many_bathers", bathers) : null,
    ]);

    private string Given(SheetSource source, DoseEntry entry) => PaperWords.And(source.Span.Say(entry.Dose.GivenAt), words.Text(ActFigures.Given(entry.Dose)));

    private static string PoolName(SheetSource source, string pool) => source.Plan.Pools.FirstOrDefault(p => p.Id == pool)?.Name ?? pool;
}
