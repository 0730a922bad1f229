using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>What was done on a probe within the span, as found and as left.</summary>
internal sealed class CalibrationTable(SheetSource source, ProbePlan probe, Wording words)
{
    private readonly string _unit = probe.Measurand.Unit();

    // Each in its newest version, of the span or still waiting.
    private IEnumerable<CalibrationView> Those() => source.Rows.Select(r => r.Body).OfType<CalibrationEntry>().Select(e => e.Calibration).Where(c => c.ProbeId == probe.Id)
        .GroupBy(c => c.Id).Select(g => source.State.Calibrations.FirstOrDefault(c => c.Id == g.Key) ?? g.Last()).OrderBy(c => c.HoldsFrom.IsSet ? c.HoldsFrom : c.ProposedAt).Select(c => CircuitViews.Calibration(c, source.State, words));

    /// <summary>The services.</summary>
    public Table Services() => new(words.Paper("services_caption", probe.Name),
    [
        new(words.Paper("holds_from"), ColumnKind.Time), new(words.Paper("what")), new(words.Paper("found_off"), ColumnKind.Number, _unit), new(words.Paper("left_off"), ColumnKind.Number, _unit),
        new(words.Paper("slope"), ColumnKind.Number), new(words.Paper("offset"), ColumnKind.Number, _unit), new(words.Paper("by")), new(words.Paper("decided")), new(words.Paper("remarks"), Wide: true),
    ],
    [.. Those().Select(Service)], words.Paper("services_none"));

    /// <summary>The solutions it stood in.</summary>
    public Table Solutions() => new(words.Paper("solutions_caption", probe.Name),
    [
        new(words.Paper("time"), ColumnKind.Time), new(words.Paper("when_in_service")), new(words.Paper("solution")), new(words.Paper("should_read"), ColumnKind.Number), new(words.Paper("read"), ColumnKind.Number),
        new(words.Paper("temperature"), ColumnKind.Number, "degC"), new(words.Paper("lot")), new(words.Paper("expires")),
    ],
    [.. Those().Where(c => c.Sheet is not null).SelectMany(Points)], words.Paper("solutions_none"));

    private IReadOnlyList<Cell> Service(CalibrationView c) =>
    [
        c.HoldsFrom is { } from ? new When(from) : new When(c.ProposedAt) { Note = words.Paper("proposed") },
        new Text(words.PaperWord("service", c.Kind)) { Note = PaperWords.And([words.PaperWord("basis", c.Basis), .. c.Work.Select(w => words.PaperWord("work", w))]) },
        Error(c.Sheet?.FoundError), Error(c.Sheet?.LeftError),
        new Number(c.Slope, "") { Note = c.Sheet?.SlopePercent is { } share ? words.Paper("of_ideal", share) : null }, new Number(c.Offset, _unit),
        new Text(c.ProposedBy), Decided(c), new Text(PaperWords.Joined("; ", [c.Note, c.Decision, .. (c.Sheet?.Why ?? []).Select(w => w.Text), Reviewed(c)])),
    ];

    private Cell Error(double? error) => error is { } known ? new Number(known, _unit) { Note = words.Paper("worked_out") } : Dash.Cell;

    private Text Decided(CalibrationView c) => new Text(words.PaperWord("status", c.Status)) { Note = PaperWords.And(c.DecidedBy, c.DecidedAt is { } at ? source.Span.Say(at) : null) };

    private string? Reviewed(CalibrationView c) => c.ReviewedBy is { } by ? words.Paper(c.Objected ? "objected" : "reviewed", by, c.ReviewedAt is { } at ? source.Span.Say(at) : "", c.Review ?? "") : c.WaitsForReview ? words.Paper("waits_for_review") : null;

    private IEnumerable<IReadOnlyList<Cell>> Points(CalibrationView c) =>
        [.. Points(c, c.Sheet!.AsFound, "as_found"), .. Points(c, c.Sheet.Points, "points"), .. Points(c, c.Sheet.AsLeft, "as_left")];

    private IEnumerable<IReadOnlyList<Cell>> Points(CalibrationView c, IEnumerable<PointView> points, string when) => points.Select(p => (IReadOnlyList<Cell>)
    [
        p.At is { } at ? new When(at) : c.HoldsFrom is { } holds ? new When(holds) : Dash.Cell, new Text(words.Paper(when)), new Text(p.Label is null ? words.Paper("by_table") : words.Paper("by_label")),
        p.Known is { } known ? new Number(known, _unit) : Dash.Cell, new Number(p.Reading, p.InMillivolts ? "mV" : _unit) { Note = words.PaperWord("from", p.Source) }, new Number(p.Celsius, "degC"),
        p.Lot is { } lot ? new Text(lot) : Dash.Cell, p.Expires is { } day ? new Text(day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)) : Dash.Cell,
    ]);

    /// <summary>What was corrected in its record between services.</summary>
    public Table Corrected() => new(words.Paper("corrected_caption", probe.Name),
    [
        new(words.Paper("from_when"), ColumnKind.Time), new(words.Paper("to_when"), ColumnKind.Time), new(words.Paper("gap"), ColumnKind.Number, _unit), new(words.Paper("by")), new(words.Paper("made"), ColumnKind.Time),
        new(words.Paper("why"), Wide: true), new(words.Paper("taken_back"), Wide: true),
    ],
    [.. source.State.Corrections.Where(c => c.ProbeId == probe.Id && c.From < source.Span.To && c.To > source.Span.From).OrderBy(c => c.From).Select(CorrectionApi.View).Select(Correction)], words.Paper("corrected_none"));

    private IReadOnlyList<Cell> Correction(CorrectionView c) =>
    [
        new When(c.From), new When(c.To), new Number(c.Gap, _unit) { U = c.U, Note = words.Paper("worked_out") }, new Text(c.MadeBy), new When(c.MadeAt), new Text(c.Why),
        c.WithdrawnBy is { } by ? new Text(PaperWords.Joined(": ", by, c.WithdrawnWhy)) { Note = c.WithdrawnAt is { } at ? source.Span.Say(at) : null } : Blank.Cell,
    ];
}
