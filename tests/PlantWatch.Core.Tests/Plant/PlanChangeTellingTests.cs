using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Plant;

public sealed class PlanChangeTellingTests
{
    private static readonly TellingPlan Telling = new()
    {
        Channels = [new("desk", ChannelKind.Mqtt, Priority.Low) { Name = "Desk", Topic = "hall/alarms" }],
        Roster = [new("ann", [DayOfWeek.Monday], new(new(8, 0), new(20, 0)))],
        Quiet = new(new(22, 0), new(7, 0)),
        Escalation = ["ben"],
    };

    [Fact]
    public void The_same_plan_of_telling_read_again_changes_nothing() =>
        Assert.Empty(Effects(Telling, Telling with { Roster = [new("ann", [DayOfWeek.Monday], new(new(8, 0), new(20, 0)))], Escalation = ["ben"] }));

    [Fact]
    public void A_channel_that_comes_goes_or_changes_is_said() => Assert.Equal(
        ["plan.channel_changed", "plan.channel_added"],
        Effects(Telling, Telling with { Channels = [Telling.Channels[0] with { From = Priority.High }, new("post", ChannelKind.Email, Priority.Low)] }));

    [Fact]
    public void When_nobody_is_told_any_more_everything_that_went_is_said() =>
        Assert.Equal(["plan.channel_removed", "plan.roster_changed", "plan.quiet_hours_gone", "plan.escalation_changed"], Effects(Telling, TellingPlan.None));

    [Fact]
    public void New_quiet_hours_say_from_when_to_when() => Assert.Equal(
        Reason.Of("plan.quiet_hours_changed", "main", "23:00", "06:30"),
        PlanChange.Between(Circuit(Telling), Circuit(Telling with { Quiet = new(new(23, 0), new(6, 30)) })).Effects.Single());

    [Fact]
    public void An_alarm_of_a_channel_goes_with_it_and_stays_while_it_stays()
    {
        var alarm = new AlarmRecord { Id = Guid.NewGuid(), Key = "R-080/desk", Rule = "R-080", Subject = "desk", Cause = Reason.Of("channel.fails"), Active = true };
        var state = CircuitState.Of(Circuit(Telling)) with { Alarms = CircuitState.Of(Circuit(Telling)).Alarms.Add(alarm.Key, alarm), Watermark = Instant.FromUtc(2026, 8, 3, 10) };

        Assert.Contains(alarm.Key, PlanChange.Carry(state, Circuit(Telling with { Escalation = [] })).Alarms.Keys);
        Assert.Empty(PlanChange.Carry(state, Circuit(TellingPlan.None)).Alarms);
    }

    private static string[] Effects(TellingPlan old, TellingPlan next) => [.. PlanChange.Between(Circuit(old), Circuit(next)).Effects.Select(effect => effect.Code)];

    private static CircuitPlan Circuit(TellingPlan telling) => new() { Id = "main", Name = "Main", TimeZone = "Europe/London", Telling = telling };
}
