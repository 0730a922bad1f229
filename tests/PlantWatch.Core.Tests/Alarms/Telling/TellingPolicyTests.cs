using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Alarms.Telling;

/// <summary>Who is told what and when. Patience and quiet hours are common practice; the days of 23 and 25 hours are those of the IANA zone Europe/London.</summary>
public sealed class TellingPolicyTests
{
    private readonly TellingBench _bench = new(TellingBench.Usual);

    [Fact]
    public void An_alarm_is_told_once_on_every_channel_and_to_who_is_on_call()
    {
        _bench.Raise("R-010/ph", Priority.High);
        Assert.Equal(["Raised R-010/ph -> post ann", "Raised R-010/ph -> topic"], _bench.Look());
        Assert.Empty(_bench.Look());
    }

    [Fact]
    public void A_note_and_a_priority_below_that_of_the_channel_are_not_told()
    {
        var bench = new TellingBench(TellingBench.Usual with { Channels = [new("post", ChannelKind.Email, Priority.High)] });
        bench.Raise("R-001/a", Priority.Note);
        bench.Raise("R-010/b", Priority.Medium);
        Assert.Empty(bench.Look());
    }

    [Fact]
    public void Low_and_medium_wait_for_the_morning_and_high_and_critical_do_not()
    {
        _bench.Now = Instant.FromUtc(2026, 8, 3, 22, 30);
        foreach (var priority in new[] { Priority.Low, Priority.Medium, Priority.High, Priority.Critical }) _bench.Raise($"R-010/{priority}", priority);
        Assert.Equal(
            ["Raised R-010/Critical -> post ben", "Raised R-010/Critical -> topic", "Raised R-010/High -> post ben", "Raised R-010/High -> topic"], _bench.Look());
        _bench.Now = Instant.FromUtc(2026, 8, 4, 5, 59);
        Assert.DoesNotContain(_bench.Look(), text => text.Contains("Medium", StringComparison.Ordinal) || text.Contains("Low", StringComparison.Ordinal));
        _bench.Now = Instant.FromUtc(2026, 8, 4, 6);
        Assert.Equal(["Raised R-010/Medium -> post ben", "Raised R-010/Medium -> topic", "Raised R-010/Low -> post ben", "Raised R-010/Low -> topic"], _bench.Look());
    }

    [Fact]
    public void What_was_due_by_day_and_is_looked_at_by_night_waits_too()
    {
        _bench.Raise("R-010/ph", Priority.Medium);
        _bench.Now = Instant.FromUtc(2026, 8, 3, 22);
        Assert.Empty(_bench.Look());
        Assert.Equal(Instant.FromUtc(2026, 8, 4, 6), _bench.LookAgain);
    }

    [Fact]
    public void It_says_when_the_morning_is()
    {
        _bench.Now = Instant.FromUtc(2026, 8, 3, 22, 30);
        _bench.Raise("R-010/ph", Priority.Low);
        _bench.Look();
        Assert.Equal(Instant.FromUtc(2026, 8, 4, 6), _bench.LookAgain);
    }

    [Theory]
    // Clocks go forward on 29 March 2026 and back on 25 October 2026, both at 01:00 UTC.
    [InlineData(3, 28, 23, 3, 29, 6)]
    [InlineData(10, 24, 22, 10, 25, 7)]
    public void The_morning_is_that_of_the_clock_on_the_wall(int month, int day, int hour, int untilMonth, int untilDay, int untilHour)
    {
        var duty = new Duty(TellingBench.Usual, "Europe/London");
        Assert.Equal(Instant.FromUtc(2026, untilMonth, untilDay, untilHour), duty.MayGo(Priority.Low, Instant.FromUtc(2026, month, day, hour)));
    }

    [Fact]
    public void What_nobody_acknowledges_is_passed_on_in_the_order_of_the_list()
    {
        _bench.Raise("R-010/ph", Priority.Critical);
        _bench.Look();
        Assert.Equal(_bench.Now + TimeSpan.FromMinutes(5), _bench.LookAgain);
        Assert.Empty(_bench.LookAfter(4.9));
        Assert.Equal(["Raised R-010/ph -> post cat"], _bench.LookAfter(0.1));
        Assert.Equal(["Raised R-010/ph -> post dan"], _bench.LookAfter(5));
        Assert.Empty(_bench.LookAfter(600));
    }

    [Fact]
    public void An_acknowledged_alarm_is_passed_on_no_further_and_who_was_told_hears_of_it()
    {
        _bench.Raise("R-010/ph", Priority.High);
        _bench.Look();
        _bench.Acknowledge("R-010/ph");
        Assert.Equal(["Acknowledged R-010/ph -> post ann", "Acknowledged R-010/ph -> topic"], _bench.LookAfter(1));
        Assert.Empty(_bench.LookAfter(60));
    }

    [Fact]
    public void The_end_is_told_to_whom_the_beginning_was_told_also_on_another_shift()
    {
        _bench.Raise("R-010/ph", Priority.High);
        _bench.Look();
        _bench.Now = Instant.FromUtc(2026, 8, 3, 20);
        _bench.Acknowledge("R-010/ph");
        _bench.Clear("R-010/ph");
        Assert.Equal(["Cleared R-010/ph -> post ann", "Cleared R-010/ph -> topic"], _bench.Look());
        Assert.Empty(_bench.LookAfter(1));
    }

