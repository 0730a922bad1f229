using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Series;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Whole;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>The nightly comparison against a real influxd from which somebody took a point.</summary>
public sealed class NightlyCheckTests
{
    private static readonly TimeZoneInfo London = TimeZoneInfo.FindSystemTimeZoneById("Europe/London");

    private static NightlyCheck At(FedRecord record, Instant now) =>
        new(record.Store, new CopyCheck(record.Store, record.Door), London, new ClockAt(now.ToDateTimeOffset()), NullLogger<NightlyCheck>.Instance);

    [PeerFact("influxd")]
    public async Task A_point_that_was_taken_out_is_found_the_next_night_and_written_again()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var record = new FedRecord(influxd.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 5000).Concat(FedRecord.Seconds(0, 300, "orp")));
        await record.DrainAsync();
        await influxd.AskAsync($"DELETE FROM reading WHERE probe = 'main-ph' AND time = {FedRecord.Noon.UnixMicroseconds + 77_000_000}000");
        Assert.Equal(5299, await record.PointsAsync());

        var report = await At(record, FedRecord.Noon + TimeSpan.FromHours(15)).LookAsync(default);

        // The day of London in June begins at 23:00 of the day before, UTC.
        var differs = Assert.Single(report!.Differ);
        Assert.Equal(new CopyDifference("main-circuit", "main-ph", Instant.FromUtc(2026, 5, 31, 23), Instant.FromUtc(2026, 6, 1, 23), 5000, 4999), differs);
        Assert.Equal(2 * NightlyCheck.Days, report.Compared);
        Assert.Equal(5000, await record.OwedAsync());
        await record.DrainAsync();
        Assert.Equal(5300, await record.PointsAsync());
        Assert.Empty((await At(record, FedRecord.Noon + TimeSpan.FromHours(39)).LookAsync(default))!.Differ);
    }

    [PeerFact("influxd")]
    public async Task It_runs_once_a_night_two_hours_after_the_sites_midnight()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var record = new FedRecord(influxd.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 10));
        await record.DrainAsync();
        var midnight = Instant.FromUtc(2026, 6, 1, 23);

        Assert.Null(await At(record, midnight + TimeSpan.FromMinutes(119)).LookAsync(default));
        Assert.NotNull(await At(record, midnight + TimeSpan.FromMinutes(121)).LookAsync(default));
        Assert.Null(await At(record, midnight + TimeSpan.FromHours(20)).LookAsync(default));
        Assert.NotNull(await At(record, midnight + TimeSpan.FromMinutes(121) + TimeSpan.FromDays(1)).LookAsync(default));
    }

    [PeerFact("influxd")]
    public async Task What_is_owed_or_parked_is_no_difference()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var record = new FedRecord(influxd.Url);
        await influxd.WriteAsync($"reading,circuit=x,probe=y value=7i {FedRecord.Noon.UnixMicroseconds}");
        await record.CommitAsync(FedRecord.Seconds(0, 10));
        await record.DrainAsync();
        await record.CommitAsync(FedRecord.Seconds(0, 10, "orp"));

        var report = await At(record, FedRecord.Noon + TimeSpan.FromHours(15)).LookAsync(default);

        Assert.Empty(report!.Differ);
        Assert.Equal(10, (await record.Store.BacklogAsync(default)).Parked);
    }

    [PeerFact("influxd")]
    public async Task A_server_that_does_not_answer_is_asked_again_later()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var record = new FedRecord(influxd.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 10));
        await record.DrainAsync();
        await influxd.KillAsync();
        var night = FedRecord.Noon + TimeSpan.FromHours(15);

        var check = At(record, night);
        Assert.Null(await check.LookAsync(default));
        await influxd.StartAgainAsync();

        Assert.Null(await check.LookAsync(default));
        Assert.NotNull(await At(record, night + TimeSpan.FromHours(1)).LookAsync(default));
    }
}
