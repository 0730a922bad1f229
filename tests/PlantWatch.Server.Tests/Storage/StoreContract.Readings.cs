using System.Text;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Storage;

public abstract partial class StoreContract
{
    [Fact]
    public async Task A_reading_comes_back_as_it_was()
    {
        var at = Instant.FromUnixMicroseconds(1_780_000_000_123_457);
        await Commit(Batch.Of(1, Batch.Ph(at, 0.1 + 0.2, Quality.Received | Quality.Suspect)));

        Assert.Equal(
            [new StoredReading(at, at + TimeSpan.FromMilliseconds(250), 0.1 + 0.2, Quality.Received | Quality.Suspect)],
            await Raw());
    }

    [Fact]
    public async Task Raw_readings_start_included_end_excluded_oldest_first_up_to_a_limit()
    {
        await Commit(Batch.Of(1, [.. Enumerable.Range(0, 6).Select(i => Batch.Ph(At(12, i), 7 + (i / 8.0)))]));

        Assert.Equal([At(12, 1), At(12, 2), At(12, 3)], (await Series.RawAsync(Batch.Main, "main-ph", At(12, 1), At(12, 4), 10, None)).Select(r => r.MeasuredAt));
        Assert.Equal([At(12, 1), At(12, 2)], (await Series.RawAsync(Batch.Main, "main-ph", At(12, 1), At(12, 4), 2, None)).Select(r => r.MeasuredAt));
    }

    [Fact]
    public async Task The_same_series_key_in_two_circuits_is_two_series()
    {
        await Record.CommitAsync([Batch.Of(1, Batch.Ph(At(12), 7.2)), Batch.In(Batch.Spa, 1, Batch.Ph(At(12), 7.6))], None);

        Assert.Equal(7.2, (await Raw()).Single().Raw);
        Assert.Equal(7.6, (await Series.RawAsync(Batch.Spa, "main-ph", At(0), At(23), 10, None)).Single().Raw);
    }

