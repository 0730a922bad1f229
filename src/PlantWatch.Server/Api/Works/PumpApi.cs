using PlantWatch.Core.Alarms;
using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Dosing.Supervision.Live;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Stock;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>A dosing pump by what the water does, with its past on one axis.</summary>
internal static class PumpApi
{
    private const int LongestHours = 168, RowsAtOnce = 100_000, MostEntries = 200;

    // The word of a pump that changes seldom may be older than what is shown.
    private static readonly TimeSpan Before = TimeSpan.FromHours(1);

    public static void MapPumps(this RouteGroupBuilder api) => api.MapGet("/pumps/{id}", PumpAsync).Produces<PumpPage>().Produces<Problem>(StatusCodes.Status404NotFound);

    private static async Task<IResult> PumpAsync(string id, int? hours, PlantHost host, ISeriesStore series, IRecordStore record, TimeProvider clock, CancellationToken cancellation)
    {
        if (host.WithAsset(id) is not { } worker) return Answers.NotFound($"pump {id}");
        var state = worker.State;
        var index = state.Plan.Pumps.Select(p => p.Id).ToList().IndexOf(id);
        if (index < 0 || index >= state.Pumps.Length) return Answers.NotFound($"pump {id}");
        var now = Instant.From(clock.GetUtcNow());
        var count = Math.Clamp(hours ?? 24, 1, LongestHours) * 12;
        var look = new Look(worker.Partition, series, PumpCourse.First(now) - ((count - 1) * PumpCourse.Span), count, now, cancellation);
        var (plan, watched) = (state.Plan.Pumps[index], PumpPages.WatchOf(state, index));
        var course = await CourseAsync(state, index, watched, look);
        var litres = course.Driven.Any(d => d is not null) ? course.Driven.Sum(d => d / 12) : null;
        return Answers.Ok(new PumpPage(
            id, Reader.Words.Say(PumpPages.Lacks(state.Plan, plan)), watched is { } w ? PumpPages.Insight(w.Watch, w.Product) : null, PumpPages.Verdicts(state, id, watched, now, Reader.Words),
            Today(state, index, now), plan.DailyLimitLitres, Fell(course.Tank, plan.TankLitres, look), litres, course, await MarksAsync(record, worker, id, look)));
    }

