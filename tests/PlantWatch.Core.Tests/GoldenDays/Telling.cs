using System.Globalization;
using System.Text.Json;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.GoldenDays;

/// <summary>Puts what came out of a day into lines that the plant's own people can read: rules by number, reasons by code with their figures.</summary>
internal sealed class Telling(Func<Instant, string> clock)
{
    public IEnumerable<string> Of(RecordEntry entry)
    {
        var at = clock(entry.At);
        switch (entry.Body)
        {
            case AlarmEntry a:
                yield return $"{at}  {Word(a.Change),-12} {a.Alarm.Key} ({Word(a.Alarm.Priority)}): {(a.By is null ? Say(a.Alarm.Cause) : $"{a.By}, \"{a.Comment}\"")}";
                break;
            case CheckEntry c:
                yield return $"{at}  check        {c.Check.PoolId} by {c.Check.Who}, sampled {clock(c.Check.SampledAt)}: {string.Join(", ", c.Check.Results.Select(r => $"{r.Measurand.Key()} {Figure(r.Value)}"))}";
                foreach (var remark in c.Remarks) yield return $"{"",14}doubt      {remark.Field}: {Say(remark.Reason)}";
                break;
            case JudgementEntry { Judgement: var j }:
                yield return $"{"",14}{j.ProbeId} {Word(j.Verdict)}{(j.Bias.IsKnown ? $", reads {Signed(j.Bias.Value)} (U {Figure(j.Bias.Expanded)})" : "")}, stands at {Word(j.Standing)}: {string.Join("; ", j.Reasons.Select(Say))}";
                break;
            case StandingEntry s:
                yield return $"{at}  signal       {s.ProbeId} stands at {Word(s.Standing)}{(s.Reasons.IsEmpty ? "" : ": " + string.Join("; ", s.Reasons.Select(Say)))}";
                break;
            case PoolStateEntry { Operation: var o } p:
                yield return $"{at}  pool         {entry.Subject} {Word(p.Before)} -> {Word(o.State)} by {o.By}{(o.ForCause ? ", for cause" : "")}{(p.ByIncident ? ", by an incident" : "")}{(p.Refilled ? ", filled anew" : "")}{(o.Why is { } why ? ": " + why : "")}";
                break;
            case StockEntry { Move: var m }:
                yield return $"{at}  stock        {Word(m.Act)} {Figure(m.Amount)} {Word(m.Unit)} of {m.ProductId}, {(m.PumpId is null ? "store" : "tank of " + m.PumpId)}, by {m.By}, checked by {m.CheckedBy}{(m.WentIn ? ", went in all the same" : "")}";
                break;
            case NoteEntry { Note: var n }:
                yield return $"{at}  note         {n.PoolId} {clock(n.From)} to {clock(n.To)} by {n.By}{(n.Retracted ? ", taken back" : n.Corrects is null ? "" : ", corrected")}: \"{n.Text}\"";
                break;
            case FilterEntry f:
                yield return $"{at}  washed       {f.FilterId} by {f.By}{(f.CubicMetres is { } m3 ? $", {Figure(m3)} m3{(f.IsUsual ? " as usual" : "")}" : "")}";
                break;
            case JobEntry { Job: var j }:
                yield return $"{at}  job          {j.Asset} {Word(j.State)} by {j.By}: \"{j.Seen}\"{(j.Done is { } done ? $"; \"{done}\"" : "")}";
                break;
            case JobEffectEntry e:
                yield return $"{at}  effect       {e.Asset} {Word(e.Effect)}, by {(e.Signs.IsEmpty ? "no alarm" : string.Join(", ", e.Signs))}";
                break;
            case BackwashEntry b:
                yield return $"{at}  backwash     {b.FilterId} {Word(b.Change)}{(b.By is null ? "" : " by " + b.By)}";
                break;
            case CalibrationEntry { Calibration: var c }:
                yield return $"{at}  calibration  {c.ProbeId} {Word(c.Kind)} {Signed(c.Offset)} {Word(c.Status)} by {c.DecidedBy ?? c.ProposedBy}{(c.HoldsFrom.IsSet ? ", holds from " + clock(c.HoldsFrom) : "")}";
                break;
            case IncidentEntry i:
                yield return $"{at}  incident     {i.Incident.PoolId} {Word(i.Incident.Kind)} {Word(i.Change)} by {i.By}{(i.Comment is { } words ? $", \"{words}\"" : "")}; its clock {Word(i.Hold)}, {Figure(Math.Floor(100 * i.Share))} % proven{string.Concat(i.Others.Select(o => $"; {o.PoolId} {Word(o.Hold)}, {Figure(Math.Floor(100 * o.Share))} %"))}";
                break;
            case LabResultEntry { Result: var r }:
                yield return $"{at}  laboratory   {r.PoolId} {string.Join(", ", r.Counts.Select(c => $"{Word(c.Organism)} {Word(c.Sense)} {Figure(c.Count)} in {Figure(c.Millilitres)} mL"))}, entered by {r.By}";
                break;
            case LabClosedEntry c:
                yield return $"{at}  laboratory   closed by {c.By}: \"{c.Why}\"";
                break;
            case ExceptionEntry { Line: var line } e:
                yield return $"{at}  exception    {line.Key} ({Word(line.Grade)}) {Word(e.Change)}: {Newest(e)}; {Owes(line)}";
                break;
            case PackRowEntry { Confirmation: var c } p:
                yield return $"{at}  limits       row {c.RowId} of {c.PackId} {Word(p.Change)} by {p.By}: \"{c.Document}\"";
                break;
            default:
                break;
        }
    }

    // What the change is about: the reading that began it, the newest step, or how it was closed.
    private string Newest(ExceptionEntry entry) => entry.Change switch
    {
        ExceptionChange.Opened => $"{Say(entry.Line.Reading.Cause)}, by {entry.Line.Reading.By ?? "a " + Word(entry.Line.Reading.Source)}",
        ExceptionChange.Closed => $"{(entry.Line.Steps.IsEmpty ? "" : Say(entry.Line.Steps.MaxBy(s => s.KnownAt)!) + "; ")}{Word(entry.Line.Closing)} by {entry.Line.ClosedBy ?? "nobody"}{(entry.Line.ClosedWhy is { } why ? $", \"{why}\"" : "")}",
        _ => entry.Line.Steps.IsEmpty ? "" : Say(entry.Line.Steps.MaxBy(s => s.KnownAt)!),
    };

    private static string Say(ExceptionStep step) =>
        $"{Word(step.Kind)}{(step.Word == RetestWord.None ? "" : " " + Word(step.Word))}{(step.What is { } what ? $" {Say(what)}" : "")}{(step.Text is { } text ? $", \"{text}\"" : "")}{(step.By is { } by ? $", by {by}" : "")}";

    private string Owes(ExceptionLine line) => line.IsOpen
        ? $"{line.Owed.Who ?? "the operator on duty"} owes {Word(line.Owed.Act)}{(line.Owed.By.IsSet ? $" by {clock(line.Owed.By)}" : "")}"
        : $"minutes to action {Minutes(line, line.Action)}, to retest {Minutes(line, line.Retest)}, to closing {Figure(Math.Round(line.Until(line.ClosedAt)!.Value.TotalMinutes))}";

    private static string Minutes(ExceptionLine line, ExceptionStep? step) => step is null ? "none" : Figure(Math.Round(line.Until(step.At)!.Value.TotalMinutes));

    public string Of(Core.Readings.Refusal refusal) => $"{clock(refusal.ReceivedAt)}  refused      {refusal.Topic}: {Word(refusal.Reason)} ({refusal.Detail})";

    public IEnumerable<string> Of(CircuitState state)
    {
        yield return "At the end";
        foreach (var alarm in state.Alarms.Values) yield return $"  {alarm.Key} {Word(alarm.State)}";
        if (state.Alarms.IsEmpty) yield return "  no alarm stands";
        foreach (var line in state.Exceptions) yield return $"  open: {line.Key} since {clock(line.Reading.At)}, {Owes(line)}";
        foreach (var probe in state.Probes) yield return $"  {probe.Id} {Figure(probe.Last.Value)} (raw {Figure(probe.Last.Raw)}), by its signal {Word(probe.Signal.Standing)}, by the tests {Word(probe.Trust.Standing)}";
        foreach (var pool in state.Pools.Where(p => p.Operation.State != OperatingState.NotStated)) yield return $"  {pool.Id} {Word(pool.Operation.State)}{(pool.Operation.ForCause ? ", for cause" : "")}";
        foreach (var pool in state.Pools.Where(_ => state.Plan.Pack is not null))
            yield return $"  {pool.Id}: limits {Word(pool.Limits.Word)}, {pool.Limits.Unconfirmed.Length} rows unconfirmed; watched: {string.Join(", ", pool.Limits.Bounds.Select(b => $"{b.Quantity.Key()} {b.Low} to {b.High} ({Word(b.Grade)})"))}";
        var sums = state.Ledger;
        yield return $"  received {sums.Received} = stored {sums.Stored} + duplicates {sums.Duplicates} + refused {sums.Refused}";
    }

    /// <summary>What kept a pool from being opened, line by line.</summary>
    public IEnumerable<string> Of(PoolStateSet said, Outcome.TurnedDown no)
    {
        yield return $"{clock(said.At)}  not done     {said.PoolId} {Word(said.State)} by {said.By}";
        foreach (var remark in no.Remarks) yield return $"{"",14}{remark.Field}: {Say(remark.Reason)}";
    }

    /// <summary>Why nothing is put into a tank yet.</summary>
    public IEnumerable<string> Of(StockMoved said, Outcome.TurnedDown no)
    {
        yield return $"{clock(said.At)}  not done     {said.Move.ProductId} into {said.Move.PumpId} by {said.Move.By}";
        foreach (var remark in no.Remarks) yield return $"{"",14}{remark.Field}: {Say(remark.Reason)}";
    }

    /// <summary>How the clock of each open incident stands, in each pool of the water.</summary>
    public IEnumerable<string> Clocks(CircuitState state, Instant now)
    {
        foreach (var incident in state.Incidents.Values)
        for (var pool = 0; pool < state.Pools.Length; pool++)
        {
            var id = state.Plan.Pools[pool].Id;
            if (id != incident.PoolId && !incident.ClosesThePool) continue;
            var hold = IncidentEvidence.Clock(incident, state.Plan.Pools[pool], state.Pools[pool], now);
            var next = hold.NextTestBy.IsSet ? $", next test by {clock(hold.NextTestBy)}" : "";
            yield return $"{"",14}clock {(state.Pools.Length > 1 ? $"of {id} " : "")}{Word(hold.Word)}: {Figure(hold.Credited)} of {Figure(hold.Figure?.Required ?? 0)}{next}{string.Concat(hold.Why.Select(w => "; " + Say(w)))}";
        }
    }

    public static string Word<T>(T value) where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());

    private static string Say(Reason reason) =>
        reason.Facts.IsEmpty ? reason.Code : $"{reason.Code} ({string.Join(", ", reason.Facts.Select(f => f.Number is { } n ? Figure(n) : f.Text))})";

    private static string Signed(double value) => (Math.Round(value, 2) + 0.0).ToString("+0.00;-0.00;0.00", CultureInfo.InvariantCulture);

    private static string Figure(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