    [Fact]
    public async Task The_same_value_again_is_a_duplicate_and_another_one_a_conflict_that_is_kept()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12), 7.2), Batch.Ph(At(13), 7.25)));

        var receipt = await Commit(Batch.Of(2, Batch.Late(At(12), 7.2), Batch.Late(At(12), 7.9), Batch.Late(At(11), 7.1), Batch.Late(At(12), 7.9)));

        Assert.Equal(new CommitReceipt(Batch.Main, 2, new BackFillTally(AlreadyThere: 1, Conflicting: 2)), receipt);
        Assert.Equal(new BackFillTally(1, 2), await Record.BackFillsAsync(Batch.Main, None));
        Assert.Equal([7.1, 7.2, 7.25], (await Raw()).Select(r => r.Raw));
        var refusals = await Record.RefusalsAsync(Batch.Main, 10, None);
        Assert.Equal(2, refusals.DistinctBy(r => r.Id).Count());
        Assert.All(refusals, refusal =>
        {
            Assert.Equal(RefusalReason.ConflictingValue, refusal.Reason);
            Assert.Equal("7.9", Encoding.UTF8.GetString(refusal.Payload.Span));
            Assert.Equal("main-ph", refusal.Topic);
            Assert.Equal("2026-06-01T12:00:00Z 7.2", refusal.Detail);
            Assert.Equal(At(15), refusal.ReceivedAt);
            Assert.True(TimeOrderedId.IsVersion7(refusal.Id));
        });
    }

    [Fact]
    public async Task Tallies_belong_to_the_batch_that_brought_the_readings()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12), 7.2)));

        var receipts = await Record.CommitAsync([Batch.Of(2, Batch.Late(At(12), 7.2)), Batch.Of(3, Batch.Late(At(12), 7.3)), Batch.In(Batch.Spa, 1)], None);

        Assert.Equal([new BackFillTally(1, 0), new BackFillTally(0, 1), default], receipts.Select(r => r.BackFills));
        await Commit(Batch.Of(4, Batch.Late(At(12), 7.2)));
        Assert.Equal(new BackFillTally(2, 1), await Record.BackFillsAsync(Batch.Main, None));
    }

    [Fact]
    public async Task A_reading_that_wrongly_calls_itself_the_newest_costs_time_and_not_truth()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12), 7.5), Batch.Ph(At(14), 7.25)));

        var receipt = await Commit(Batch.Of(2, Batch.Ph(At(12), 7.5), Batch.Ph(At(13), 7.75)));

        Assert.Equal(new BackFillTally(1, 0), receipt.BackFills);
        Assert.Equal([7.5, 7.75, 7.25], (await Raw()).Select(r => r.Raw));
    }

    [Fact]
    public async Task A_reading_that_is_no_number_is_a_programmers_mistake_and_nothing_is_written()
    {
        await Assert.ThrowsAsync<ArgumentException>(() => Commit(Batch.Of(1, Batch.Ph(At(12), 7.5), Batch.Ph(At(13), double.NaN))));

        Assert.Equal(0, await Record.LastSeqAsync(Batch.Main, None));
    }

    [Fact]
    public async Task A_failed_commit_leaves_nothing_behind_and_the_store_usable()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12), 7.5)).With(entries: [Batch.Gap(At(9), "a")]));
        var twice = Batch.Of(2, Batch.Ph(At(13), 7.75), Batch.Ph(At(13), 7, series: "new-series")).With(entries: [Batch.Gap(At(10), "b"), Batch.Gap(At(9), "a")]);

        await Assert.ThrowsAnyAsync<StorageException>(() => Commit(twice));

        Assert.Equal(1, await Record.LastSeqAsync(Batch.Main, None));
        Assert.Single(await Raw());
        Assert.Empty(await Raw("new-series"));
        Assert.Single(await Record.EntriesAsync(Batch.Main, new EntryQuery([]), None));
        await Commit(Batch.Of(2, Batch.Ph(At(13), 7.75), Batch.Ph(At(13), 7, series: "new-series")));
        Assert.Equal([7.5, 7.75], (await Raw()).Select(r => r.Raw));
        Assert.Single(await Raw("new-series"));
    }

    [Fact]
    public async Task History_follows_a_renamed_series()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12), 7.5)));

        // Its last reading under the old key and its first under the new one come in the same batch.
        await Commit(Batch.Of(2, Batch.Ph(At(13), 7.25), Batch.Ph(At(14), 7.75, series: "pool-ph")).With(renamed: [new SeriesRenamed("main-ph", "pool-ph")]));

        Assert.Empty(await Raw());
        Assert.Equal([7.5, 7.25, 7.75], (await Raw("pool-ph")).Select(r => r.Raw));
        var hours = await Series.SeriesAsync(Batch.Main, new SeriesQuery("pool-ph", At(12), At(15), 3, TimeSpan.FromHours(1)), None);
        Assert.Equal([7.5, 7.25, 7.75], hours.Points.Select(p => p.Mean));
    }

    [Fact]
    public async Task Two_series_may_swap_their_keys()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12), 1, series: "a"), Batch.Ph(At(12), 2, series: "b")));

        await Commit(Batch.Of(2, Batch.Ph(At(13), 3, series: "a")).With(renamed: [new SeriesRenamed("a", "b"), new SeriesRenamed("b", "a")]));

        Assert.Equal([2d, 3], (await Raw("a")).Select(r => r.Raw));
        Assert.Equal([1d], (await Raw("b")).Select(r => r.Raw));
    }

    [Fact]
    public async Task A_former_series_of_the_new_key_is_set_aside_and_not_mixed_in()
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12), 1, series: "a"), Batch.Ph(At(12), 2, series: "b")));

        await Commit(Batch.Of(2, Batch.Ph(At(13), 3, series: "b")).With(renamed: [new SeriesRenamed("a", "b"), new SeriesRenamed("never-heard", "c")]));

        Assert.Empty(await Raw("a"));
        Assert.Equal([1d, 3], (await Raw("b")).Select(r => r.Raw));
        Assert.Equal([2d], (await Raw("b~2")).Select(r => r.Raw));
    }
}
