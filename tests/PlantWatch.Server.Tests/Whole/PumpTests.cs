using System.Net;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The page of a dosing pump, through the whole server.</summary>
public sealed class PumpTests
{
    [Fact]
    public async Task A_pump_that_stands_alone_says_why_the_water_does_not_judge_it()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishAsync("hall/acid/state", "running");
        var page = await server.GetAsync<PumpPage>("/api/v1/pumps/acid-pump");

        Assert.Equal("watch.no_partner", Assert.Single(page.Lacks).Code);
        Assert.Null(page.Insight);
        Assert.Empty(page.Verdicts);
        Assert.Equal(288, page.Course.T.Count);
        Assert.All(page.Course.Driven, d => Assert.Null(d));
    }

    [Fact]
    public async Task A_pump_of_a_supervised_water_is_learned_and_stands_on_the_axis_with_its_tank()
    {
        // In the midst of a span of five minutes: strokes of a minute that lies across two of them are known of neither.
        await using var server = await WholeServer.StartAsync(plant: Plant(), clock: new ClockAt(new(2027, 1, 12, 9, 2, 0, TimeSpan.Zero)));
        await server.PublishAsync("hall/acid/state", "stopped");
        await server.PublishAsync("hall/acid/tank", "60");
        await server.PublishAsync("hall/panel", "7.4");
        await server.PublishAsync("hall/hypo/strokes", "12");
        var (acid, hypo) = (await server.GetAsync<PumpPage>("/api/v1/pumps/acid-pump?hours=1"), await server.GetAsync<PumpPage>("/api/v1/pumps/hypo-pump?hours=1"));

        Assert.Empty(acid.Lacks);
        Assert.Equal((0.0, 4.0), (acid.Insight!.DaysLearned, acid.Insight.DaysWanted));
        Assert.Equal(("panel-ph", 7.4, 60.0), (acid.Course.ProbeId, acid.Course.Seen[^1]!.Value, acid.Course.Tank![^1]!.Value));
        Assert.Equal(20, acid.DailyLimitLitres);
        // Twelve strokes of 2 mL in a minute are 1.44 L/h.
        Assert.Equal(1.44, hypo.Course.Driven.OfType<double>().Last(), 6);
        Assert.Null(hypo.Course.Expected);
    }

    [Fact]
    public async Task A_series_that_is_longer_than_a_page_is_read_to_its_end()
    {
        var store = new Seconds(25);
        var all = await WholeSeries.RawAsync(store, new PartitionKey("hall"), "p", Instant.FromUtc(2027, 1, 12), Instant.FromUtc(2027, 1, 13), 10, default);
        Assert.Equal((25, 3), (all.Count, store.Asked));
        Assert.Equal(all.Select(r => r.MeasuredAt).Distinct().Order(), all.Select(r => r.MeasuredAt));
    }

    // A reading a second from the start of the day on.
    private sealed class Seconds(int count) : ISeriesStore
    {
        public int Asked { get; private set; }

        public ValueTask<IReadOnlyList<StoredReading>> RawAsync(PartitionKey partition, string series, Instant from, Instant to, int limit, CancellationToken cancellation)
        {
            Asked++;
            var all = Enumerable.Range(0, count).Select(i => Instant.FromUtc(2027, 1, 12) + TimeSpan.FromSeconds(i)).Where(at => at >= from && at < to).Take(limit);
            return new((IReadOnlyList<StoredReading>)[.. all.Select(at => new StoredReading(at, at, 1, default))]);
        }

        public ValueTask<SeriesAnswer> SeriesAsync(PartitionKey partition, SeriesQuery query, CancellationToken cancellation) => throw new NotSupportedException();

        public ValueTask<Instant> RawFromAsync(PartitionKey partition, string? series, CancellationToken cancellation) => ValueTask.FromResult(Instant.Never);

        public ValueTask<ProbeWindow> WindowAsync(PartitionKey partition, string series, Instant from, Instant to, CancellationToken cancellation) => throw new NotSupportedException();
    }

    [Fact]
    public async Task There_is_no_page_of_what_is_no_pump()
    {
        await using var server = await WholeServer.StartAsync();
        foreach (var id in (string[])["panel-ph", "nobody"]) Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync($"/api/v1/pumps/{id}")).StatusCode);
    }

    // A chlorine pump beside the acid pump, both with what a stroke or an hour delivers.
    private static string Plant() => WholeServer.Plant
        .Replace("    strength_percent: 10\n", "    strength_percent: 10\n  - { id: hypo, name: Hypochlorite, kind: sodium_hypochlorite, strength_percent: 12, strength_means: trade }\n", StringComparison.Ordinal)
        + "\n        litres_per_hour: 6\n        pulses_told: true\n        daily_limit_litres: 20\n      - { id: hypo-pump, name: Hypochlorite pump, pool: main, product: hypo, state_topic: hall/hypo/state, strokes_topic: hall/hypo/strokes, strokes_are: last_minute, millilitres_per_stroke: 2 }\n";
}
