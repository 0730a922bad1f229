using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Rules;

public class DutyRoundsTests
{
    private static readonly CheckDuty Rounds = new([Measurand.FreeChlorine, Measurand.Ph], [new(7, 30), new(12, 0), new(18, 0)]);

    private static PoolPlan Pool(params CheckDuty[] duties) => new() { Id = "main", Name = "Main", Duties = [.. duties] };

    private static Instant Utc(int hour, int minute = 0, int day = 4) => Instant.FromUtc(2026, 5, day, hour, minute);

    private static ManualCheck Test(Instant at, params Measurand[] what) => new()
    {
        Id = TimeOrderedId.Derive(at, "test"), PoolId = "main", SampledAt = at, EnteredAt = at, Who = "J. Sample", Results = [.. what.Select(m => new TestResult(m, 1, TestMethod.Photometer))],
    };

    private static ManualCheck Whole(Instant at) => Test(at, Measurand.FreeChlorine, Measurand.Ph);

    private static DutyRound[] Day(params ManualCheck[] checks) => [.. DutyRounds.Between("UTC", Pool(Rounds), checks, Utc(0), Utc(0, day: 5))];

    [Fact]
    public void A_day_without_tests_has_a_round_for_every_time_and_all_of_them_are_missed_once_they_are_over()
    {
        var rounds = Day();
        Assert.Equal([Utc(7, 30), Utc(12), Utc(18)], rounds.Select(r => r.DueAt));
        Assert.Equal([true, false, false], rounds.Select(r => r.IsMissed(Utc(12, 30))));
        Assert.All(rounds, r => Assert.True(r.IsMissed(Utc(19, 1))));
    }

    [Fact]
    public void A_round_is_walked_from_an_hour_before_its_time_until_the_next_one_opens_and_late_is_not_missed()
    {
        Assert.Equal([Utc(6, 30), Utc(11), Instant.Never], Day(Whole(Utc(6, 30)), Whole(Utc(11))).Select(r => r.SampledAt));
        Assert.Equal([Utc(10, 59), Instant.Never, Instant.Never], Day(Whole(Utc(10, 59))).Select(r => r.SampledAt));
        Assert.All(Day(Whole(Utc(6, 29))), r => Assert.Null(r.Check));
    }

    [Fact]
    public void A_test_of_part_of_it_walks_no_round() => Assert.All(Day(Test(Utc(7, 30), Measurand.Ph)), r => Assert.Null(r.Check));

    [Fact]
    public void Of_several_tests_the_first_counts() => Assert.Equal(Utc(7), Day(Whole(Utc(8)), Whole(Utc(7)))[0].SampledAt);

    [Fact]
    public void A_test_of_the_evening_before_walks_the_round_just_after_midnight()
    {
        var night = new CheckDuty([Measurand.Ph], [new(0, 30)]);
        var rounds = DutyRounds.Between("UTC", Pool(night), [Test(Utc(23, 45, 3), Measurand.Ph)], Utc(0), Utc(0, day: 5));
        Assert.Equal((Utc(0, 30), Utc(23, 45, 3)), (rounds.Single().DueAt, rounds.Single().SampledAt));
    }

    [Fact]
    public void On_a_day_of_25_hours_a_time_that_comes_twice_is_one_round_and_on_one_of_23_a_skipped_time_is_one_too()
    {
        var early = new CheckDuty([Measurand.Ph], [new(1, 30)]);
        // Europe/London: the clock goes back at 01:00 UTC on 25 October 2026 and forward at 01:00 UTC on 29 March 2026 (tz database, GB-Eire rules).
        Assert.Equal(Instant.FromUtc(2026, 10, 25, 0, 30), DutyRounds.Between("Europe/London", Pool(early), [], Instant.FromUtc(2026, 10, 24, 23), Instant.FromUtc(2026, 10, 26)).Single().DueAt);
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 1, 30), DutyRounds.Between("Europe/London", Pool(early), [], Instant.FromUtc(2026, 3, 29), Instant.FromUtc(2026, 3, 29, 23)).Single().DueAt);
    }

    [Fact]
    public void Every_duty_has_rounds_of_its_own_in_the_order_of_time()
    {
        var other = new CheckDuty([Measurand.TotalAlkalinity], [new(9, 0)]);
        Assert.Equal([0, 1, 0, 0], DutyRounds.Between("UTC", Pool(Rounds, other), [], Utc(0), Utc(0, day: 5)).Select(r => r.Duty));
    }
}
