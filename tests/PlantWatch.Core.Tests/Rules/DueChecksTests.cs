using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Rules;

public class DueChecksTests
{
    private static readonly CheckDuty Morning = new([Measurand.FreeChlorine, Measurand.Ph], [new(7, 30), new(12, 0), new(18, 0)]);

    private static CircuitPlan PlanOf(string zone, params CheckDuty[] duties) => new()
    {
        Id = "c", Name = "Circuit", TimeZone = zone, Pools = [new PoolPlan { Id = "main", Name = "Main", Duties = [.. duties] }],
    };

    private static DueCheck? Due(CircuitPlan plan, Instant now, Instant doneAt = default) =>
        DueChecks.At(plan, [new PoolState { Id = "main", DutyDoneAt = [doneAt] }], now) is [var due] ? due : null;

    private static Instant Utc(int hour, int minute = 0, int day = 4) => Instant.FromUtc(2026, 5, day, hour, minute);

    [Theory]
    // London is an hour ahead of UTC in May: 12:00 on the wall is 11:00 UTC.
    [InlineData(9, 59, false, false)]
    [InlineData(10, 0, true, false)]
    [InlineData(11, 0, true, false)]
    [InlineData(12, 0, true, false)]
    [InlineData(12, 1, true, true)]
    public void A_check_is_due_from_an_hour_before_its_time_and_overdue_an_hour_after(int hour, int minute, bool due, bool overdue)
    {
        var found = Due(PlanOf("Europe/London", Morning), Utc(hour, minute), doneAt: Utc(6, 20));
        Assert.Equal(due, found is not null);
        if (found is null) return;
        Assert.Equal(Utc(11), found.DueAt);
        Assert.Equal(overdue, found.Overdue);
    }

    [Fact]
    public void What_was_done_in_its_window_is_due_no_more() => Assert.Null(Due(PlanOf("Europe/London", Morning), Utc(13), doneAt: Utc(10, 30)));

    [Fact]
    public void What_was_done_as_its_window_opened_counts() => Assert.Null(Due(PlanOf("Europe/London", Morning), Utc(13), doneAt: Utc(10)));

    [Fact]
    public void What_was_done_before_its_window_does_not_count() => Assert.NotNull(Due(PlanOf("Europe/London", Morning), Utc(11), doneAt: Utc(9, 45)));

    [Fact]
    public void Yesterdays_last_check_stays_overdue_through_the_night_until_the_next_opens()
    {
        var plan = PlanOf("Europe/London", Morning);
        Assert.Equal(Utc(17, 0, 3), Due(plan, Utc(3))!.DueAt);
        Assert.True(Due(plan, Utc(3))!.Overdue);
        Assert.Equal(Utc(6, 30), Due(plan, Utc(5, 30))!.DueAt);
    }

    [Fact]
    public void A_check_just_after_midnight_opens_before_midnight() =>
        Assert.Equal(Utc(0, 30, 5), Due(PlanOf("UTC", new CheckDuty([Measurand.Ph], [new(0, 30)])), Utc(23, 45))!.DueAt);

    [Fact]
    public void A_time_skipped_in_spring_moves_on_by_the_gap()
    {
        // 2026-03-29 in London: 01:00 becomes 02:00, so 01:30 is not on the wall; 02:30 BST is 01:30 UTC.
        var due = Due(PlanOf("Europe/London", new CheckDuty([Measurand.Ph], [new(1, 30)])), Instant.FromUtc(2026, 3, 29, 1, 35));
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 1, 30), due!.DueAt);
    }

    [Fact]
    public void A_time_repeated_in_autumn_is_due_once()
    {
        // 2026-10-25 in London: 01:30 comes at 00:30 UTC and again at 01:30 UTC.
        var plan = PlanOf("Europe/London", new CheckDuty([Measurand.Ph], [new(1, 30)]));
        Assert.Equal(Instant.FromUtc(2026, 10, 25, 0, 30), Due(plan, Instant.FromUtc(2026, 10, 25, 1, 40))!.DueAt);
        Assert.Null(Due(plan, Instant.FromUtc(2026, 10, 25, 1, 40), doneAt: Instant.FromUtc(2026, 10, 25, 0, 40)));
    }

    [Fact]
    public void The_wall_clock_holds_on_the_short_day_and_on_the_long_one()
    {
        var plan = PlanOf("Europe/London", new CheckDuty([Measurand.Ph], [new(7, 30)]));
        Assert.Equal(Instant.FromUtc(2026, 3, 28, 7, 30), Due(plan, Instant.FromUtc(2026, 3, 28, 8))!.DueAt);
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 6, 30), Due(plan, Instant.FromUtc(2026, 3, 29, 8))!.DueAt);
        Assert.Equal(Instant.FromUtc(2026, 10, 24, 6, 30), Due(plan, Instant.FromUtc(2026, 10, 24, 8))!.DueAt);
        Assert.Equal(Instant.FromUtc(2026, 10, 25, 7, 30), Due(plan, Instant.FromUtc(2026, 10, 25, 8))!.DueAt);
    }

    [Fact]
    public void Only_the_pool_that_nobody_bathes_in_is_left_out()
    {
        var plan = PlanOf("UTC", Morning) is var p ? p with { Pools = [p.Pools[0], p.Pools[0] with { Id = "spa" }] } : null!;
        PoolState main = new() { Id = "main" }, closed = new() { Id = "spa", Operation = new() { State = OperatingState.Closed } };
        Assert.Equal("main", Assert.Single(DueChecks.At(plan, [closed, main], Utc(12))).PoolId);
    }

    [Fact]
    public void A_pool_without_memory_is_due_at_once() =>
        Assert.Single(DueChecks.At(PlanOf("UTC", Morning), [], Utc(12)));

    [Fact]
    public void A_check_covers_a_duty_when_it_tested_all_of_it()
    {
        var both = Checks.Of(new(Measurand.FreeChlorine, 1, TestMethod.Photometer), new(Measurand.Ph, 7.4, TestMethod.Photometer));
        Assert.True(DueChecks.Covers(Morning, both));
        Assert.False(DueChecks.Covers(Morning, Checks.Of(new TestResult(Measurand.Ph, 7.4, TestMethod.Photometer))));
        Assert.False(DueChecks.Covers(new([], []), both));
    }

    [Fact]
    public void Combined_chlorine_is_covered_by_free_and_total()
    {
        var duty = new CheckDuty([Measurand.CombinedChlorine], [new(12, 0)]);
        Assert.False(DueChecks.Covers(duty, Checks.Of(new TestResult(Measurand.FreeChlorine, 1, TestMethod.Photometer))));
        Assert.True(DueChecks.Covers(duty, Checks.Of(new(Measurand.FreeChlorine, 1, TestMethod.Photometer), new(Measurand.TotalChlorine, 1.2, TestMethod.Photometer))));
    }

    [Fact]
    public void A_late_check_never_takes_back_what_was_done_since()
    {
        var pool = PlanOf("UTC", Morning).Pools[0];
        var check = Checks.At(Utc(7), new(Measurand.FreeChlorine, 1, TestMethod.Photometer), new(Measurand.Ph, 7.4, TestMethod.Photometer));
        Assert.Equal(new[] { Utc(12) }, DueChecks.DoneAfter(pool, new PoolState { Id = "main", DutyDoneAt = [Utc(12)] }, check).ToArray());
        Assert.Equal(new[] { Utc(7) }, DueChecks.DoneAfter(pool, new PoolState { Id = "main" }, check).ToArray());
    }
}
