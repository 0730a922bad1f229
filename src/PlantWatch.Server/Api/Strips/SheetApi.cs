using System.Globalization;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Paper;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Paper.Render;
using PlantWatch.Server.Paper.Render.Html;
using PlantWatch.Server.Paper.Render.Pdf;
using PlantWatch.Server.Paper.Render.Tables;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/sheets/{kind}.{html|pdf|csv|xlsx|json}?pool=&pool=&from=YYYY-MM-DD&to=YYYY-MM-DD&by=   
//      kinds: day-log, month, calibration, alarms-and-jobs, inspection
//      days are the site's, both included; without pools all of them, without to the one day; 92 days at most, month and calibration 400
//      one sheet is made at a time: 429 where another one takes longer than a short wait

/// <summary>Sheets for paper. Who asks has to say who that is.</summary>
internal static class SheetApi
{
    private const int MostDays = 400, MostDaysInDetail = 92;
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(5);

    public static void MapSheets(this RouteGroupBuilder api) =>
        api.MapGet("/sheets/{file}", MakeAsync).Produces<string>(contentType: "text/html").Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound).Produces<Problem>(StatusCodes.Status429TooManyRequests);

    private static async Task<IResult> MakeAsync(
        string file, string[]? pool, string? from, string? to, string? by, HttpContext context, PlantHost host, PaperDesk desk, PaperTurn turn, ILogger<PaperDesk> log, CancellationToken cancellation)
    {
        var (kind, format) = (SheetKinds.Find(Path.GetFileNameWithoutExtension(file)), Path.GetExtension(file).TrimStart('.'));
        if (kind == SheetKind.None) return Answers.Invalid("kind", "paper.kind_unknown");
        if (format is not ("html" or "pdf" or "csv" or "xlsx" or "json")) return Answers.Invalid("format", "paper.format_unknown");
        if (string.IsNullOrWhiteSpace(by)) return Answers.Invalid("by", "paper.by_required");
        if (Bounds.OfName("by", by) is { } tooLong) return tooLong;
        if ((pool ?? []).FirstOrDefault(p => host.WithPool(p) is null) is not null || host.Plan is null) return Answers.Invalid("pool", "pool.not_known");
        if (!Day(from, out var first)) return Answers.Invalid("from", "paper.days");
        var last = first;
        if (!string.IsNullOrEmpty(to) && !Day(to, out last)) return Answers.Invalid("to", "paper.days");
        if (last < first || last.DayNumber - first.DayNumber >= MostDays) return Answers.Invalid("to", "paper.days");
        if (kind is not (SheetKind.Month or SheetKind.Calibration) && last.DayNumber - first.DayNumber >= MostDaysInDetail) return Answers.Invalid("to", "paper.too_many_days");
        using var taken = await turn.TakeAsync(LongestWait, cancellation);
        if (taken is null) return Answers.Problem(StatusCodes.Status429TooManyRequests, "Not now", [new("", "paper.busy", Reader.Words.Find("paper.busy"))]);
        var sheet = await desk.MakeAsync(new(kind, pool ?? [], first, last, by.Trim().ReplaceLineEndings(" ")), Reader.Words, cancellation);
        PaperLog.Printed(log, sheet.Stamp.By, kind.Key(), string.Join(", ", sheet.Pools), first, last, format, sheet.Stamp.Digest.Hash);
        return Written(sheet, format, context);
    }

    private static IResult Written(Sheet sheet, string format, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        context.Response.Headers.ContentDisposition = $"inline; filename=\"{PageWords.FileName(sheet, format)}\"";
        switch (format)
        {
            case "json": return Answers.Ok(PaperViews.Of(sheet));
            case "pdf": return Results.Bytes(SheetPdf.Write(sheet), "application/pdf");
            case "csv": return Results.Bytes(SheetCsv.Write(sheet), "text/csv; charset=utf-8");
            case "xlsx": return Results.Bytes(SheetXlsx.Write(sheet), "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet");
        }

        context.Response.Headers.ContentSecurityPolicy = SheetHtml.Policy(sheet);
        return Results.Text(SheetHtml.Write(sheet), "text/html; charset=utf-8");
    }

    // Beyond these a calendar cannot reckon a day more.
    private static bool Day(string? text, out DateOnly day) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out day) && day.Year is >= 2000 and <= 2199;
}
