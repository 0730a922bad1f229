using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>What one shift hands to the next, held against what the last one signed. Pure.</summary>
internal static class HandoverViews
{
    private const int Told = 20;

    /// <summary>The page.</summary>
    /// <param name="circuits">The circuits with their handover rows of the record, in any order.</param>
    /// <param name="now">Now.</param>
    /// <param name="words">The words.</param>
    public static HandoverView Of(IReadOnlyList<(CircuitState State, IReadOnlyList<HandoverEntry> Rows, IReadOnlyList<Instant> At)> circuits, Instant now, Wording words)
    {
        var sheets = circuits.Select(c => (c.State, Sheet: HandoverSheet.Of(c.State, now), Last: c.Rows.Zip(c.At).Where(r => r.First.Change == HandoverChange.TakenOver).OrderBy(r => r.Second).Select(r => r.First).LastOrDefault()?.Sheet)).ToArray();
        var past = circuits.SelectMany(c => c.Rows.Zip(c.At).Select(r => (c.State.Plan, Row: r.First, At: r.Second))).GroupBy(r => r.Row.HandoverId).Select(g => Past([.. g], words))
            .OrderByDescending(p => p.Said.SignedAt ?? p.Said.WrittenAt).ToArray();
        var waits = circuits.Select(c => c.State.Handover).FirstOrDefault(h => h.Waits);
        return new(
            Shown(circuits.Select(c => c.State), now), waits.Waits ? new(waits.Id, waits.From, null, waits.Note, null, waits.WrittenAt, null) : null, past.FirstOrDefault(p => p.Said.SignedAt is not null)?.Said,
            [.. sheets.SelectMany(s => s.Sheet.Lines.Select(line => View(s.State.Plan, line, Moved(line, s.Last), words)))],
            [.. sheets.SelectMany(s => (s.Last?.Lines ?? []).Where(was => Find(s.Sheet, was) is null).Select(was => View(s.State.Plan, was, HandoverMove.Gone, words)))],
            [.. past.Take(Told)]);
    }

    /// <summary>Names the sheets of all circuits, so that a signature is of just these.</summary>
    public static string Shown(IEnumerable<CircuitState> states, Instant now) => string.Join(';', states.Select(s => $"{s.Plan.Id}={HandoverSheet.Of(s, now).Hash()}"));

    /// <summary>The hash that was shown of a circuit; null where it was not shown.</summary>
    public static string? ShownOf(string shown, string circuit) => shown.Split(';').FirstOrDefault(part => part.StartsWith(circuit + "=", StringComparison.Ordinal))?[(circuit.Length + 1)..];

    private static HandoverMove Moved(HandoverLine line, HandoverSheet? last) => last is null ? HandoverMove.None
        : Find(last, line) is not { } was ? HandoverMove.New : was.State == line.State && was.Text == line.Text ? HandoverMove.Same : HandoverMove.Changed;

    // An alarm that was put away is the same alarm.
    private static HandoverLine? Find(HandoverSheet sheet, HandoverLine line) => sheet.Lines.FirstOrDefault(l => l.Key == line.Key && (l.Part == line.Part || (IsAlarm(l) && IsAlarm(line))));

    private static bool IsAlarm(HandoverLine line) => line.Part is HandoverPart.Alarm or HandoverPart.PutAway;

    private static PastHandover Past(IReadOnlyList<(CircuitPlan Plan, HandoverEntry Row, Instant At)> rows, Wording words)
    {
        var signed = rows.Where(r => r.Row.Change == HandoverChange.TakenOver).ToArray();
        var said = signed is [var first, ..] ? first : rows[0];
        return new(
            new(said.Row.HandoverId, said.Row.From, said.Row.To, said.Row.Note, said.Row.Remark, said.Row.WrittenAt.OrNull(), signed.Length > 0 ? said.At : null),
            [.. signed.SelectMany(r => (r.Row.Sheet?.Lines ?? []).Select(line => View(r.Plan, line, HandoverMove.None, words)))],
            signed.All(r => r.Row.Sheet?.Hash() == r.Row.Shown));
    }

    private static HandoverLineView View(CircuitPlan plan, HandoverLine line, HandoverMove move, Wording words) => new(
        line.Part, line.Key, plan.Id, SubjectNames.Of([plan], line.Subject, words), Title(line, words), line.Part == HandoverPart.Job ? line.Text : line.Cause is { } cause ? words.Text(cause) : null,
        line.Part is HandoverPart.Pool or HandoverPart.Alarm or HandoverPart.PutAway ? line.Text : null, line.State, move);

    private static string? Title(HandoverLine line, Wording words) => line.Part switch
    {
        HandoverPart.Alarm or HandoverPart.PutAway => words.OfRule(line.Key[..line.Key.IndexOf('/', StringComparison.Ordinal)], "title"),
        HandoverPart.Task => line.Text,
        HandoverPart.Check => string.Join(", ", (line.Text ?? "").Split(", ").Select(key => words.Find($"name.{key}"))),
        _ => null,
    };
}
