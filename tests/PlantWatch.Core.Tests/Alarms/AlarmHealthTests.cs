using CsCheck;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Alarms.Health;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>The health of the alarms, on histories short enough to count by hand and against a plain count of the same thing.</summary>
public sealed class AlarmHealthTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 5, 1);
    private static readonly Instant End = Start + TimeSpan.FromHours(10);

    [Fact]
    public void A_quiet_time_has_nothing_to_show()
    {
        var health = AlarmHealth.Of([], Start, End, 1);
        Assert.Equal((0, 0.0, 0.0, 0, 0), (health.Told, health.PerTenMinutes, health.FloodShare, health.Standing, health.Fleeting));
        Assert.Null(health.AcknowledgedMedian);
    }

    [Fact]
    public void A_person_of_two_has_half_of_it()
    {
        // Six in ten hours: one in 100 minutes, 0.1 in ten, 0.6 an hour.
        AlarmHappening[] six = [.. Enumerable.Range(0, 6).Select(i => Raised(60 * i, $"k{i}"))];
        Assert.Equal(0.1, AlarmHealth.Of(six, Start, End, 1).PerTenMinutes, 1e-12);
        Assert.Equal(0.6, AlarmHealth.Of(six, Start, End, 1).PerHour, 1e-12);
        Assert.Equal(0.05, AlarmHealth.Of(six, Start, End, 2).PerTenMinutes, 1e-12);
        Assert.Equal(0.5, AlarmHealth.Of(six, Start, End, 2).MostInTenMinutes, 1e-12);
    }

    [Fact]
    public void A_flood_begins_over_ten_and_ends_under_five()
    {
        // Windows of ten minutes: 10, 11, 5, 4, 0 ...: ten is no flood, five goes on, four ends it.
        int[] counts = [10, 11, 5, 4, 0];
        var told = counts.SelectMany((n, window) => Enumerable.Range(0, n).Select(i => Raised((10 * window) + (i * 0.5), $"k{window}-{i}")));
        var health = AlarmHealth.Of(told, Start, End, 1);
        var flood = Assert.Single(health.Floods);
        Assert.Equal((Start + TimeSpan.FromMinutes(10), Start + TimeSpan.FromMinutes(30), 16), (flood.From, flood.To, flood.Count));
        Assert.Equal(20 / 600.0, health.FloodShare, 1e-12);
        Assert.Equal(11, health.MostInTenMinutes);
        Assert.Empty(AlarmHealth.Of(told, Start, End, 2).Floods);
    }

    [Theory]
    [InlineData(AlarmState.Shelved)]
    [InlineData(AlarmState.SuppressedByDesign)]
    [InlineData(AlarmState.OutOfService)]
    public void What_calls_nobody_stands_all_the_same_and_is_not_counted_as_told(AlarmState state)
    {
        var health = AlarmHealth.Of([Raised(0, "a") with { State = state }], Start, End, 1);
        Assert.Equal((0, 1, 1), (health.Told, health.Standing, health.MostStanding));
    }

    [Fact]
    public void A_consequence_under_its_cause_calls_nobody()
    {
        var health = AlarmHealth.Of([Raised(0, "a"), Raised(1, "b") with { Grouped = true }], Start, End, 1);
        Assert.Equal((1, 2), (health.Told, health.Standing));
    }

    [Fact]
    public void One_that_is_told_anew_and_one_off_the_shelf_call_again() =>
        Assert.Equal(3, AlarmHealth.Of([Raised(0, "a"), Raised(0, "a") with { At = At(60), Change = AlarmChange.ReAlarmed }, Raised(0, "a") with { At = At(90), Change = AlarmChange.Unshelved }], Start, End, 1).Told);

    [Fact]
    public void Three_in_a_minute_chatter_and_two_do_not()
    {
        AlarmHappening[] twice = [Raised(0, "a"), Cleared(0.2, "a"), Raised(0.5, "a"), Cleared(0.8, "a")];
        Assert.Empty(AlarmHealth.Of(twice, Start, End, 1).Chattering);
        var chatter = Assert.Single(AlarmHealth.Of([.. twice, Raised(1, "a")], Start, End, 1).Chattering);
        Assert.Equal(("a", 3), (chatter.Key, chatter.Count));
        Assert.Empty(AlarmHealth.Of([.. twice, Raised(1.1, "a")], Start, End, 1).Chattering);
    }

    [Fact]
    public void Gone_within_seconds_and_untouched_is_fleeting()
    {
        Assert.Equal(1, AlarmHealth.Of([Raised(0, "a"), Cleared(0.5, "a")], Start, End, 1).Fleeting);
        Assert.Equal(0, AlarmHealth.Of([Raised(0, "a"), Cleared(0.6, "a")], Start, End, 1).Fleeting);
        Assert.Equal(0, AlarmHealth.Of([Raised(0, "a"), Seen(0.3, "a"), Cleared(0.5, "a")], Start, End, 1).Fleeting);
    }

    [Fact]
    public void Over_a_day_is_stale_also_when_it_began_before()
    {
        var before = Raised(-60 * 20, "a");
        var stale = Assert.Single(AlarmHealth.Of([before], Start, End, 1).Stale);
        Assert.Equal((before.At, End), (stale.From, stale.To));
        Assert.Empty(AlarmHealth.Of([Raised(-60 * 14, "a")], Start, End, 1).Stale);
        Assert.Empty(AlarmHealth.Of([Raised(-60 * 48, "a"), Cleared(-60, "a")], Start, End, 1).Stale);
        Assert.Equal((0, 1, 1), AlarmHealth.Of([before], Start, End, 1) is var h ? (h.Told, h.Standing, h.MostStanding) : default);
    }

    [Fact]
    public void Answers_are_timed_from_the_last_call()
    {
        // 1, 2, 3, ... 10 minutes: half within 5, nine in ten within 9; one more is never answered.
        var told = Enumerable.Range(1, 10).SelectMany(i => new[] { Raised(20 * i, $"k{i}"), Seen((20 * i) + i, $"k{i}") }).Append(Raised(500, "open"));
        var health = AlarmHealth.Of(told, Start, End, 1);
        Assert.Equal((TimeSpan.FromMinutes(5), TimeSpan.FromMinutes(9), 1), (health.AcknowledgedMedian, health.AcknowledgedNinetieth, health.NotAcknowledged));
    }

    [Fact]
    public void The_busiest_are_named_with_their_share()
    {
        var told = Enumerable.Range(0, 12).SelectMany(i => Enumerable.Range(0, i == 0 ? 9 : 1).Select(n => Raised((20 * i) + (n * 1.5), $"k{i:00}")));
        var health = AlarmHealth.Of(told, Start, End, 1);
        Assert.Equal(("k00", 9, 0.45), (health.Busiest[0].Key, health.Busiest[0].Count, health.Busiest[0].Share));
        Assert.Equal(10, health.Busiest.Length);
        Assert.Equal(18 / 20.0, health.BusiestShare, 1e-12);
    }

    [Fact]
    public void Any_history_counts_as_a_plain_count_of_it_does() => Gen.Select(Gen.Int[-400, 700], Gen.Int[0, 3], Gen.Bool, Gen.Int[0, 4]).Array[0, 120].Sample(acts =>
    {
        AlarmHappening[] all = [.. acts.OrderBy(a => a.Item1).Select(a => new AlarmHappening(
            At(a.Item1), $"k{a.Item2}", "R-010", "main", Priority.Medium, a.Item3 ? AlarmChange.Raised : AlarmChange.Cleared,
            a.Item4 == 0 ? AlarmState.Shelved : a.Item3 ? AlarmState.Unacknowledged : AlarmState.ReturnedUnacknowledged, a.Item4 == 1))];
        var health = AlarmHealth.Of(all.Reverse().OrderBy(a => a.At), Start, End, 1, [Start, At(300)]);
        AlarmHappening[] told = [.. all.Where(c => c.At >= Start && c.At < End && c is { Change: AlarmChange.Raised, State: AlarmState.Unacknowledged, Grouped: false })];
        Assert.Equal(told.Length, health.Told);
        Assert.Equal(told.Length, health.ByDay.Sum());
        Assert.Equal(Enumerable.Range(0, 60).Max(w => told.Count(t => t.At >= At(10 * w) && t.At < At((10 * w) + 10))), health.MostInTenMinutes);
        Assert.InRange(health.BusiestShare, told.Length == 0 ? 0 : 1 - 1e-9, 1 + 1e-9);
        Assert.True(health.MostStanding >= health.Standing && health.MostStanding <= 4);
        Assert.InRange(health.FloodShare, 0, 1);
    }, iter: 300);

    private static Instant At(double minute) => Start + TimeSpan.FromMinutes(minute);

    [Fact]
    public void What_was_shelved_and_taken_out_in_the_time_is_counted_and_not_what_was_before()
    {
        AlarmHappening Put(double minute, AlarmChange change) => Raised(minute, "a") with { Change = change };
        var health = AlarmHealth.Of(
            [Put(-1, AlarmChange.Shelved), Put(0, AlarmChange.Shelved), Put(5, AlarmChange.Shelved), Put(-1, AlarmChange.TakenOutOfService), Put(0, AlarmChange.TakenOutOfService), Put(600, AlarmChange.Shelved)], Start, End, 1);
        Assert.Equal((2, 1), (health.Shelved, health.OutOfService));
    }

    [Fact]
    public void The_busiest_are_named_by_rule_and_subject_with_their_part_of_all()
    {
        AlarmHappening[] told = [Raised(0, "a"), Raised(0.2, "a"), Raised(0.4, "a"), Raised(9, "b") with { Rule = "R-011", Subject = "spa" }];
        var health = AlarmHealth.Of(told, Start, End, 1);
        Assert.Equal([new BusyAlarm("a", "R-010", "main", 3, 0.75), new BusyAlarm("b", "R-011", "spa", 1, 0.25)], health.Busiest.ToArray());
        Assert.Equal(new BusyAlarm("a", "R-010", "main", 3, 0.75), Assert.Single(health.Chattering));
    }

    [Fact]
    public void Those_that_chatter_come_in_the_order_of_their_keys()
    {
        var told = new[] { "b", "a" }.SelectMany(key => Enumerable.Range(0, 3).Select(i => Raised(i * 0.3, key)));
        Assert.Equal(["a", "b"], AlarmHealth.Of(told, Start, End, 1).Chattering.Select(c => c.Key));
    }

    [Fact]
    public void The_figures_of_the_standard_are_as_published()
    {
        // Stale over a day, chattering three times in a minute (published secondhand, IEC 62682 and ISA-18.2); fleeting within half a minute is our reading.
        Assert.Equal((TimeSpan.FromDays(1), TimeSpan.FromSeconds(30), 3, TimeSpan.FromMinutes(1), 10), (AlarmHealth.StaleAfter, AlarmHealth.FleetingWithin, AlarmHealth.ChatterCount, AlarmHealth.ChatterWithin, AlarmHealth.Worst));
    }

    [Fact]
    public void The_stalest_comes_first_and_one_that_ended_was_stale_too()
    {
        var health = AlarmHealth.Of([Raised(0, "short"), Raised(-600, "long"), Raised(0, "over"), Cleared(25 * 60, "over")], Start - TimeSpan.FromHours(20), Start + TimeSpan.FromHours(30), 1);
        Assert.Equal(["long", "short", "over"], health.Stale.Select(s => s.Key));
    }

    [Fact]
    public void Nonsense_is_refused_at_the_door()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => AlarmHealth.Of([], Start, End, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => AlarmHealth.Of([], End, End, 1));
        Assert.Empty(FloodClock.Counts([], End, Start));
    }

    [Fact]
    public void A_window_holds_what_is_at_its_start_and_not_what_is_at_its_end() =>
        Assert.Equal([1, 2], FloodClock.Counts([At(-1), At(0), At(10), At(19), At(20)], Start, Start + TimeSpan.FromMinutes(20)).ToArray());

    private static AlarmHappening Raised(double minute, string key) => new(At(minute), key, "R-010", "main", Priority.Medium, AlarmChange.Raised, AlarmState.Unacknowledged, false);

    private static AlarmHappening Cleared(double minute, string key) => Raised(minute, key) with { Change = AlarmChange.Cleared, State = AlarmState.ReturnedUnacknowledged };

    private static AlarmHappening Seen(double minute, string key) => Raised(minute, key) with { Change = AlarmChange.Acknowledged, State = AlarmState.Acknowledged };
}
