using PlantWatch.Core.Alarms;
using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>That people are not told is an alarm like any other, and is told by every way but the one that fails.</summary>
public sealed class ChannelRuleTests
{
    private static readonly TellingPlan Telling = new()
    {
        Channels = [new("post", ChannelKind.Email, Priority.Low) { Name = "Post" }, new("desk", ChannelKind.Mqtt, Priority.Low) { Name = "Desk" }],
        Escalation = ["ann"],
    };

    private readonly Bench _bench = new(Hall.Plan with { Telling = Telling });

    [Fact, Evidence("R-080")]
    public void A_channel_that_does_not_deliver_is_an_alarm_until_it_does()
    {
        Say(delivers: false);
        var alarm = _bench.Alarm(RuleBook.ChannelFails, "post")!;
        Assert.Equal((AlarmState.Unacknowledged, Priority.High), (alarm.State, alarm.Priority));
        Assert.Equal(Core.Reasons.Reason.Of("channel.fails", "Post", "nobody answers"), alarm.Cause);
        _bench.Pass(TimeSpan.FromHours(3));
        Assert.True(_bench.IsUp(RuleBook.ChannelFails, "post"));

        Say(delivers: true);
        Assert.False(_bench.IsUp(RuleBook.ChannelFails, "post"));
    }

    [Fact, Evidence("R-080")]
    public void It_is_told_by_the_other_channels_and_never_by_the_one_that_fails()
    {
        Say(delivers: false);

        var owed = new TellingPolicy(Telling, "Europe/London").Next([.. _bench.State.Alarms.Values], [], _bench.Now);

        Assert.Equal(["desk"], owed.Notices.Select(notice => notice.Channel));
    }

    [Fact]
    public void Nothing_is_said_of_a_channel_that_the_plan_does_not_know() =>
        Assert.IsType<Outcome.TurnedDown>(_bench.Run(at => new ChannelStateSaid(at, "pigeon", false, "flew away")));

    [Fact]
    public void A_channel_that_leaves_the_plan_takes_its_alarm_with_it()
    {
        Say(delivers: false);
        _bench.Load(Hall.Plan with { Telling = Telling with { Channels = [Telling.Channels[1]] } });

        Assert.Null(_bench.Alarm(RuleBook.ChannelFails, "post"));
        Assert.Contains(_bench.Entries.Select(e => e.Body).OfType<AlarmEntry>(), e => e.Change == AlarmChange.Retired);
    }

    private void Say(bool delivers) => Assert.IsType<Outcome.Done>(_bench.Run(at => new ChannelStateSaid(at, "post", delivers, delivers ? "" : "nobody answers")));
}
