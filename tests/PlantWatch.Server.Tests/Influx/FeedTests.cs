using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Series;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Storage;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>The feed against a real influxd.</summary>
public sealed class FeedTests
{
    [PeerFact("influxd")]
    public async Task Every_reading_arrives_with_name_time_value_quality_and_lag()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var record = new FedRecord(influxd.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 12_000));
        await record.CommitAsync(Batch.Spa, FedRecord.Seconds(0, 5));

        var steps = await record.DrainAsync();

        Assert.Equal(12_005, await record.PointsAsync());
        Assert.All(steps, step => Assert.InRange(step.Written, 1, SeriesFeeder.MostLines));
        var first = await influxd.AskAsync("SELECT value, quality, lag FROM reading WHERE circuit = 'spa-circuit' AND probe = 'main-ph' LIMIT 1");
        Assert.Contains($"[{FedRecord.Noon.UnixMicroseconds},7,1,250000]", first, StringComparison.Ordinal);
    }

    [PeerFact("influxd")]
    public async Task A_page_that_is_written_twice_is_there_once()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var record = new FedRecord(influxd.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 6000));
        await record.DrainAsync();

        await record.Store.WriteAllAgainAsync(default);
        Assert.Equal(6000, await record.OwedAsync());
        await record.DrainAsync();

        Assert.Equal(6000, await record.PointsAsync());
    }

    [PeerFact("influxd")]
    public async Task A_late_reading_arrives_too()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var record = new FedRecord(influxd.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 600));
        await record.DrainAsync();

        await record.CommitAsync(Batch.Late(FedRecord.Noon + TimeSpan.FromSeconds(100.5), 3.25), Batch.Ph(FedRecord.Noon + TimeSpan.FromSeconds(600), 7));
        await record.DrainAsync();

        Assert.Equal(602, await record.PointsAsync());
        Assert.Equal(1, await record.PointsAsync("WHERE value = 3.25 AND quality = 3"));
    }

    [PeerFact("influxd")]
    public async Task A_series_goes_on_under_its_new_name()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var record = new FedRecord(influxd.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 10));
        await record.DrainAsync();

        await record.CommitAsync(Batch.Of(2, FedRecord.Seconds(10, 5, "pool-ph")).With(renamed: [new SeriesRenamed("main-ph", "pool-ph")]));
        var steps = await record.DrainAsync();

        Assert.Equal("main-circuit/main-ph", Assert.Single(steps.SelectMany(s => s.Renamed)).Formerly);
        Assert.Equal((10L, 5L), (await record.PointsAsync("WHERE probe = 'main-ph'"), await record.PointsAsync("WHERE probe = 'pool-ph'")));
    }

    [PeerFact("influxd")]
    public async Task Where_the_token_is_refused_the_answer_says_so_and_all_stays_owed()
    {
        await using var influxd = await Influxd.StartAsync();
        await influxd.AskAsync("CREATE USER plant WITH PASSWORD 'right' WITH ALL PRIVILEGES");
        await influxd.KillAsync();
        await influxd.StartAgainAsync(asksWho: true);
        await using var record = new FedRecord(influxd.Url, token: "plant:wrong");
        await record.CommitAsync(FedRecord.Seconds(0, 10));

        var refused = await record.Feeder.StepAsync(default);

        Assert.Equal((Taking.NotAllowed, "authorization failed"), (refused.Answer.Taking, refused.Answer.Words));
        Assert.Equal(10, await record.OwedAsync());
    }

    [PeerFact("influxd")]
    public async Task User_and_password_of_an_old_server_are_given_as_it_wants_them()
    {
        await using var influxd = await Influxd.StartAsync();
        await influxd.AskAsync("CREATE USER plant WITH PASSWORD 'right' WITH ALL PRIVILEGES");
        await influxd.KillAsync();
        await influxd.StartAgainAsync(asksWho: true);
        await using var record = new FedRecord(influxd.Url, token: "plant:right");
        await record.CommitAsync(FedRecord.Seconds(0, 10));

        await record.DrainAsync();

        Assert.Equal(10, await record.PointsAsync());
    }

    [PeerFact("influxd")]
    public async Task Where_there_is_no_database_the_answer_says_so_and_goes_on_when_it_is_made()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var record = new FedRecord(influxd.Url, database: "elsewhere");
        await record.CommitAsync(FedRecord.Seconds(0, 10));

        var refused = await record.Feeder.StepAsync(default);
        await influxd.AskAsync("CREATE DATABASE elsewhere");
        await record.DrainAsync();

        Assert.Equal((Taking.NotThere, "database not found: \"elsewhere\""), (refused.Answer.Taking, refused.Answer.Words));
        Assert.Equal((10L, 0L), (await record.PointsAsync(), await record.OwedAsync()));
    }

    [PeerFact("influxd")]
    public async Task Poisoned_lines_are_parked_with_the_servers_words_and_all_others_arrive()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var record = new FedRecord(influxd.Url);
        // In the shard of noon another program has made the value an integer: a shard of 1.x is a week, and its field types are its own.
        await influxd.WriteAsync($"reading,circuit=x,probe=y value=7i {FedRecord.Noon.UnixMicroseconds}");
        var before = FedRecord.Noon - TimeSpan.FromDays(30);
        await record.CommitAsync(Enumerable.Range(0, 900).Select(i => Batch.Ph(before + TimeSpan.FromSeconds(i), 7)).Concat(FedRecord.Seconds(0, 37)));

        var steps = await record.DrainAsync();

        Assert.Equal((37L, 0L), ((await record.Store.BacklogAsync(default)).Parked, await record.OwedAsync()));
        Assert.Equal(900, await record.PointsAsync("WHERE circuit = 'main-circuit'"));
        var parked = Assert.Single(await record.Store.ParkedAsync(default));
        Assert.Equal(("main-circuit", "main-ph", FedRecord.Noon, FedRecord.Noon + TimeSpan.FromSeconds(36)), (parked.Circuit, parked.Probe, parked.First, parked.Last));
        Assert.Equal("partial write: field type conflict: input field \"value\" on measurement \"reading\" is type float, already exists as type integer", parked.Words);
        Assert.StartsWith("reading,circuit=main-circuit,probe=main-ph value=7", parked.Sample, StringComparison.Ordinal);
        Assert.Equal(37, steps.SelectMany(s => s.Parked).Sum(p => p.Lines));
    }

    [PeerFact("influxd")]
    public async Task What_is_older_than_the_database_keeps_is_counted_and_all_else_arrives()
    {
        await using var influxd = await Influxd.StartAsync();
        await influxd.AskAsync("CREATE DATABASE short WITH DURATION 1d");
        await using var record = new FedRecord(influxd.Url, database: "short");
        // The server forgets by its own clock.
        var now = Instant.From(DateTimeOffset.UtcNow);
        await record.CommitAsync(Enumerable.Range(0, 300).Select(i => Batch.Ph(now - TimeSpan.FromDays(90) + TimeSpan.FromSeconds(i), 7)).Concat(Enumerable.Range(0, 20).Select(i => Batch.Ph(now + TimeSpan.FromSeconds(i), 7))));

        var steps = await record.DrainAsync();

        var owed = await record.Store.BacklogAsync(default);
        Assert.Equal((0L, 0L, 300L), (owed.Readings, owed.Parked, owed.TooOld));
        Assert.Single(steps.SelectMany(s => s.NewlyParked));
        Assert.Equal(20, await record.PointsAsync());
        Assert.Null(FeedWords.WhatIsWrong(FeedView.Off with { IsOn = true, Owed = owed }));
        Assert.Equal("nothing is owed; 300 lines were older than InfluxDB keeps", FeedWords.HowFar(FeedView.Off with { IsOn = true, Owed = owed }));
    }

    [PeerFact("influxd")]
    public async Task A_server_that_asks_for_rest_is_heard()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var gate = await Gate.BeforeAsync(influxd.Url);
        await using var record = new FedRecord(gate.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 10));
        (gate.Refuses, gate.RetryAfter) = (429, "40");

        var refused = await record.Feeder.StepAsync(default);
        gate.Refuses = null;
        await record.DrainAsync();

        Assert.Equal((Taking.NotNow, TimeSpan.FromSeconds(40)), (refused.Answer.Taking, refused.Answer.NotBefore));
        Assert.Equal(10, await record.PointsAsync());
    }
}
