using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Plant.Exceptions;

/// <summary>From reading to action to retest to closed.</summary>
public sealed class BreachLineTests
{
    private readonly Bench _bench = BreachBench.New();

    [Fact]
    public void A_breach_is_one_line_from_reading_to_closing_with_names_and_minutes()
    {
        _bench.TestsChlorine(0.1, minutesAgo: 5);
        _bench.Minutes(5);
        _bench.Doses(ProductKind.SodiumHypochlorite);
        _bench.Minutes(30);
        _bench.TestsChlorine(1.4, who: "J. Sample");
        var line = _bench.Closed(BreachBench.Chlorine);
        Assert.Empty(_bench.State.Exceptions);
        Assert.Equal((BreachGrade.Stop, "R-013", Closing.ByRetest), (line.Grade, line.Reading.Rule, line.Closing));
        Assert.Equal(("R. Example", "M. Invented", "J. Sample", "J. Sample"), (line.Reading.By, line.Action!.By, line.Retest!.By, line.ClosedBy));
        Assert.Equal((10, 40, 40), (Whole(line, line.Action.At), Whole(line, line.Retest.At), Whole(line, line.ClosedAt)));
        Assert.Equal(default, line.Owed);
    }

    [Fact]
    public void However_often_something_is_given_nobody_waits_longer_than_four_hours_with_a_test()
    {
        _bench.TestsChlorine(0.5);
        var first = _bench.Now;
        for (var i = 0; i < 12; i++)
        {
            _bench.Doses(ProductKind.SodiumHypochlorite);
            _bench.Minutes(50);
        }

        var by = _bench.Open(BreachBench.Chlorine)!.Owed.By;
        Assert.Equal(4, (by - first).TotalHours, 0.01);
    }

    [Fact]
    public void The_gravest_rule_gives_the_grade_and_stop_and_limit_are_one_line()
    {
        _bench.TestsChlorine(0.1);
        Assert.True(_bench.IsUp(RuleBook.TestOutsideStop, BreachBench.Chlorine) && _bench.IsUp(RuleBook.TestOutsideLimit, BreachBench.Chlorine));
        Assert.Equal(BreachGrade.Stop, Assert.Single(_bench.State.Exceptions).Grade);
    }

    [Fact]
    public void A_retest_that_is_only_at_the_limit_or_proves_nothing_closes_nothing()
    {
        _bench.TestsChlorine(0.5);
        _bench.Minutes(10);
        _bench.TestsChlorine(0.95);
        Assert.Equal(RetestWord.AtLimit, _bench.Open(BreachBench.Chlorine)!.Retest!.Word);
        _bench.Minutes(10);
        _bench.Check(_bench.CheckOf(new TestResult(Measurand.FreeChlorine, 2, TestMethod.Photometer, Censoring.Below)));
        Assert.Equal(RetestWord.NotProven, _bench.Open(BreachBench.Chlorine)!.Steps[^1].Word);
        _bench.Minutes(10);
        _bench.TestsChlorine(1.2);
        Assert.Null(_bench.Open(BreachBench.Chlorine));
    }

    [Fact]
    public void A_test_back_inside_the_stop_and_short_of_the_limit_leaves_the_line_open()
    {
        _bench.TestsChlorine(0.1);
        _bench.Minutes(20);
        _bench.TestsChlorine(0.7);
        Assert.False(_bench.IsUp(RuleBook.TestOutsideStop, BreachBench.Chlorine));
        Assert.Equal((RetestWord.Outside, BreachGrade.Operating), (_bench.Open(BreachBench.Chlorine)!.Retest!.Word, _bench.Open(BreachBench.Chlorine)!.Retest!.Grade));
    }

    [Fact]
    public void What_moves_another_quantity_is_no_action_of_this_line()
    {
        _bench.TestsChlorine(0.5);
        _bench.Tests(Measurand.Ph, 7.9);
        _bench.Doses(ProductKind.HydrochloricAcid);
        Assert.Null(_bench.Open(BreachBench.Chlorine)!.Action);
        Assert.Equal(StepKind.Dose, _bench.Open("main/ph")!.Action!.Kind);
    }

