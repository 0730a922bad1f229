using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Paper;
using PlantWatch.Server.Paper.Compose;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Paper.Render;
using PlantWatch.Server.Paper.Render.Pdf;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Telling;

/// <summary>A sheet that a letter encloses: what is to be printed, not the pages; they are printed when it is sent.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Pools">Ids of the pools; none for all.</param>
/// <param name="First">The first day.</param>
/// <param name="Last">The last day, included.</param>
internal sealed record SheetOrder(string Kind, IReadOnlyList<string> Pools, DateOnly First, DateOnly Last);

/// <summary>Sheets by letter: finds which are due and not written down yet, and prints what a letter encloses.</summary>
internal sealed class SheetPost(PaperDesk desk, PaperTurn turn, ILogger<SheetPost> log) : IEnclosures
{
    /// <summary>The letters that are owed and not written down yet.</summary>
    /// <param name="plan">The plant.</param>
    /// <param name="circuit">The circuit in whose outbox they wait: the first of those that have a pool on the sheet.</param>
    /// <param name="told">What was written down there before.</param>
    /// <param name="now">The time.</param>
    public static IReadOnlyList<WrittenNotice> Owed(PlantPlan plan, CircuitPlan circuit, IReadOnlyList<OutboxItem> told, Instant now)
    {
        if (plan.Telling.Sheets.IsEmpty || plan.Telling.Channels.FirstOrDefault(c => c.SpeaksToPersons) is not { } channel) return [];
        var known = told.Select(item => item.Notice.Id).ToHashSet();
        return
        [
            .. from sheet in plan.Telling.Sheets
               where HomeOf(plan, sheet)?.Id == circuit.Id
               let due = SheetTimes.Newest(sheet, plan.Site.TimeZone, now)
               where due is not null
               from person in sheet.To
               let notice = Notice(sheet, due.Value, channel, person)
               where known.Add(notice.Id)
               select new WrittenNotice(notice, Letter(plan, circuit, sheet, due.Value, notice).Write()),
        ];
    }

    /// <summary>Prints what a letter encloses; null where it encloses nothing, or nothing that there still is.</summary>
    public async Task<Enclosed?> OfAsync(PlantPlan plan, Message message, CancellationToken cancellation)
    {
        if (message.Sheet is not { } order || SheetKinds.Find(order.Kind) is var kind && kind == SheetKind.None) return null;
        var pools = order.Pools.Where(id => plan.Circuits.Any(c => c.Pools.Any(p => p.Id == id))).ToArray();
        if (pools.Length == 0 && order.Pools.Count > 0) return null;
        using var taken = await turn.TakeAsync(Timeout.InfiniteTimeSpan, cancellation);
        var words = Wording.Of(plan.Site);
        var sheet = await desk.MakeAsync(new(kind, pools, order.First, order.Last, words.Paper("by_schedule")), words, cancellation);
        PaperLog.Printed(log, sheet.Stamp.By, kind.Key(), string.Join(", ", sheet.Pools), order.First, order.Last, "pdf", sheet.Stamp.Digest.Hash);
        return new(PageWords.FileName(sheet, "pdf"), "application/pdf", SheetPdf.Write(sheet));
    }

    private static CircuitPlan? HomeOf(PlantPlan plan, SheetPlan sheet) => plan.Circuits.FirstOrDefault(c => c.Pools.Any(p => sheet.Pools.IsEmpty || sheet.Pools.Contains(p.Id)));

    private static Notice Notice(SheetPlan sheet, SheetDue due, ChannelPlan channel, string person) => new()
    {
        Alarm = TimeOrderedId.Derive(due.DueAt, sheet.Key), Key = sheet.Key, Kind = NoticeKind.Sheet, Priority = Priority.Low, AnnunciatedAt = due.DueAt, Step = 0, Channel = channel.Id, Person = person,
    };

    private static Message Letter(PlantPlan plan, CircuitPlan circuit, SheetPlan sheet, SheetDue due, Notice notice)
    {
        var words = Wording.Of(plan.Site);
        var title = words.Paper($"kind_{Wording.Key(SheetKinds.Find(sheet.Kind))}");
        var days = due.First == due.Last ? $"{due.First:yyyy-MM-dd}" : $"{due.First:yyyy-MM-dd} \u2013 {due.Last:yyyy-MM-dd}";
        var pools = plan.Circuits.SelectMany(c => c.Pools).Where(p => sheet.Pools.IsEmpty || sheet.Pools.Contains(p.Id)).Select(p => p.Name);
        return new(
            notice.Id, notice.Kind, notice.Priority, 0, notice.Alarm, "", sheet.Key, plan.Site.Name, circuit.Id, circuit.Name, null, null,
            words.Text(Reason.Of("paper.mail_subject", plan.Site.Name, title, days)), words.Text(Reason.Of("paper.mail_body", title, days, string.Join(", ", pools))), due.DueAt, "", "", "", null, null, [])
        { Sheet = new(sheet.Kind, [.. sheet.Pools], due.First, due.Last) };
    }
}
