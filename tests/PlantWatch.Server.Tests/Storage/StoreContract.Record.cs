using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Storage;

public abstract partial class StoreContract
{
    [Fact]
    public async Task A_new_partition_is_empty()
    {
        Assert.Equal(0, await Record.LastSeqAsync(Batch.Main, None));
        Assert.Empty(await Journal(Batch.Main));
        Assert.Null(await Record.LatestSnapshotAsync(Batch.Main, 1, None));
        Assert.Empty(await Record.EntriesAsync(Batch.Main, new EntryQuery([]), None));
        Assert.Empty(await Record.RefusalsAsync(Batch.Main, 10, None));
        Assert.Equal(default, await Record.BackFillsAsync(Batch.Main, None));
        Assert.Empty(await Raw());
    }

    [Fact]
    public async Task The_journal_gives_back_the_bytes_in_order_after_a_sequence_number()
    {
        await Record.CommitAsync([Batch.Of(1), Batch.Of(2), Batch.In(Batch.Spa, 1)], None);
        await Commit(Batch.Of(3) with { Events = ReadOnlyMemory<byte>.Empty });

        var rows = await Journal(Batch.Main, after: 1);

        Assert.Equal([2L, 3L], rows.Select(r => r.Seq));
        Assert.Equal([1, 2, 2], rows[0].Events.ToArray());
        Assert.Empty(rows[1].Events.ToArray());
        Assert.Equal(Batch.Noon + TimeSpan.FromSeconds(2), rows[0].ReceivedAt);
        Assert.Equal(3, await Record.LastSeqAsync(Batch.Main, None));
        Assert.Equal(1, await Record.LastSeqAsync(Batch.Spa, None));
    }