    [Fact]
    public void A_dose_typed_in_later_belongs_to_the_line_of_its_own_time_also_when_that_is_closed()
    {
        _bench.TestsChlorine(0.5);
        _bench.Minutes(40);
        _bench.TestsChlorine(1.4);
        _bench.Minutes(10);
        _bench.Doses(ProductKind.SodiumHypochlorite, minutesAgo: 40);
        Assert.Equal(10, Whole(_bench.Closed(BreachBench.Chlorine), _bench.Closed(BreachBench.Chlorine).Action!.At));
        Assert.Equal(2, _bench.Entries.Count(e => e.Body is ExceptionClosedEntry));
        _bench.Doses(ProductKind.SodiumHypochlorite, minutesAgo: 1);
        Assert.Single(_bench.Closed(BreachBench.Chlorine).Steps, s => s.IsAction);
    }

    [Fact]
    public void A_dose_entered_before_the_test_that_asked_for_it_is_found()
    {
        _bench.Run(at => new DoseGiven(at, new() { Id = TimeOrderedId.Derive(at, "d"), PoolId = "main", ProductId = "p", Product = "Hypochlorite", Kind = ProductKind.SodiumHypochlorite, Kilograms = 1, GivenAt = at, MixedAt = at + TimeSpan.FromMinutes(30), By = "R. Example", Predicted = [new(Measurand.FreeChlorine, 0.5, 0.05, 1, 0.1, at)] }));
        _bench.Minutes(10);
        _bench.TestsChlorine(0.5, minutesAgo: 20);
        Assert.Equal(StepKind.Dose, _bench.Open(BreachBench.Chlorine)!.Action!.Kind);
    }

    [Fact]
    public void A_corrected_dose_stays_to_be_seen_and_counts_for_nothing()
    {
        _bench.TestsChlorine(0.5);
        _bench.Minutes(5);
        var wrong = _bench.Doses(ProductKind.SodiumHypochlorite);
        _bench.Doses(ProductKind.HydrochloricAcid, corrects: wrong);
        var line = _bench.Open(BreachBench.Chlorine)!;
        Assert.Null(line.Action);
        Assert.True(Assert.Single(line.Steps).Withdrawn);
    }

    [Fact]
    public void Closing_the_pool_new_water_and_a_word_with_the_acknowledgement_are_actions_and_a_mute_acknowledgement_is_not()
    {
        _bench.TestsChlorine(0.1);
        _bench.Run(at => new AlarmAcknowledged(at, _bench.Alarm(RuleBook.TestOutsideStop, BreachBench.Chlorine)!.Id, "J. Sample", null));
        Assert.Null(_bench.Open(BreachBench.Chlorine)!.Action);
        Assert.Equal("J. Sample", _bench.Open(BreachBench.Chlorine)!.Owed.Who);
        _bench.Run(at => new AlarmAcknowledged(at, _bench.Alarm(RuleBook.TestOutsideLimit, BreachBench.Chlorine)!.Id, "J. Sample", "bathers out"));
        _bench.Run(at => new PoolStateSet(at, TimeOrderedId.Derive(at, "shut"), "main", OperatingState.Closed, "J. Sample", "no chlorine", ForCause: true));
        _bench.Run(at => new PoolStateSet(at, TimeOrderedId.Derive(at, "fill"), "main", OperatingState.Closed, "J. Sample", "half of it is new", Refilled: true));
        Assert.Equal([StepKind.Seen, StepKind.Words, StepKind.PoolClosed, StepKind.NewWater], _bench.Open(BreachBench.Chlorine)!.Steps.Select(s => s.Kind));
    }

