using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Storage;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>What the record says it owes. Nobody is at the other end here.</summary>
public sealed class FeedSourceTests : IAsyncLifetime, IAsyncDisposable
{
    private readonly FedRecord _record = new(new Uri("http://127.0.0.1:9"));

    private SqliteStore Source => _record.Store;

    public Task InitializeAsync() => Task.CompletedTask;

    public ValueTask DisposeAsync() => _record.DisposeAsync();

    Task IAsyncLifetime.DisposeAsync() => DisposeAsync().AsTask();

    [Fact]
    public async Task All_that_was_ever_stored_is_owed_once()
    {
        await _record.CommitAsync(FedRecord.Seconds(0, 700).Concat(FedRecord.Seconds(0, 30, "orp")));

        var pages = await AllAsync();

        Assert.Equal([("main-ph", 700), ("orp", 30)], Counts(pages).Order());
        Assert.Equal(default, await Source.BacklogAsync(default));
        await _record.CommitAsync(FedRecord.Seconds(700, 3));
        Assert.Equal([("main-ph", 3)], Counts(await AllAsync()));
    }

    [Fact]
    public async Task What_was_not_noted_is_owed_again_also_after_a_restart()
    {
        await _record.CommitAsync(FedRecord.Seconds(0, 100));

        Assert.Equal(100, (await Source.NextAsync(5000, null, default)).Readings);
        Source.Forget();
        Assert.Equal(100, (await Source.NextAsync(5000, null, default)).Readings);
        await _record.ReopenAsync();
        Assert.Equal(100, (await Source.NextAsync(5000, null, default)).Readings);
        Assert.Equal(100, (await Source.BacklogAsync(default)).Readings);
    }

    [Fact]
    public async Task A_page_that_is_on_its_way_is_not_in_the_next_one()
    {
        await _record.CommitAsync(FedRecord.Seconds(0, 1200));

        var first = await Source.NextAsync(500, null, default);
        var second = await Source.NextAsync(500, first, default);
        await Source.NoteAsync(first, [], default);
        await Source.NoteAsync(second, [], default);

        Assert.Equal((500, 500), (first.Readings, second.Readings));
        Assert.Equal(200, (await Source.BacklogAsync(default)).Readings);
        Assert.Equal(200, Counts(await AllAsync()).Sum(c => c.Count));
    }

    [Fact]
    public async Task A_late_reading_has_its_minute_written_again()
    {
        await _record.CommitAsync(FedRecord.Seconds(0, 180));
        await AllAsync();

        await _record.CommitAsync(Batch.Late(FedRecord.Noon + TimeSpan.FromSeconds(70.5), 7.5));

        Assert.Equal(61, (await Source.BacklogAsync(default)).Readings);
        var page = await Source.NextAsync(5000, null, default);
        var piece = Assert.Single(page.Pieces);
        Assert.Equal(61, piece.Readings.Count);
        Assert.Contains(piece.Readings, r => r.Raw == 7.5 && r.Quality.HasFlag(Quality.Late));
        await Source.NoteAsync(page, [], default);
        Assert.Empty((await Source.NextAsync(5000, null, default)).Pieces);
    }

    [Fact]
    public async Task A_reading_that_comes_late_into_a_page_on_its_way_is_not_lost()
    {
        await _record.CommitAsync(FedRecord.Seconds(0, 60));
        var page = await Source.NextAsync(5000, null, default);

        await _record.CommitAsync(Batch.Late(FedRecord.Noon + TimeSpan.FromSeconds(7.5), 7.5));
        await Source.NoteAsync(page, [], default);
        var marked = await Source.NextAsync(5000, null, default);
        // And into the minute that is on its way for its sake.
        await _record.CommitAsync(Batch.Late(FedRecord.Noon + TimeSpan.FromSeconds(8.5), 7.25));
        await Source.NoteAsync(marked, [], default);

        Assert.Equal(61, marked.Readings);
        var again = await Source.NextAsync(5000, null, default);
        Assert.Equal(62, again.Readings);
        Assert.Contains(again.Pieces[0].Readings, r => r.Raw == 7.25);
    }