    [Fact]
    public void A_latch_that_holds_is_not_over()
    {
        _bench.Raise("R-033/acid", Priority.Critical);
        _bench.Look();
        _bench["R-033/acid"] = _bench["R-033/acid"] with { Active = false, Latches = true, LatchHeld = true, ClearedAt = _bench.Now };
        Assert.DoesNotContain(_bench.LookAfter(1), said => said.StartsWith("Cleared", StringComparison.Ordinal));
        _bench.Acknowledge("R-033/acid");
        Assert.Contains("Acknowledged R-033/acid -> topic", _bench.LookAfter(1));
        _bench.Gone("R-033/acid");
        Assert.Contains("Cleared R-033/acid -> topic", _bench.LookAfter(1));
    }

    [Fact]
    public void An_alarm_that_stands_on_for_another_cause_is_not_over()
    {
        _bench.Raise("R-010/ph", Priority.High);
        _bench.Look();
        _bench.Now += TimeSpan.FromMinutes(1);
        _bench.Raise("R-010/ph", Priority.High);
        Assert.All(_bench.Look(), said => Assert.StartsWith("Raised", said, StringComparison.Ordinal));
        _bench.Gone("R-010/ph");
        Assert.Contains("Cleared R-010/ph -> topic", _bench.LookAfter(1));
    }

    [Fact]
    public void The_end_of_an_alarm_that_was_not_told_is_not_told()
    {
        _bench.Raise("R-010/ph", Priority.Low);
        _bench.Clear("R-010/ph");
        Assert.Empty(_bench.Look());
    }

    [Fact]
    public void A_high_alarm_that_came_and_went_between_two_looks_is_told_with_its_end()
    {
        _bench.Raise("R-002/ph", Priority.High);
        _bench.Clear("R-002/ph");
        Assert.Equal(["Raised R-002/ph -> post ann", "Raised R-002/ph -> topic"], _bench.Look());
        Assert.Equal(["Cleared R-002/ph -> post ann", "Cleared R-002/ph -> topic"], _bench.Look());
    }

    [Fact]
    public void What_follows_from_a_cause_stands_in_its_message()
    {
        _bench.Raise("R-030/flow", Priority.High);
        _bench.Raise("R-010/ph", Priority.Medium, "R-030/flow");
        _bench.Look();
        Assert.Equal(["R-030/flow", "R-030/flow"], _bench.Told.Select(n => n.Key));
        Assert.All(_bench.Told, n => Assert.Equal("R-010/ph", Assert.Single(n.Consequences)));
    }

    [Fact]
    public void What_is_worse_than_its_cause_is_told_by_itself()
    {
        _bench.Raise("R-030/flow", Priority.Medium);
        _bench.Raise("R-002/chlorine", Priority.Critical, "R-030/flow");
        Assert.Contains("Raised R-002/chlorine -> post ann", _bench.Look());
    }

    [Fact]
    public void A_cause_that_is_put_away_speaks_for_nothing()
    {
        var cause = _bench.Raise("R-030/flow", Priority.High);
        _bench["R-030/flow"] = cause with { ShelvedUntil = _bench.Now + TimeSpan.FromHours(1) };
        _bench.Raise("R-010/ph", Priority.Medium, "R-030/flow");
        Assert.Equal(["Raised R-010/ph -> post ann", "Raised R-010/ph -> topic"], _bench.Look());
    }

    [Fact]
    public void Shelved_suppressed_and_out_of_service_are_not_told_until_they_are_back()
    {
        var alarm = _bench.Raise("R-010/ph", Priority.Critical);
        foreach (var away in new[] { alarm with { ShelvedUntil = _bench.Now + TimeSpan.FromHours(1) }, alarm with { Suppressed = true }, alarm with { OutOfService = true } })
        {
            _bench["R-010/ph"] = away;
            Assert.Empty(_bench.Look());
        }

        _bench["R-010/ph"] = alarm;
        Assert.NotEmpty(_bench.Look());
    }

    [Fact]
    public void What_speaks_up_again_is_told_again_and_its_end_once()
    {
        _bench.Raise("R-010/ph", Priority.High);
        _bench.Look();
        _bench.Acknowledge("R-010/ph");
        _bench.LookAfter(1);
        _bench.Now += TimeSpan.FromMinutes(60);
        _bench.ReAlarm("R-010/ph");
        Assert.Equal(["Raised R-010/ph -> post ann", "Raised R-010/ph -> topic"], _bench.Look());
        _bench.Gone("R-010/ph");
        Assert.Equal(["Cleared R-010/ph -> post ann", "Cleared R-010/ph -> topic"], _bench.LookAfter(1));
    }

    [Fact]
    public void With_nobody_on_call_the_first_of_the_list_stands_in()
    {
        var bench = new TellingBench(TellingBench.Usual with { Roster = [] });
        bench.Raise("R-010/ph", Priority.High);
        Assert.Contains("Raised R-010/ph -> post cat", bench.Look());
    }

    [Theory]
    [InlineData(DayOfWeek.Monday, 4, 2, true)]
    [InlineData(DayOfWeek.Monday, 4, 9, false)]
    [InlineData(DayOfWeek.Tuesday, 4, 2, false)]
    public void A_night_shift_belongs_to_the_day_on_which_it_begins(DayOfWeek begins, int day, int hour, bool onCall)
    {
        var duty = new Duty(new TellingPlan { Roster = [new("ben", [begins], new(new(20, 0), new(8, 0)))] }, "Europe/London");
        Assert.Equal(onCall, duty.OnCall(Instant.FromUtc(2026, 8, day, hour)).Contains("ben"));
    }
}
