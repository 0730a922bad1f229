using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Plant.Exceptions;

/// <summary>Readings that were wrong, late or superseded: nothing vanishes, and nothing is closed by what was never so.</summary>
public sealed class BreachCorrectionTests
{
    private readonly Bench _bench = BreachBench.New();

    [Fact]
    public void A_reading_that_was_no_breach_closes_the_line_as_corrected_and_says_by_whom()
    {
        var wrong = _bench.TestsChlorine(0.14);
        _bench.Minutes(5);
        _bench.TestsChlorine(1.4, minutesAgo: 5, who: "J. Sample", corrects: wrong);
        var line = _bench.Closed(BreachBench.Chlorine);
        Assert.Equal((Closing.Corrected, "J. Sample", "wrong line"), (line.Closing, line.ClosedBy, line.ClosedWhy));
        Assert.True(line.Reading.Withdrawn);
        Assert.Null(line.Retest);
        Assert.Equal("test.below_stop", Assert.Single(line.Steps).What!.Code);
    }

    [Fact]
    public void A_reading_corrected_to_another_breach_keeps_its_line_and_tells_what_it_was()
    {
        var wrong = _bench.TestsChlorine(0.14);
        _bench.Minutes(5);
        _bench.TestsChlorine(0.5, minutesAgo: 5, corrects: wrong);
        var line = Assert.Single(_bench.State.Exceptions);
        Assert.Equal(("test.below_limit", StepKind.ReadingCorrected), (line.Reading.Cause.Code, Assert.Single(line.Steps).Kind));
    }

    [Fact]
    public void A_retest_had_shown_it_too_so_the_breach_begins_there()
    {
        var wrong = _bench.TestsChlorine(0.14);
        _bench.Minutes(10);
        var second = _bench.TestsChlorine(0.5, who: "J. Sample");
        _bench.Minutes(5);
        _bench.TestsChlorine(1.4, minutesAgo: 15, corrects: wrong);
        var line = Assert.Single(_bench.State.Exceptions);
        Assert.Equal((second, "J. Sample", false), (line.Reading.Id, line.Reading.By, line.Reading.Withdrawn));
    }

    [Fact]
    public void What_closed_a_line_was_taken_back_so_it_stands_open_again()
    {
        _bench.TestsChlorine(0.5);
        _bench.Minutes(30);
        var closing = _bench.TestsChlorine(1.5);
        Assert.Empty(_bench.State.Exceptions);
        _bench.Minutes(5);
        _bench.TestsChlorine(0.6, minutesAgo: 5, corrects: closing);
        var line = Assert.Single(_bench.State.Exceptions);
        Assert.Empty(_bench.State.ClosedExceptions);
        Assert.Contains(line.Steps, s => s.Kind == StepKind.Reopened);
        Assert.Contains(line.Steps, s => s.Id == closing && s.Withdrawn);
        Assert.Equal(OwedAct.ActAndRetest, line.Owed.Act);
    }

    [Fact]
    public void A_closing_test_corrected_within_the_limits_leaves_the_line_closed_at_its_time()
    {
        _bench.TestsChlorine(0.5);
        _bench.Minutes(30);
        var closing = _bench.TestsChlorine(1.5);
        var closedAt = _bench.Closed(BreachBench.Chlorine).ClosedAt;
        _bench.Minutes(5);
        var right = _bench.TestsChlorine(1.6, minutesAgo: 5, corrects: closing);
        Assert.Empty(_bench.State.Exceptions);
        Assert.Equal((closedAt, right), (_bench.Closed(BreachBench.Chlorine).ClosedAt, _bench.Closed(BreachBench.Chlorine).Answer!.Id));
    }

    [Fact]
    public void The_reading_of_a_closed_line_may_be_corrected_and_opens_no_second_one()
    {
        var first = _bench.TestsChlorine(0.5);
        _bench.Minutes(30);
        _bench.TestsChlorine(1.5);
        _bench.TestsChlorine(0.6, minutesAgo: 30, corrects: first);
        Assert.Empty(_bench.State.Exceptions);
        Assert.Equal("test.below_limit", Assert.Single(_bench.State.ClosedExceptions).Reading.Cause.Code);
    }

