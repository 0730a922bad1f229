using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Telling;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Telling;

public sealed class RetryPolicyTests
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 8, 3, 12);

    [Theory]
    [InlineData(1, 0, 2.5)]
    [InlineData(1, 1, 5)]
    [InlineData(2, 1, 10)]
    [InlineData(7, 0, 160)]
    [InlineData(8, 1, 600)]
    [InlineData(1000, 1, 600)]
    [InlineData(1000, 0, 300)]
    public void The_wait_doubles_up_to_ten_minutes_and_lands_in_its_upper_half(int failures, double chance, double seconds) =>
        Assert.Equal(seconds, RetryPolicy.After(failures, chance).TotalSeconds, 9);

    [Fact]
    public void A_new_message_is_due_at_once_and_one_that_failed_after_its_wait()
    {
        var item = Item("post");
        Assert.Equal(Noon, RetryPolicy.DueAt(item));
        var due = RetryPolicy.DueAt(Failed(item, Noon)) - Noon;
        Assert.InRange(due.TotalSeconds, 2.5, 5);
    }

    [Fact]
    public void Many_messages_that_failed_together_do_not_come_back_together() =>
        Assert.True(Enumerable.Range(0, 50).Select(i => RetryPolicy.DueAt(Failed(Item("post", $"p{i}"), Noon))).Distinct().Count() > 20);

    [Fact]
    public void What_is_low_is_tried_for_a_day_and_what_is_high_for_three()
    {
        Assert.Equal(Fate.Waiting, RetryPolicy.FateAfterFailure(Item("post", priority: Priority.Medium), false, Noon + TimeSpan.FromHours(23.9)));
        Assert.Equal(Fate.GivenUp, RetryPolicy.FateAfterFailure(Item("post", priority: Priority.Medium), false, Noon + TimeSpan.FromHours(24)));
        Assert.Equal(Fate.Waiting, RetryPolicy.FateAfterFailure(Item("post", priority: Priority.High), false, Noon + TimeSpan.FromHours(71.9)));
        Assert.Equal(Fate.GivenUp, RetryPolicy.FateAfterFailure(Item("post", priority: Priority.High), false, Noon + TimeSpan.FromHours(72)));
        Assert.Equal(Fate.GivenUp, RetryPolicy.FateAfterFailure(Item("post", priority: Priority.Critical), true, Noon));
    }

    [Fact]
    public void The_most_severe_goes_first_and_the_end_of_an_alarm_never_before_its_begin()
    {
        var (begin, end) = (Item("post", priority: Priority.Medium), Item("post", priority: Priority.Medium, kind: NoticeKind.Cleared));
        var high = Item("post", "p2", Priority.High, alarm: "other");

        Assert.Same(high, RetryPolicy.Next([begin, end, high], "post", Noon, false));
        Assert.Null(RetryPolicy.Next([Failed(begin, Noon), end], "post", Noon + TimeSpan.FromSeconds(1), false));
        Assert.Equal(begin.Notice.Id, RetryPolicy.Next([Failed(begin, Noon), end], "post", Noon + TimeSpan.FromSeconds(1), hurry: true)!.Notice.Id);
        Assert.Same(end, RetryPolicy.Next([begin with { Fate = Fate.Sent }, end], "post", Noon, false));
        Assert.Null(RetryPolicy.Next([begin, end], "desk", Noon, false));
    }

    [Fact]
    public void A_channel_fails_when_a_message_has_waited_a_minute_since_its_first_failure()
    {
        var health = ChannelHealth.Of([Failed(Item("post"), Noon)], "post");

        Assert.Equal((1, Noon, "no answer in time"), (health.Waiting, health.FailingSince, health.Trouble));
        Assert.False(health.Fails(Noon + TimeSpan.FromSeconds(59)));
        Assert.True(health.Fails(Noon + TimeSpan.FromSeconds(60)));
    }

    [Fact]
    public void Giving_up_puts_nothing_right_until_the_same_person_is_reached_again()
    {
        var lost = Item("post").After(new(Noon, Fate.GivenUp, "mailbox gone"));
        OutboxItem Sent(string person) => Item("post", person, alarm: "later").After(new(Noon + TimeSpan.FromHours(1), Fate.Sent, ""));

        Assert.True(ChannelHealth.Of([lost, Sent("somebody-else")], "post").Fails(Noon + TimeSpan.FromHours(2)));
        Assert.False(ChannelHealth.Of([lost, Sent("p1")], "post").Fails(Noon + TimeSpan.FromHours(2)));
    }

    private static OutboxItem Failed(OutboxItem item, Instant at) => item.After(new(at, Fate.Waiting, "no answer in time"));

    private static OutboxItem Item(string channel, string person = "p1", Priority priority = Priority.High, NoticeKind kind = NoticeKind.Raised, string alarm = "alarm") => OutboxItem.New(
        new(new() { Alarm = TimeOrderedId.Derive(Noon, alarm), Key = "R-030/pump", Kind = kind, Priority = priority, AnnunciatedAt = Noon, Step = 0, Channel = channel, Person = person }, "{}"), Noon);
}
