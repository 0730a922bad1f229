using System.Globalization;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/exports/pools/{id}.csv ?from=&to=&width= : the strips of a pool as a table, at the fineness that fits the width

/// <summary>What the strips of a pool show, as a file to take away.</summary>
internal static class ExportApi
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(5);

    public static void MapExports(this RouteGroupBuilder api) =>
        api.MapGet("/exports/pools/{file}", async (string file, string from, string to, int? width, PlantHost host, ISeriesStore series, IRecordStore record, ExportTurn turn, CancellationToken cancellation) =>
        {
            if (Path.GetExtension(file) != ".csv") return Answers.NotFound($"export {file}; ask for .csv");
            if (host.WithPool(Path.GetFileNameWithoutExtension(file)) is not { } worker) return Answers.NotFound($"pool {Path.GetFileNameWithoutExtension(file)}");
            if (Times.Range(from, to, out var start, out var end) is { } no) return no;
            var pool = worker.State.Plan.Pools.First(p => p.Id == Path.GetFileNameWithoutExtension(file));
            var zone = TimeZoneInfo.FindSystemTimeZoneById(worker.State.Plan.TimeZone);
            var table = new PoolTable(pool.Name, zone);
            using var taken = await turn.TakeAsync(LongestWait, cancellation);
            if (taken is null) return Answers.Problem(StatusCodes.Status429TooManyRequests, "Not now", [new("", "export.busy", Reader.Words.Find("export.busy"))]);
            List<string?[]> rows = [];
            List<string> cut = [];
            foreach (var probe in ProbesOf(worker.State.Plan, pool)) rows.AddRange(await ReadingsAsync(table, worker, probe, start, end, Math.Clamp(width ?? 800, 1, 4000), series, turn.MostReadings, cut, cancellation));
            rows.AddRange(await HappeningsAsync(table, worker, pool, start, end, host, record, cancellation));
            if (cut.Count > 0) rows.Add(table.Cut(Reader.Words.Text(Reason.Of("export.cut", turn.MostReadings, string.Join(", ", cut)))));
            return Results.File(CsvText.Write(PoolTable.Header, rows), "text/csv; charset=utf-8", NameOf(host, pool, start, end, zone) + ".csv");
        }).Produces<string>(contentType: "text/csv").Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound).Produces<Problem>(StatusCodes.Status429TooManyRequests);

    /// <summary>What a file of a pool and a time is called: plant, pool, and the times on the site's clock.</summary>
    public static string NameOf(PlantHost host, PoolPlan pool, Instant from, Instant to, TimeZoneInfo zone)
    {
        string Day(Instant at) => TimeZoneInfo.ConvertTime(at.ToDateTimeOffset(), zone).ToString("yyyyMMdd-HHmm", CultureInfo.InvariantCulture);
        var name = $"{host.Plan?.Site.Name} {pool.Name} {Day(from)} {Day(to)}";
        return string.Join('-', name.Split([' ', .. Path.GetInvalidFileNameChars(), '"', ':', ';', '\\', '/'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
    }

    /// <summary>The same in letters that every header carries.</summary>
    public static string AsciiNameOf(PlantHost host, PoolPlan pool, Instant from, Instant to, string zone) =>
        new([.. NameOf(host, pool, from, to, TimeZoneInfo.FindSystemTimeZoneById(zone)).Select(c => c is > ' ' and < '\x7f' ? c : '_')]);

    private static IEnumerable<ProbePlan> ProbesOf(CircuitPlan plan, PoolPlan pool) =>
        plan.Probes.Where(p => (p.PoolId is null || p.PoolId == pool.Id) && p.Measurand is not (Measurand.CirculationFlow or Measurand.FilterPressure));

    private static async Task<IEnumerable<string?[]>> ReadingsAsync(
        PoolTable table, CircuitWorker worker, ProbePlan probe, Instant from, Instant to, int width, ISeriesStore series, int most, List<string> cut, CancellationToken cancellation)
    {
        var (answer, correct) = (await SeriesApi.QueryAsync(worker, series, probe.Id, from, to, width, cancellation), SeriesApi.Correction(worker.State, probe.Id));
        if (answer.Tier != Tier.Raw) return table.Means(probe, answer.Points, SecondsOf(answer.Tier), correct);
        var gaps = table.Means(probe, answer.Points.Where(p => p.IsGap), 0, null);
        var readings = await series.RawAsync(worker.Partition, probe.Id, from, to, most + 1, cancellation);
        if (readings.Count > most) cut.Add(probe.Name);
        return gaps.Concat(table.Single(probe, readings.Take(most), correct));
    }

    private static async Task<IEnumerable<string?[]>> HappeningsAsync(
        PoolTable table, CircuitWorker worker, PoolPlan pool, Instant from, Instant to, PlantHost host, IRecordStore record, CancellationToken cancellation)
    {
        var rows = await record.EntriesAsync(worker.Partition, new EntryQuery(MarkViews.Kinds, null, from, to, int.MaxValue), cancellation);
        var checks = rows.Where(r => r.Subject == pool.Id).Select(r => r.Body).OfType<CheckEntry>().Select(c => c.Check).OrderBy(c => c.SampledAt);
        var marks = MarkViews.Of(worker.State.Plan, pool.Id, rows, Reader.Words).Where(m => m.Kind != MarkKind.Test);
        var notes = await NoteApi.TouchingAsync(pool.Id, from, to, host, record, cancellation);
        return checks.SelectMany(c => table.Of(c, CombinedViews.Of(c, Reader.Words))).Concat(notes.Reverse().Select(table.Of)).Concat(marks.Select(table.Of));
    }

    // A day is the site's, of 23 to 25 hours: it is called by its usual length.
    private static double SecondsOf(Tier tier) => tier switch { Tier.Minute => 60, Tier.QuarterHour => 900, Tier.Hour => 3600, _ => 86_400 };
}
