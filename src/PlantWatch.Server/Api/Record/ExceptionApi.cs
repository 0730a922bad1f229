using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>The exceptions: what is open out of the state, what is closed out of the record.</summary>
internal static class ExceptionApi
{
    private const int UsualSize = 50;
    private const int MostOnAPage = 200;

    public static void MapExceptions(this RouteGroupBuilder api)
    {
        api.MapGet("/exceptions", ListAsync).Produces<ExceptionsView>().Produces<Problem>(StatusCodes.Status400BadRequest);
        api.MapGet("/exceptions.csv", TableAsync).Produces<string>(contentType: "text/csv").Produces<Problem>(StatusCodes.Status400BadRequest);
        api.MapPost("/exceptions/{id:guid}/notes", NoteAsync).Produces<ExceptionView>()
            .Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound).Produces<Problem>(StatusCodes.Status409Conflict);
    }

    private static async Task<IResult> ListAsync(
        string? pool, string? month, int? page, int? size, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (page is < 1 or > 1_000_000 || size is < 1 or > MostOnAPage) return Answers.Invalid("page", "exception.page");
        if (!TrySpan(month, host, out var from, out var to)) return Answers.Invalid("month", "exception.month");
        var (now, take) = (Instant.From(clock.GetUtcNow()), size ?? UsualSize);
        var open = ExceptionLines.Open(host, pool).OrderBy(l => !l.Line.Owed.By.IsSet).ThenBy(l => l.Line.Owed.By).Select(l => ExceptionViews.Of(l.Circuit.State.Plan, l.Line, now, Reader.Words));
        var closed = await ExceptionLines.ClosedAsync(host, store, pool, from, to, cancellation);
        var shown = closed.Skip(((page ?? 1) - 1) * take).Take(take).Select(l => ExceptionViews.Of(l.Circuit.State.Plan, l.Line, now, Reader.Words));
        return Answers.Ok(new ExceptionsView(month, [.. open], [.. shown], page ?? 1, Math.Max(1, (closed.Count + take - 1) / take), closed.Count));
    }

    private static async Task<IResult> TableAsync(string? pool, string? month, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (!TrySpan(month, host, out var from, out var to)) return Answers.Invalid("month", "exception.month");
        var open = ExceptionLines.Open(host, pool).Where(l => (!from.IsSet || l.Line.Reading.At >= from) && (!to.IsSet || l.Line.Reading.At < to));
        var all = open.Concat(await ExceptionLines.ClosedAsync(host, store, pool, from, to, cancellation)).OrderBy(l => l.Line.Reading.At)
            .Select(l => ExceptionViews.Of(l.Circuit.State.Plan, l.Line, Instant.From(clock.GetUtcNow()), Reader.Words));
        var name = $"exceptions{(month is null ? "" : "-" + month)}.csv";
        return Results.File(ExceptionTable.Write(all, SiteMonth.ZoneOf(host)), "text/csv; charset=utf-8", name);
    }

    private static async Task<IResult> NoteAsync(Guid id, ExceptionNote request, PlantHost host, TimeProvider clock, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(request.Id)) return Answers.Invalid("id", "id.not_version_7");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if (string.IsNullOrWhiteSpace(request.Text)) return Answers.Invalid("text", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("text", request.Text)) is { } tooLong) return tooLong;
        if (host.Circuits.FirstOrDefault(c => ExceptionLines.Find(c, id) is not null) is not { } worker) return Answers.NotFound($"exception {id}");
        var outcome = await host.SendAsync(
            worker.Partition.Value, at => new ExceptionNoted(at, request.Id, id, request.By.Trim(), request.Text.Trim(), request.DoneAt ?? Instant.Never), cancellation);
        if (outcome is Outcome.TurnedDown no) return Answers.From(no);
        return ExceptionLines.Find(worker, id) is { } line ? Answers.Ok(ExceptionViews.Of(worker.State.Plan, line, Instant.From(clock.GetUtcNow()), Reader.Words)) : Answers.NotFound($"exception {id}");
    }

    private static bool TrySpan(string? month, PlantHost host, out Instant from, out Instant to)
    {
        (from, to) = (Instant.Never, Instant.Never);
        if (month is null) return true;
        if (!SiteMonth.TryOf(month, SiteMonth.ZoneOf(host), out _, out var starts)) return false;
        (from, to) = (starts[0], starts[^1]);
        return true;
    }
}