    [Fact]
    public async Task Where_nobody_was_ever_fed_late_readings_leave_no_mark()
    {
        await _record.CommitAsync(FedRecord.Seconds(0, 60));
        await _record.CommitAsync(Batch.Late(FedRecord.Noon + TimeSpan.FromSeconds(7.5), 7.5));

        Assert.Equal(default, await Source.BacklogAsync(default));
        Assert.Equal(61, Counts(await AllAsync()).Sum(c => c.Count));
    }

    [Fact]
    public async Task A_renamed_series_is_owed_under_its_new_name_and_says_so_once()
    {
        await _record.CommitAsync(FedRecord.Seconds(0, 10));
        await AllAsync();

        await _record.CommitAsync(Batch.Of(2, FedRecord.Seconds(10, 5, "pool-ph")).With(renamed: [new SeriesRenamed("main-ph", "pool-ph")]));
        var page = await Source.NextAsync(5000, null, default);
        await Source.NoteAsync(page, [], default);
        await _record.CommitAsync(FedRecord.Seconds(15, 5, "pool-ph"));
        var next = await Source.NextAsync(5000, null, default);

        Assert.Equal(("pool-ph", "main-circuit/main-ph", 5), (page.Pieces[0].Probe, page.Pieces[0].Formerly, page.Readings));
        Assert.Equal(("pool-ph", null), (next.Pieces[0].Probe, next.Pieces[0].Formerly));
    }

    [Fact]
    public async Task Everything_is_owed_again_when_it_is_asked_for_and_a_page_on_its_way_does_not_undo_that()
    {
        await _record.CommitAsync(FedRecord.Seconds(0, 90));
        var page = await Source.NextAsync(50, null, default);
        await Source.NoteAsync(page, [], default);
        var second = await Source.NextAsync(5000, null, default);

        await Source.WriteAllAgainAsync(default);
        await Source.NoteAsync(second, [], default);

        Assert.Equal(90, (await Source.BacklogAsync(default)).Readings);
        Assert.Equal(90, Counts(await AllAsync()).Sum(c => c.Count));
    }

    [Fact]
    public async Task What_is_parked_is_counted_a_row_a_series_and_reason()
    {
        await _record.CommitAsync(FedRecord.Seconds(0, 90));
        var page = await Source.NextAsync(5000, null, default);
        ParkedLines Of(int second, string words) =>
            new(page.Pieces[0].Series, "main-circuit", "main-ph", FedRecord.Noon + TimeSpan.FromSeconds(second), FedRecord.Noon + TimeSpan.FromSeconds(second + 1), 2, "line", words, FedRecord.Noon);

        await Source.NoteAsync(page, [Of(5, "conflict"), Of(1, "conflict"), Of(7, "too old")], default);

        var rows = await Source.ParkedAsync(default);
        Assert.Equal([("conflict", 4L), ("too old", 2L)], rows.Select(r => (r.Words, r.Lines)).Order());
        Assert.Equal(FedRecord.Noon + TimeSpan.FromSeconds(1), rows.Min(r => r.First));
        Assert.Equal(6, (await Source.BacklogAsync(default)).Parked);
    }

    [Fact]
    public async Task What_is_owed_is_counted_through_the_roll_ups_to_the_last_reading()
    {
        await _record.CommitAsync(FedRecord.Seconds(0, 20_000));
        await _record.CommitAsync(Batch.Spa, FedRecord.Seconds(0, 7));
        var page = await Source.NextAsync(1234, null, default);
        await Source.NoteAsync(page, [], default);

        var owed = await Source.BacklogAsync(default);

        Assert.Equal(20_007 - page.Readings, owed.Readings);
        Assert.Equal(FedRecord.Noon + TimeSpan.FromSeconds(page.Pieces.Where(p => p.Circuit == "main-circuit").Sum(p => p.Readings.Count)) + TimeSpan.FromMilliseconds(250), owed.Oldest);
    }

    private static IEnumerable<(string Probe, int Count)> Counts(IEnumerable<FeedPage> pages) =>
        pages.SelectMany(p => p.Pieces).GroupBy(p => p.Probe).Select(g => (g.Key, g.Sum(p => p.Readings.Count)));

    private async Task<List<FeedPage>> AllAsync()
    {
        var pages = new List<FeedPage>();
        while (true)
        {
            var page = await Source.NextAsync(500, null, default);
            if (page.Pieces.Count == 0) return pages;
            await Source.NoteAsync(page, [], default);
            pages.Add(page);
        }
    }
}