    [Fact]
    public async Task A_long_journal_comes_whole()
    {
        await Record.CommitAsync([.. Enumerable.Range(1, 1000).Select(seq => Batch.Of(seq))], None);

        Assert.Equal(Enumerable.Range(1, 1000).Select(s => (long)s), (await Journal(Batch.Main)).Select(r => r.Seq));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public async Task A_batch_that_does_not_follow_is_refused_and_takes_its_companions_with_it(long seq)
    {
        await Commit(Batch.Of(1, Batch.Ph(At(12), 7.2)));

        await Assert.ThrowsAsync<OutOfSequenceException>(async () =>
            await Record.CommitAsync([Batch.In(Batch.Spa, 1, Batch.Ph(At(12), 7.4)), Batch.Of(seq, Batch.Ph(At(13), 7.3))], None));

        Assert.Equal(0, await Record.LastSeqAsync(Batch.Spa, None));
        Assert.Empty(await Series.RawAsync(Batch.Spa, "main-ph", At(0), At(23), 10, None));
        Assert.Single(await Raw());
        await Commit(Batch.Of(2, Batch.Ph(At(13), 7.3)));
        Assert.Equal(2, (await Raw()).Count);
    }

    [Fact]
    public async Task Of_the_snapshots_the_two_newest_are_kept()
    {
        foreach (var seq in new[] { 10L, 20L, 30L })
            await Record.SaveSnapshotAsync(Batch.Main, new Snapshot(seq, FoldVersion: seq == 30 ? 2 : 1, $"hash {seq}", new byte[] { (byte)seq }), None);

        Assert.Equal(20, (await Record.LatestSnapshotAsync(Batch.Main, 1, None))!.Seq);
        var newest = (await Record.LatestSnapshotAsync(Batch.Main, 2, None))!;
        Assert.Equal((30, 2, "hash 30"), (newest.Seq, newest.FoldVersion, newest.StateHash));
        Assert.Equal([30], newest.State.ToArray());
        await Record.SaveSnapshotAsync(Batch.Main, new Snapshot(40, 2, "", new byte[] { 40 }), None);
        Assert.Null(await Record.LatestSnapshotAsync(Batch.Main, 1, None));
    }

    [Fact]
    public async Task Pruning_spares_what_is_young_and_what_the_older_snapshot_needs()
    {
        await Record.CommitAsync([.. Enumerable.Range(1, 10).Select(seq => Batch.Of(seq))], None);
        Assert.Equal(0, await Record.PruneJournalAsync(Batch.Main, Batch.Noon + TimeSpan.FromDays(40), None));

        await Record.SaveSnapshotAsync(Batch.Main, new Snapshot(6, 1, "a", ReadOnlyMemory<byte>.Empty), None);
        Assert.Equal(0, await Record.PruneJournalAsync(Batch.Main, Batch.Noon + TimeSpan.FromDays(40), None));

        await Record.SaveSnapshotAsync(Batch.Main, new Snapshot(9, 1, "b", ReadOnlyMemory<byte>.Empty), None);
        Assert.Equal(3, await Record.PruneJournalAsync(Batch.Main, Batch.Noon + TimeSpan.FromSeconds(4), None));
        Assert.Equal(3, await Record.PruneJournalAsync(Batch.Main, Batch.Noon + TimeSpan.FromDays(40), None));
        Assert.Equal([7L, 8L, 9L, 10L], (await Journal(Batch.Main)).Select(r => r.Seq));
        Assert.Equal(10, await Record.LastSeqAsync(Batch.Main, None));
    }

    [Fact]
    public async Task Entries_come_back_word_for_word()
    {
        RecordEntry[] entries = [Batch.Check(At(8), "main-pool"), Batch.Gap(At(9), "main-circuit")];
        await Commit(Batch.Of(1).With(entries: [.. entries]));

        foreach (var entry in entries) Assert.Equal(Json(entry), Json(await Record.EntryAsync(Batch.Main, entry.Id, None)));
        Assert.Null(await Record.EntryAsync(Batch.Spa, entries[0].Id, None));
        Assert.Null(await Record.EntryAsync(Batch.Main, Guid.CreateVersion7(), None));
    }

    [Fact]
    public async Task Entries_are_found_by_kind_subject_and_time_newest_first()
    {
        RecordEntry[] entries = [Batch.Check(At(8), "a"), Batch.Check(At(10), "b"), Batch.Gap(At(9), "a"), Batch.Gap(At(11), "a")];
        await Commit(Batch.Of(1).With(entries: [.. entries]));

        async Task<IEnumerable<Instant>> Found(EntryQuery query) => (await Record.EntriesAsync(Batch.Main, query, None)).Select(e => e.HappenedAt);

        Assert.Equal([At(11), At(10), At(9), At(8)], await Found(new EntryQuery([])));
        Assert.Equal([At(10), At(8)], await Found(new EntryQuery(["check"])));
        Assert.Equal([At(11), At(10), At(9), At(8)], await Found(new EntryQuery(["check", "gap"])));
        Assert.Equal([At(11), At(9)], await Found(new EntryQuery(["gap", "alarm"], "a")));
        Assert.Equal([At(11), At(9), At(8)], await Found(new EntryQuery([], "a")));
        Assert.Equal([At(10), At(9)], await Found(new EntryQuery([], From: At(9), To: At(11))));
        Assert.Equal([At(11)], await Found(new EntryQuery([], Limit: 1)));
    }

    [Fact]
    public async Task Refusals_keep_their_bytes()
    {
        Refusal[] refusals =
        [
            new(TimeOrderedId.Derive(At(8), "x"), At(8), "pool/ph", new byte[] { 0xC3, 0x28, 0 }, RefusalReason.InvalidUtf8, "byte 1"),
            new(TimeOrderedId.Derive(At(9), "y"), At(9), "pool/ph", ReadOnlyMemory<byte>.Empty, RefusalReason.Empty, ""),
        ];
        await Commit(Batch.Of(1).With(refusals: [.. refusals]));

        var found = await Record.RefusalsAsync(Batch.Main, 10, None);

        Assert.Equal([RefusalReason.Empty, RefusalReason.InvalidUtf8], found.Select(r => r.Reason));
        Assert.Equal([0xC3, 0x28, 0], found[1].Payload.ToArray());
        Assert.Equal((refusals[0].Id, At(8), "pool/ph", "byte 1"), (found[1].Id, found[1].ReceivedAt, found[1].Topic, found[1].Detail));
        Assert.Single(await Record.RefusalsAsync(Batch.Main, 1, None));
    }

    [Fact]
    public async Task Two_circuits_may_refuse_the_same_message_under_the_same_id()
    {
        var refusal = new Refusal(TimeOrderedId.Derive(At(8), "x"), At(8), "pool/ph", "x"u8.ToArray(), RefusalReason.NotANumber, "x");

        await Record.CommitAsync([Batch.Of(1).With(refusals: [refusal]), Batch.In(Batch.Spa, 1).With(refusals: [refusal])], None);

        Assert.Single(await Record.RefusalsAsync(Batch.Main, 10, None));
        Assert.Single(await Record.RefusalsAsync(Batch.Spa, 10, None));
    }

    [Fact]
    public async Task A_circuit_takes_everything_along_to_its_new_key()
    {
        var wave = new PartitionKey("wave-circuit");
        await Commit(Batch.Of(1, Batch.Ph(At(12), 7.2)));
        await Commit(Batch.In(Batch.Spa, 1));

        Assert.True(await Record.RenamePartitionAsync(Batch.Main, wave, None));
        Assert.False(await Record.RenamePartitionAsync(Batch.Main, wave, None));
        Assert.False(await Record.RenamePartitionAsync(Batch.Spa, wave, None));

        await Commit(Batch.In(wave, 2, Batch.Ph(At(13), 7.3)));
        Assert.Equal(2, (await Series.RawAsync(wave, "main-ph", At(0), At(23), 10, None)).Count);
        Assert.Equal(0, await Record.LastSeqAsync(Batch.Main, None));
        Assert.Empty(await Raw());
    }
}
