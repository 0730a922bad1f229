using PlantWatch.Server.Tests.Storage;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>How the feeder meets what the other side says.</summary>
public sealed class SeriesFeederTests
{
    private const string TooOld = "partial write: points beyond retention policy dropped=";
    private const string Conflict = "partial write: field type conflict dropped=";

    [Fact]
    public async Task A_page_that_is_too_large_for_the_way_is_halved_until_it_gets_through_and_grows_again()
    {
        await using var other = await Pretender.StartAsync();
        var most = 700;
        other.Says = lines => lines.Length > most ? (413, "too large") : (204, "");
        await using var record = new FedRecord(other.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 12_000));

        for (var failures = 0; failures < 3; failures++) Assert.Equal(Taking.NotNow, (await record.Feeder.StepAsync(default)).Answer.Taking);
        Assert.Equal(Taking.Taken, (await record.Feeder.StepAsync(default)).Answer.Taking);
        most = int.MaxValue;
        await record.DrainAsync();

        Assert.Equal([5000, 2500, 1250, 625], other.Writes.Take(4).Select(w => w.Length));
        Assert.Equal(SeriesFeeder.MostLines, other.Writes.Skip(4).Max(w => w.Length));
        Assert.Equal(0, await record.OwedAsync());
    }

    [Fact]
    public async Task A_page_is_never_smaller_than_a_hundred_lines()
    {
        await using var other = await Pretender.StartAsync();
        other.Says = _ => (413, "too large");
        await using var record = new FedRecord(other.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 6000));

        for (var i = 0; i < 10; i++) await record.Feeder.StepAsync(default);

        Assert.Equal(SeriesFeeder.FewestLines, other.Writes[^1].Length);
    }

    [Fact]
    public async Task With_more_series_than_a_page_has_shares_catching_up_never_rests()
    {
        await using var other = await Pretender.StartAsync();
        await using var record = new FedRecord(other.Url);
        for (var i = 0; i < 11; i++) await record.CommitAsync(FedRecord.Seconds(0, 2000, $"series-{i}"));

        var steps = new List<FeedStep>();
        while (steps.Sum(s => s.Written) < 22_000) steps.Add(await record.Feeder.StepAsync(default));

        Assert.All(steps.SkipLast(1), step => Assert.True(step.IsMore));
        Assert.Equal(22_000, other.Writes.SelectMany(w => w).Distinct().Count());
    }

    [Fact]
    public async Task What_is_older_than_the_server_keeps_is_counted_said_once_and_nothing_wrong()
    {
        await using var other = await Pretender.StartAsync();
        other.Says = lines => (400, TooOld + lines.Length);
        await using var record = new FedRecord(other.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 12_000));

        var steps = await record.DrainAsync();

        var said = Assert.Single(steps.SelectMany(s => s.NewlyParked));
        Assert.True(said.IsTooOld);
        Assert.Equal((0L, 12_000L, 0L), await record.Store.BacklogAsync(default) is var owed ? (owed.Parked, owed.TooOld, owed.Readings) : default);
        Assert.Equal(3, other.Writes.Count);
    }

    [Fact]
    public async Task Lines_that_are_refused_for_a_reason_that_is_known_are_counted_without_another_word()
    {
        await using var other = await Pretender.StartAsync();
        other.Says = lines => (400, Conflict + lines.Length);
        await using var record = new FedRecord(other.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 12_000));
        await record.CommitAsync(Batch.Spa, FedRecord.Seconds(0, 10));

        var steps = await record.DrainAsync();

        Assert.Equal(["main-circuit", "spa-circuit"], steps.SelectMany(s => s.NewlyParked).Select(p => p.Circuit).Order());
        Assert.Equal(12_010, (await record.Store.BacklogAsync(default)).Parked);
        // And where everything is written again, they are free.
        other.Says = _ => (204, "");
        await record.Store.WriteAllAgainAsync(default);
        Assert.Equal(0, (await record.Store.BacklogAsync(default)).Parked);
        Assert.Equal(12_010, (await record.DrainAsync()).Sum(s => s.Written));
    }

    [Fact]
    public async Task Another_server_gets_everything_and_the_same_one_nothing_twice()
    {
        await using var one = await Pretender.StartAsync();
        await using var two = await Pretender.StartAsync();
        await using var record = new FedRecord(one.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 100));
        Assert.False(await record.Feeder.BeginAsync(default));
        await record.DrainAsync();

        await record.ReopenAsync();
        Assert.False(await record.Feeder.BeginAsync(default));
        Assert.Equal(0, await record.OwedAsync());

        Assert.True(await BeginAsync(record, new(two.Url, Peers.Influxd.Database, null, () => null)));
        Assert.Equal(100, await record.OwedAsync());
        Assert.False(await BeginAsync(record, new(new Uri(two.Url, "/"), Peers.Influxd.Database, null, () => "another token")));
        Assert.True(await BeginAsync(record, new(two.Url, "elsewhere", null, () => null)));
    }

    private static async Task<bool> BeginAsync(FedRecord record, InfluxPlace place)
    {
        using var door = new InfluxDoor(place, TimeProvider.System);
        return await new SeriesFeeder(record.Store, door, TimeProvider.System).BeginAsync(default);
    }
}