    private static double? Today(CircuitState state, int index, Instant now) =>
        DosedWater.StrokeOf(state.Plan.Pumps[index]) is null || !state.Pumps[index].Today.UpTo.IsSet ? null
        : TimeZoneInfo.TryFindSystemTimeZoneById(state.Plan.TimeZone, out var zone) && DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now.ToDateTimeOffset(), zone).DateTime) != state.Pumps[index].Today.Day ? 0
        : state.Pumps[index].Today.Litres;

    private static async Task<PumpCourseView> CourseAsync(CircuitState state, int index, (DosedWater Water, DosingWatch Watch, DosedProduct Product)? watched, Look look)
    {
        var plan = state.Plan.Pumps[index];
        var driven = await look.StrokesAsync(plan);
        var litres = DosedWater.StrokeOf(plan) * 12 / 1000;
        var probe = watched is { } found ? found.Product == DosedProduct.Acid ? found.Water.Ph : PumpFollows.Of(state.Plan, plan) is >= 0 and var own ? own : found.Water.Orp : PumpFollows.Of(state.Plan, plan);
        var seen = probe < 0 ? new double?[look.Count] : await look.MeansAsync(state.Plan.Probes[probe].Id);
        var tank = plan is { TankTopic: not null, TankLitres: { } full } ? Held(await look.MeansAsync(plan.TankSeries)).Select(p => p * full / 100).ToArray() : null;
        return new(
            look.Times, [.. driven.Select(s => s * litres)], Usual(watched, litres, look), probe < 0 ? null : state.Plan.Probes[probe].Id, seen, await ExpectedAsync(state, watched, driven, seen, look), tank);
    }

    private static IReadOnlyList<double?>? Usual((DosedWater Water, DosingWatch Watch, DosedProduct Product)? watched, double? litres, Look look)
    {
        // What acid is asked for hangs on the chlorine that is dosed: there is no usual hour of it.
        if (watched is not { Product: DosedProduct.Chlorine, Watch.Supervisor: { } supervisor } found || supervisor.Insight(found.Product) is not { IsJudged: true } insight) return null;
        return [.. look.Times.Select(t => insight.Usual[(int)(t / 3_600_000 % 24)] * PumpCourse.Span.TotalMinutes * litres)];
    }

    private static async Task<IReadOnlyList<double?>?> ExpectedAsync(CircuitState state, (DosedWater Water, DosingWatch Watch, DosedProduct Product)? watched, double?[] driven, double?[] seen, Look look)
    {
        if (watched is not { Product: DosedProduct.Acid, Watch.Supervisor: { } supervisor } found) return null;
        var chlorine = await look.StrokesAsync(state.Plan.Pumps[found.Water.Chlorine.Index]);
        return PumpCourse.ExpectedPh(supervisor, look.From, driven, chlorine, seen);
    }

    // Tanks speak seldom; for an hour a level is as it was last heard.
    private static double?[] Held(double?[] levels)
    {
        var (held, age) = (new double?[levels.Length], 0);
        for (var i = 0; i < levels.Length; i++)
        {
            age = levels[i] is null ? age + 1 : 0;
            held[i] = levels[i] ?? (i > 0 && age <= 12 ? held[i - 1] : null);
        }

        return held;
    }

    // As the stock book counts it: the ripple of a sensor cancels, and a fill is no use.
    private static double? Fell(IReadOnlyList<double?>? tank, double? full, Look look)
    {
        if (tank is null || full is not { } litres) return null;
        var (trail, fell, told) = (default(TankTrail), 0.0, false);
        for (var i = 0; i < tank.Count; i++)
        {
            if (tank[i] is not { } level) continue;
            (trail, var step) = trail.Hear(look.From + (i * PumpCourse.Span), level / litres * 100);
            (fell, told) = (fell + ((step?.Used ?? 0) / 100 * litres), told || step is not null);
        }

        return told ? Math.Max(0, fell) : null;
    }

    private static async Task<IReadOnlyList<PumpMark>> MarksAsync(IRecordStore record, CircuitWorker worker, string id, Look look)
    {
        var rows = await record.EntriesAsync(worker.Partition, new EntryQuery(["alarm", "fault"], id, look.From, default, MostEntries), look.Cancellation);
        return [.. rows.OrderBy(r => r.HappenedAt).Select(r => r.Body switch
        {
            AlarmEntry { Change: AlarmChange.Raised } a => new PumpMark(r.HappenedAt, "alarm", Reader.Words.OfRule(a.Alarm.Rule, "title")),
            AlarmEntry { Change: AlarmChange.Cleared } a => new PumpMark(r.HappenedAt, "cleared", Reader.Words.OfRule(a.Alarm.Rule, "title")),
            JobEntry j => new PumpMark(r.HappenedAt, "job", j.Job.Seen),
            _ => null,
        }).OfType<PumpMark>()];
    }

    // The spans that are shown, and where what is known of them is read.
    private sealed record Look(PartitionKey Partition, ISeriesStore Store, Instant From, int Count, Instant Now, CancellationToken Cancellation)
    {
        public IReadOnlyList<long> Times { get; } = [.. Enumerable.Range(0, Count).Select(i => (From + (i * PumpCourse.Span)).UnixMilliseconds)];

        public async Task<double?[]> StrokesAsync(PumpPlan pump)
        {
            // Each start and stop counts: no tier has them.
            var rows = await WholeSeries.RawAsync(Store, Partition, pump.StrokesTopic is null ? pump.StateSeries : pump.StrokesSeries, From - Before, Now, RowsAtOnce, Cancellation);
            return PumpCourse.Strokes(pump, [.. rows.Select(r => new PumpSaying(r.MeasuredAt, r.Raw))], From, Count, Now);
        }

        public async Task<double?[]> MeansAsync(string series)
        {
            var means = new double?[Count];
            var line = await Store.SeriesAsync(Partition, new SeriesQuery(series, From, From + (Count * PumpCourse.Span), Count, TimeSpan.Zero), Cancellation);
            foreach (var point in line.Points.Where(p => p.Count > 0)) means[Math.Clamp((int)((point.At - From) / PumpCourse.Span), 0, Count - 1)] = point.Mean;
            return means;
        }
    }
}
