using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Stock;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Rows of the record in words: what was done, seen or found, and by whom. Alarms and what the signals say have pages of their own.</summary>
internal static class EntryViews
{
    private static readonly (string Kind, RecordGroup About)[] Shown =
    [
        ("exception", RecordGroup.Exceptions), ("check", RecordGroup.Tests), ("laboratory", RecordGroup.Tests), ("laboratory_closed", RecordGroup.Tests), ("dose", RecordGroup.Doses),
        ("fault", RecordGroup.Jobs), ("job_effect", RecordGroup.Jobs), ("filter_washed", RecordGroup.Filters), ("backwash", RecordGroup.Filters), ("reagent_opened", RecordGroup.Reagents), ("instrument_verified", RecordGroup.Reagents), ("plant_round", RecordGroup.Rounds),
        ("calibration", RecordGroup.Probes), ("work", RecordGroup.Probes), ("correction", RecordGroup.Probes), ("pool_state", RecordGroup.Pools), ("incident", RecordGroup.Pools),
        ("pack_row", RecordGroup.Limits), ("plan", RecordGroup.Limits), ("stock", RecordGroup.Chemicals), ("bathers", RecordGroup.Chemicals), ("handover", RecordGroup.Handovers), ("note", RecordGroup.Notes),
    ];

    /// <summary>The kinds of rows of a group.</summary>
    public static IReadOnlyList<string> Kinds(RecordGroup about) => [.. Shown.Where(s => about == RecordGroup.All || s.About == about).Select(s => s.Kind)];

    /// <summary>A row in words; null for one that has a page of its own.</summary>
    public static EntryView? Of(CircuitPlan plan, RecordEntry entry, Wording words)
    {
        if (Shown.FirstOrDefault(s => s.Kind == entry.Body.Kind) is not { Kind: not null } kind || Say(plan, entry.Body, words) is not { } said) return null;
        return new(entry.Id, entry.At, entry.HappenedAt, kind.About, SubjectNames.Of([plan], entry.Subject, words), said.Text, string.IsNullOrWhiteSpace(said.By) ? null : said.By);
    }

