using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Server.Api;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The laboratory's counts on samples of the span, one a row.</summary>
internal sealed class LabTable(SheetSource source, Wording words)
{
    /// <summary>The table.</summary>
    public Table Make()
    {
        var rows = source.Wide.Where(r => r.Body is LabResultEntry).ToArray();
        var results = LabViews.Results(source.State, rows, [.. source.Wide.Where(r => r.Body is LabClosedEntry).Reverse()], words)
            .Where(r => source.Span.Holds(r.SampledAt) && source.Pools.Any(p => p.Id == r.PoolId)).OrderBy(r => r.SampledAt);
        return new(words.Paper("laboratory_caption", source.Plan.Name), Columns(), [.. results.SelectMany(r => r.Counts.Select(c => Row(r, c)))], words.Paper("laboratory_none"));
    }

    private Column[] Columns() =>
    [
        new(words.Paper("sampled"), ColumnKind.Time), new(words.Paper("pool")), new(words.Paper("organism")), new(words.Paper("count"), ColumnKind.Number), new(words.Paper("highest"), ColumnKind.Number),
        new(words.Paper("found")), new(words.Paper("laboratory")), new(words.Paper("remarks"), Wide: true),
    ];

    private Cell[] Row(LabResultView result, LabCountView count) =>
    [
        new When(result.SampledAt), new Text(Pool(result)) { Note = PaperWords.And(words.PaperWord("point", result.Point), result.Place) }, new Text(PaperWords.Capital(count.Name)), Count(count),
        count.High is { } limit ? new Number(limit, Unit(count.BasisMillilitres)) : Dash.Cell, new Text(words.PaperWord("lab", count.Verdict)),
        new Text(result.Laboratory) { Note = result.SampleNumber }, new Text(Remarks(result)),
    ];

    private Cell Count(LabCountView count) => count.Sense == CountSense.NotDetected ? new Text(words.Paper("not_detected", count.Millilitres))
        : new Number(count.Count, Unit(count.Millilitres)) { Bound = count.Sense switch { CountSense.Below => Core.Readings.Censoring.Below, CountSense.Above => Core.Readings.Censoring.Above, _ => Core.Readings.Censoring.None } };

    private static string Unit(double millilitres) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"in {millilitres:0.##} mL");

    private string Pool(LabResultView result) => source.Plan.Pools.FirstOrDefault(p => p.Id == result.PoolId)?.Name ?? result.PoolId;

    private string Remarks(LabResultView result) => PaperWords.Joined("; ", words.Paper("lab_entered", result.By, source.Span.Say(result.EnteredAt)), result.Note,
        result.CorrectedBy is null ? null : words.Paper("lab_corrected"),
        result.ClosedBy is { } by && result.ClosedAt is { } at ? words.Paper("lab_closed", by, source.Span.Say(at), result.ClosedWhy ?? words.Paper("no_reason")) : null);
}