    [Fact]
    public void A_correction_that_leaves_the_quantity_out_takes_the_reading_back_and_not_the_water()
    {
        var wrong = _bench.TestsChlorine(0.5);
        _bench.Minutes(5);
        _bench.Tests(Measurand.Ph, 7.4, minutesAgo: 5, corrects: wrong);
        Assert.True(_bench.IsUp(RuleBook.TestOutsideLimit, BreachBench.Chlorine));
        Assert.True(_bench.Open(BreachBench.Chlorine)!.Reading.Withdrawn);
        _bench.TestsChlorine(1.5);
        Assert.Null(_bench.Open(BreachBench.Chlorine));
    }

    [Fact]
    public void A_breach_told_after_somebody_has_tested_again_is_a_line_that_is_closed_at_once()
    {
        _bench.Minutes(60);
        _bench.TestsChlorine(1.5);
        _bench.TestsChlorine(0.5, minutesAgo: 40);
        var line = _bench.Closed(BreachBench.Chlorine);
        Assert.Equal((Closing.ByRetest, 40.0), (line.Closing, Math.Round(line.Until(line.Retest!.At)!.Value.TotalMinutes)));
        Assert.False(_bench.IsUp(RuleBook.TestOutsideLimit, BreachBench.Chlorine));
    }

    [Fact]
    public void An_earlier_reading_of_the_same_breach_moves_its_begin()
    {
        _bench.Minutes(60);
        var later = _bench.TestsChlorine(0.5);
        var sooner = _bench.TestsChlorine(0.4, minutesAgo: 40);
        var line = Assert.Single(_bench.State.Exceptions);
        Assert.Equal((sooner, later, RetestWord.Outside), (line.Reading.Id, line.Retest!.Id, line.Retest.Word));
    }

    [Fact]
    public void A_test_of_the_day_before_is_a_breach_of_that_hour_and_raises_no_alarm()
    {
        _bench.Pass(TimeSpan.FromMinutes(5));
        _bench.TestsChlorine(0.5, minutesAgo: 14 * 60);
        Assert.False(_bench.IsUp(RuleBook.TestOutsideLimit, BreachBench.Chlorine));
        Assert.NotNull(_bench.Open(BreachBench.Chlorine));
        _bench.TestsChlorine(1.5);
        Assert.Equal(Closing.ByRetest, _bench.Closed(BreachBench.Chlorine).Closing);
    }

    [Fact]
    public void A_test_of_before_the_breach_answers_nothing()
    {
        _bench.TestsChlorine(0.5);
        _bench.TestsChlorine(1.5, minutesAgo: 30);
        Assert.Null(_bench.Open(BreachBench.Chlorine)!.Retest);
    }

    [Fact]
    public void A_correction_that_came_before_what_it_corrects_leaves_nothing_to_stand_on()
    {
        var wrong = _bench.CheckOf(Bench.Test(Measurand.FreeChlorine, 0.1)) with { Id = TimeOrderedId.Derive(_bench.Now, "sent later") };
        _bench.TestsChlorine(1.5, corrects: wrong.Id);
        _bench.Check(wrong);
        Assert.Empty(_bench.State.Exceptions);
        Assert.Empty(_bench.State.ClosedExceptions);
    }

    [Fact]
    public void A_doubted_test_that_is_outside_begins_a_breach_and_a_doubted_one_inside_ends_none()
    {
        // Combined above total cannot be: one of the two is wrong, and both are doubted.
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 0.5));
        _bench.Minutes(10);
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 2.5), Bench.Test(Measurand.TotalChlorine, 1.0));
        Assert.True(_bench.IsUp(RuleBook.RepeatTest, BreachBench.Chlorine));
        Assert.Equal(RetestWord.NotProven, _bench.Open(BreachBench.Chlorine)!.Steps[^1].Word);
    }
}