    private static (string Text, string? By)? Say(CircuitPlan plan, EntryBody body, Wording words) => body switch
    {
        ExceptionEntry e => Exception(e, words),
        CheckEntry { Check: var c } => (And(words.Find(c.Corrects is null ? "entry.tested" : "entry.tested_again"), string.Join(", ", c.Results.Select(r => words.Text(ActFigures.Tested(r))))), c.Who),
        LabResultEntry { Result: var r } => (And(words.Find("entry.laboratory"), string.Join(", ", r.Counts.Select(c => words.Text(ActFigures.Counted(c))))), r.By),
        LabClosedEntry c => (And(words.Find("entry.laboratory_closed"), c.Why), c.By),
        DoseEntry { Dose: var d } => (And(words.Find(d.Corrects is null ? "entry.dosed" : "entry.dosed_again"), words.Text(ActFigures.Given(d)), d.Note), d.By),
        JobEntry { Job: var j } => (And(words.Find($"entry.job_{Wording.Key(j.State)}"), j.Done ?? j.Seen), j.By),
        JobEffectEntry e => (words.Find(e.Effect switch { Core.Maintenance.JobEffect.Helped => "job.helped", Core.Maintenance.JobEffect.DidNotHelp => "job.did_not_help", _ => "job.cannot_tell" }), null),
        FilterEntry f => (plan.Filters.FirstOrDefault(p => p.Id == f.FilterId)?.Kind == FilterKind.Strainer ? words.Find("entry.strainer_emptied")
            : f.CubicMetres is { } m3 ? words.Text(Reason.Of(f.IsUsual ? "entry.filter_washed_as_usual" : "entry.filter_washed_with", m3)) : words.Find("entry.filter_washed"), f.By),
        NoteEntry { Note: var n } => (And(words.Find(n.Retracted ? "entry.note_retracted" : n.Corrects is null ? "entry.note" : "entry.note_corrected"), n.Text, n.Why), n.By),
        HandoverEntry h => (And(words.Find($"entry.handover_{Wording.Key(h.Change)}"), h.Note, h.Remark), h.To ?? h.From),
        BackwashEntry b => (And(words.Find($"entry.backwash_{Wording.Key(b.Change)}"), b.Why), b.By),
        ReagentEntry { Lot: var lot } => (words.Text(Reason.Of("entry.reagent_opened", lot.Number, lot.LastDay.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture))), lot.NotedBy),
        InstrumentEntry { Verification: var v } => (words.Text(v.Word == Core.Readings.VerificationWord.Within
            ? Reason.Of("entry.instrument_within", v.Reading, v.Nominal, v.Standard, v.Measurand.Unit()) : Reason.Of("entry.instrument_outside", v.Reading, v.Nominal, v.Standard, v.Measurand.Unit())), v.By),
        RoundEntry { Round: var r } e => (And(words.Text(Reason.Of("entry.plant_round", e.Lines.Length, e.Lines.Count(l => l.IsOut))), string.Join("; ", e.Lines.Where(l => l.IsOut).Select(l => PlantRoundViews.Line(plan, l, words))), r.Remark), r.By),
        StockEntry { Move: var m } => (And(Moved(plan, m, words), m.CorrectionReason, m.Note), m.By),
        BathersEntry { Count: var c } => (words.Text(Reason.Of("entry.bathers", c.Number, c.Day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture))), c.By),
        CalibrationEntry { Calibration: var c } => (And(words.Find($"entry.calibration_{Wording.Key(c.Status)}"), c.Decision ?? c.Note), c.DecidedBy ?? c.ProposedBy),
        WorkEntry w => (words.Find($"entry.work_{Wording.Key(w.Change)}"), w.By),
        CorrectionEntry { Correction: var c } => c.IsInForce ? (And(words.Find("entry.corrected"), c.Why), c.MadeBy) : (And(words.Find("entry.correction_withdrawn"), c.WithdrawnWhy), c.WithdrawnBy),
        PoolStateEntry { Operation: var o } => (And(words.Find($"entry.pool_{Wording.Key(o.State)}"), o.Why), o.By),
        IncidentEntry i => (And(words.Text(Reason.Of(OfIncident(i.Change), Wording.Key(i.Incident.Kind))), i.Comment), i.By),
        PackRowEntry { Confirmation: var c } p => (And(words.Text(Reason.Of(p.Change == RowChange.Revoked ? "entry.row_revoked" : "entry.row_confirmed", c.RowId)), p.Why ?? c.Document), p.By),
        PlanEntry { Effects: var effects } p => (And(words.Find("entry.plan"), string.Join("; ", effects.Select(words.Text)), p.Why), p.By),
        _ => null,
    };

    private static string Moved(CircuitPlan plan, StockMove move, Wording words)
    {
        var (tank, unit) = (plan.Pumps.FirstOrDefault(p => p.Id == move.PumpId)?.Name ?? move.PumpId, move.Unit == StockUnit.Kilogram ? "kg" : "L");
        var code = move.Act switch
        {
            StockAct.Counted => tank is null ? "entry.stock_counted" : "entry.stock_counted_tank",
            StockAct.Refilled => "entry.stock_refilled",
            _ when tank is null => "entry.stock_delivered",
            _ => "entry.stock_delivered_tank",
        };
        return words.Text(Reason.Of(code, move.Amount, unit, move.Product, move.CheckedBy, tank ?? ""));
    }

    private static string OfIncident(IncidentChange change) => change switch
    {
        IncidentChange.Declared => "entry.incident_declared",
        IncidentChange.Noted => "entry.incident_noted",
        IncidentChange.Closed => "entry.incident_closed",
        _ => "entry.incident_moved",
    };

    private static (string Text, string? By) Exception(ExceptionEntry entry, Wording words)
    {
        var (line, step) = (entry.Line, entry.Line.Steps.IsEmpty ? null : entry.Line.Steps.MaxBy(s => s.KnownAt));
        var (text, by) = entry.Change switch
        {
            ExceptionChange.Opened => (words.Text(line.Reading.Cause), line.Reading.By),
            ExceptionChange.Closed => (And(words.Find($"entry.closing_{Wording.Key(line.Closing)}"), line.ClosedWhy), line.ClosedBy),
            _ => (step is null ? "" : Step(step, words), step?.By),
        };
        return (And($"{Capital(words.Find($"name.{line.Quantity}"))}, {words.Find($"entry.exception_{Wording.Key(entry.Change)}")}", text), by);
    }

    private static string Step(ExceptionStep step, Wording words) =>
        And(words.Find($"entry.step_{Wording.Key(step.Kind)}"), step.What is { } what ? words.Text(what) : null, step.Word == RetestWord.None ? null : words.Find($"entry.retest_{Wording.Key(step.Word)}"), step.Text);

    private static string Capital(string text) => text.Length > 1 && char.IsUpper(text[1]) ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static string And(params ReadOnlySpan<string?> parts)
    {
        var said = "";
        foreach (var part in parts)
            if (!string.IsNullOrWhiteSpace(part)) said = said.Length == 0 ? part : $"{said}: {part}";
        return said;
    }
}
