using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Storage;

public abstract partial class StoreContract
{
    private static readonly Guid Alarm = TimeOrderedId.Derive(Batch.Noon, "alarm"), Other = TimeOrderedId.Derive(Batch.Noon, "other");

    private IOutbox Outbox => (IOutbox)Record;

    [Fact]
    public async Task A_notice_that_was_written_down_is_there_with_its_words_and_waits()
    {
        var written = Written(Alarm, "post", "ann");

        await Outbox.QueueAsync(Batch.Main, [written], At(12), None);

        var item = Assert.Single(await Outbox.OutboxAsync(Batch.Main, None));
        Assert.Equal(Json(written), Json(item.Written));
        Assert.Equal(written.Notice.Id, item.Notice.Id);
        Assert.Equal((At(12), 0, Instant.Never, Instant.Never, Fate.Waiting, ""), (item.QueuedAt, item.Tries, item.FirstTriedAt, item.LastTriedAt, item.Fate, item.Trouble));
        Assert.Empty(await Outbox.OutboxAsync(Batch.Spa, None));
    }

    [Fact]
    public async Task A_notice_written_down_twice_is_one_and_keeps_its_words_and_fate()
    {
        var written = Written(Alarm, "post", "ann");
        await Outbox.QueueAsync(Batch.Main, [written], At(12), None);
        await Outbox.NoteAsync(Batch.Main, written.Notice.Id, new(At(12, 1), Fate.Sent, ""), None);

        await Outbox.QueueAsync(Batch.Main, [written with { Content = "other words" }, Written(Alarm, "post", "ben")], At(13), None);

        var items = await Outbox.OutboxAsync(Batch.Main, None);
        Assert.Equal([("{\"to\":\"ann\"}", Fate.Sent), ("{\"to\":\"ben\"}", Fate.Waiting)], items.Select(i => (i.Written.Content, i.Fate)));
    }

    [Fact]
    public async Task Every_attempt_is_counted_and_the_last_trouble_stands_until_it_is_sent()
    {
        var written = Written(Alarm, "post", "ann");
        await Outbox.QueueAsync(Batch.Main, [written], At(12), None);

        await Outbox.NoteAsync(Batch.Main, written.Notice.Id, new(At(12, 1), Fate.Waiting, "nobody answers"), None);
        await Outbox.NoteAsync(Batch.Main, written.Notice.Id, new(At(12, 3), Fate.Waiting, "mailbox full"), None);
        var failed = Assert.Single(await Outbox.OutboxAsync(Batch.Main, None));
        await Outbox.NoteAsync(Batch.Main, written.Notice.Id, new(At(12, 7), Fate.Sent, ""), None);
        await Outbox.NoteAsync(Batch.Main, written.Notice.Id, new(At(12, 9), Fate.Waiting, "too late to fail"), None);
        var sent = Assert.Single(await Outbox.OutboxAsync(Batch.Main, None));

        Assert.Equal((2, At(12, 1), At(12, 3), Fate.Waiting, "mailbox full"), (failed.Tries, failed.FirstTriedAt, failed.LastTriedAt, failed.Fate, failed.Trouble));
        Assert.Equal((3, At(12, 1), At(12, 7), Fate.Sent, ""), (sent.Tries, sent.FirstTriedAt, sent.LastTriedAt, sent.Fate, sent.Trouble));
    }

    [Fact]
    public async Task Notices_go_with_their_circuit_when_it_is_renamed()
    {
        await Outbox.QueueAsync(Batch.Main, [Written(Alarm, "post", "ann")], At(12), None);

        Assert.True(await Record.RenamePartitionAsync(Batch.Main, Batch.Spa, None));

        Assert.Single(await Outbox.OutboxAsync(Batch.Spa, None));
        Assert.Empty(await Outbox.OutboxAsync(Batch.Main, None));
    }

    [Fact]
    public async Task Only_what_is_settled_old_and_of_no_kept_alarm_is_forgotten()
    {
        var (settled, waits) = (Written(Alarm, "post", "ann"), Written(Other, "post", "ann"));
        await Outbox.QueueAsync(Batch.Main, [settled, waits], At(12), None);
        await Outbox.NoteAsync(Batch.Main, settled.Notice.Id, new(At(12, 1), Fate.GivenUp, "nobody there"), None);

        Assert.Equal(0, await Outbox.ForgetAsync(Batch.Main, At(12), [], None));
        Assert.Equal(0, await Outbox.ForgetAsync(Batch.Main, At(13), [Alarm], None));
        Assert.Equal(1, await Outbox.ForgetAsync(Batch.Main, At(13), [], None));

        Assert.Equal(Other, Assert.Single(await Outbox.OutboxAsync(Batch.Main, None)).Notice.Alarm);
    }

    private static WrittenNotice Written(Guid alarm, string channel, string person) => new(
        new()
        {
            Alarm = alarm, Key = "R-010/main-ph", Kind = NoticeKind.Raised, Priority = Priority.High, AnnunciatedAt = At(11, 58), Step = 0, Channel = channel, Person = person, Consequences = ["R-032/acid"],
        },
        $$"""{"to":"{{person}}"}""");
}
