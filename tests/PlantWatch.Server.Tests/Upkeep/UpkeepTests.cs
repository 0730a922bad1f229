using System.Net;
using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.PlantFile;
using PlantWatch.Server.Tests.Storage;
using PlantWatch.Server.Tests.Whole;
using PlantWatch.Server.Upkeep;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Upkeep;

/// <summary>What a policy keeps, when it dares, and what the record will come to.</summary>
public sealed class UpkeepTests
{
    private static readonly RecordSize TenDays = new(100_000_000, 0, [], 864_000, 0, 14_400, 86_400, 1_440, 10);

    [Fact]
    public void Without_a_policy_everything_is_kept_for_ever()
    {
        Assert.True(RetentionPolicy.Of(new RetentionOptions()).IsForEver);
        Assert.True(RetentionPolicy.Of(new RetentionOptions { MinuteDays = 800 }).IsForEver);
        Assert.Equal(new Retention(Instant.Never, Instant.Never, false), RetentionPolicy.Of(new RetentionOptions()).At(Instant.FromUtc(2026, 6, 1), false));
    }

    [Theory]
    [InlineData(90, 800, 90, 800)]
    [InlineData(1, 1, 35, 400)]
    [InlineData(900, 500, 900, 900)]
    public void What_is_asked_too_short_is_held_at_the_least(int raw, int minutes, int heldRaw, int heldMinutes) =>
        Assert.Equal(new RetentionPolicy(TimeSpan.FromDays(heldRaw), TimeSpan.FromDays(heldMinutes)), RetentionPolicy.Of(new RetentionOptions { RawDays = raw, MinuteDays = minutes }));

    [Fact]
    public void Nothing_is_let_go_until_the_clock_has_gone_steadily_for_an_hour()
    {
        var clock = new SteppedClock();
        var steady = new SteadyClock(clock);
        Assert.False(steady.IsSteady());
        clock.Go(TimeSpan.FromMinutes(59));
        Assert.False(steady.IsSteady());
        clock.Go(TimeSpan.FromMinutes(1));
        Assert.True(steady.IsSteady());
        clock.Step(TimeSpan.FromDays(3653));
        Assert.False(steady.IsSteady());
        clock.Go(TimeSpan.FromMinutes(30));
        clock.Step(TimeSpan.FromDays(-3653));
        Assert.False(steady.IsSteady());
        clock.Go(TimeSpan.FromMinutes(59));
        Assert.False(steady.IsSteady());
        clock.Go(TimeSpan.FromMinutes(1));
        Assert.True(steady.IsSteady());
    }

    [Fact]
    public async Task A_round_lets_go_what_is_older_than_the_policy_and_not_more()
    {
        var (file, clock) = (new DatabaseFile(), new HandClock());
        await using (var store = SqliteStore.Open(file.Path, TimeZoneInfo.Utc))
        {
            var now = Instant.From(clock.GetUtcNow());
            await store.CommitAsync([Batch.Of(1, Enumerable.Range(0, 40).Select(day => Batch.Ph(now - TimeSpan.FromDays(40 - day), 7.2)))], default);
            using var keeper = new RetentionKeeper(store, new PlantWatchOptions { Retention = { RawDays = 35 } }, clock, NullLogger<RetentionKeeper>.Instance);

            Assert.Equal(5, await keeper.RoundAsync(default));
            Assert.Equal(0, await keeper.RoundAsync(default));
            clock.Advance(TimeSpan.FromDays(2));
            Assert.Equal(2, await keeper.RoundAsync(default));
            Assert.Equal(33, (await store.RawAsync(Batch.Main, "main-ph", now - TimeSpan.FromDays(50), now, 100, default)).Count);
        }

        file.Remove();
    }

    [Fact]
    public void A_record_that_keeps_all_grows_as_it_did()
    {
        var forecast = SizeForecast.Of(TenDays, new RetentionPolicy(null, null), diskFree: 1_000_000_000);

        // 100 MB in ten days.
        Assert.Equal(10_000_000, forecast.BytesADay, 4_000_000.0);
        Assert.Equal(100_000_000 + (365 * forecast.BytesADay), forecast.BytesInAYear, 1.0);
        Assert.Equal(1_000_000_000 / forecast.BytesADay, forecast.DaysLeft!.Value, 0.01);
    }

    [Fact]
    public void Once_the_kept_time_is_full_as_much_goes_as_comes()
    {
        var policy = new RetentionPolicy(TimeSpan.FromDays(35), TimeSpan.FromDays(400));
        var (young, old) = (SizeForecast.Of(TenDays, policy, 0), SizeForecast.Of(TenDays with { Days = 35 }, policy, 0));

        Assert.Equal(young.BytesADay - (86_400 * 26), old.BytesADay, 1.0);
        Assert.True(young.BytesInAYear < SizeForecast.Of(TenDays, new RetentionPolicy(null, null), 0).BytesInAYear - (86_400.0 * 26 * 300));
        Assert.Equal(0, old.DaysLeft);
    }

    [Fact]
    public void A_record_that_does_not_grow_fills_no_disk() =>
        Assert.Null(SizeForecast.Of(TenDays with { ReadingsADay = 0, MinutesADay = 0 }, new RetentionPolicy(null, null), 1).DaysLeft);

    [PeerFact("mosquitto_pub")]
    public async Task The_server_tells_the_size_of_its_record_and_from_when_a_replay_can_begin()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.4", 20));
        var record = (SqliteStore)server.Record;
        while (await record.LetGoAsync(new Retention(WholeServer.Now + TimeSpan.FromMinutes(2), Instant.Never, false), 1000, default) is not null)
        {
        }

        var size = await server.GetAsync<StorageView>("/api/v1/storage");

        Assert.Equal((0, 20, (double?)null), (size.Readings, size.LetGo, size.RawDays));
        Assert.True(size.Bytes > 0 && size.DiskFreeBytes > 0 && size.BytesInAYear >= size.Bytes - size.FreeBytes);
        Assert.Contains(size.Tables, t => t.Name == "other" && t.Bytes > 0);
        Assert.Equal("hall", Assert.Single(size.Gone).Circuit);
        var asked = new WhatIfLimitsRequest(WholeServer.Now - TimeSpan.FromHours(1), WholeServer.Now, []);
        var answer = await server.PostAsync("/api/v1/what-if/limits", asked);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var words = await answer.Content.ReadAsStringAsync();
        Assert.True(words.Contains("what_if.raw_gone", StringComparison.Ordinal), words);
        Assert.Equal(20, (await server.SumsAsync()).Stored);
    }

    private sealed class SteppedClock : TimeProvider
    {
        private DateTimeOffset _wall = new(2026, 6, 1, 0, 0, 0, TimeSpan.Zero);
        private long _counter;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override DateTimeOffset GetUtcNow() => _wall;

        public override long GetTimestamp() => _counter;

        public void Go(TimeSpan span)
        {
            Step(span);
            _counter += span.Ticks;
        }

        public void Step(TimeSpan span) => _wall += span;
    }
}