    [Fact]
    public void A_washed_filter_answers_cloudy_water_and_no_ph()
    {
        var bench = BreachBench.New(p => p with { Filters = [new("sand", "Sand filter", 12)] });
        bench.Tests(Measurand.Ph, 7.9);
        bench.Check(bench.CheckOf() with { BottomVisible = false });
        bench.Run(at => new FilterWashed(at, TimeOrderedId.Derive(at, "wash"), "sand", "M. Invented"));
        Assert.Null(bench.Open("main/ph")!.Action);
        Assert.Equal(StepKind.FilterWashed, bench.Open("main/bottom")!.Action!.Kind);
        bench.Minutes(10);
        bench.Check(bench.CheckOf() with { BottomVisible = true });
        Assert.Equal(Closing.ByRetest, bench.Closed("main/bottom").Closing);
    }

    [Fact]
    public void Words_are_said_once_by_somebody_not_before_the_reading()
    {
        _bench.TestsChlorine(0.5);
        _bench.Minutes(10);
        var line = _bench.Open(BreachBench.Chlorine)!;
        Assert.IsType<Outcome.TurnedDown>(_bench.Says(line, " "));
        Assert.IsType<Outcome.TurnedDown>(_bench.Says(line, "pump primed", by: ""));
        Assert.IsType<Outcome.TurnedDown>(_bench.Says(line, "pump primed", minutesAgo: 30));
        Assert.IsType<Outcome.TurnedDown>(_bench.Says(line with { Id = Guid.Empty }, "pump primed"));
        Assert.IsType<Outcome.Done>(_bench.Says(line, "pump primed", minutesAgo: 5));
        Assert.IsType<Outcome.AlreadyDone>(_bench.Says(line, "pump primed"));
        Assert.IsType<Outcome.TurnedDown>(_bench.Says(line, "something else"));
        Assert.Equal(5, Whole(_bench.Open(BreachBench.Chlorine)!, _bench.Open(BreachBench.Chlorine)!.Action!.At));
    }

    [Fact]
    public void Two_tests_together_make_a_line_of_their_own()
    {
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 1.2), Bench.Test(Measurand.TotalChlorine, 3.4));
        Assert.Equal(["main/combined_chlorine"], _bench.State.Exceptions.Select(l => l.Key));
        _bench.Minutes(30);
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 1.2), Bench.Test(Measurand.TotalChlorine, 1.4));
        Assert.Equal(0.2, _bench.Closed("main/combined_chlorine").Retest!.What!.Facts[1].Number!.Value, 9);
    }

    [Fact]
    public void A_limit_that_goes_closes_the_line_and_says_so()
    {
        _bench.TestsChlorine(0.5);
        _bench.Load(_bench.State.Plan.WithPool("main", p => p with { Limits = [] }));
        Assert.Equal(Closing.LimitGone, _bench.Closed(BreachBench.Chlorine).Closing);
    }

    [Fact]
    public void A_pool_that_goes_closes_its_lines_and_one_that_is_renamed_takes_them_along()
    {
        _bench.Tests(Measurand.Ph, 7.9, pool: "learner", method: TestMethod.Meter);
        _bench.TestsChlorine(0.5);
        var renamed = _bench.State.Plan.Without("learner").Without("learner-ph").Without("learner-temperature").WithPool("main", p => p with { Id = "large", Was = "main" });
        _bench.Load(renamed with { Probes = [.. renamed.Probes.Select(p => p with { PoolId = "large" })], Pumps = [] });
        Assert.Equal(Closing.PoolGone, _bench.Closed("learner/ph").Closing);
        Assert.Equal("large/free_chlorine", Assert.Single(_bench.State.Exceptions).Key);
    }

    [Fact]
    public void A_line_survives_a_restart()
    {
        _bench.TestsChlorine(0.1);
        _bench.Doses(ProductKind.SodiumHypochlorite);
        var before = PlantJson.HashOf(_bench.State);
        _bench.Restart();
        Assert.Equal(before, PlantJson.HashOf(_bench.State));
        _bench.Minutes(30);
        _bench.TestsChlorine(1.5);
        Assert.Equal(Closing.ByRetest, _bench.Closed(BreachBench.Chlorine).Closing);
    }

    private static int Whole(ExceptionLine line, Instant at) => (int)Math.Round(line.Until(at)!.Value.TotalMinutes);
}
