using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Exceptions;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Who owes what by when, and what happens when it is not done. The times are common practice, as R-070 says.</summary>
public sealed class ExceptionRuleTests
{
    private readonly Bench _bench = BreachBench.New();

    private ExceptionLine Line => _bench.Open(BreachBench.Chlorine)!;

    private bool IsOverdue => _bench.IsUp(RuleBook.ExceptionOverdue, BreachBench.Chlorine);

    [Theory, Evidence("R-070")]
    [InlineData(0.5, 60)]
    [InlineData(0.1, 15)]
    public void An_operating_limit_gives_an_hour_and_a_stop_a_quarter_of_one(double tested, int minutes)
    {
        _bench.TestsChlorine(tested);
        Assert.Equal((OwedAct.ActAndRetest, minutes), (Line.Owed.Act, (int)(Line.Owed.By - Line.Reading.KnownAt).TotalMinutes));
        _bench.Minutes(minutes - 0.5);
        Assert.False(IsOverdue);
        _bench.Minutes(1);
        Assert.True(IsOverdue);
        Assert.Equal(Priority.Medium, _bench.Alarm(RuleBook.ExceptionOverdue, BreachBench.Chlorine)!.Priority);
    }

    [Fact, Evidence("R-070")]
    public void The_clock_runs_from_when_the_reading_came_in_not_from_its_sample()
    {
        _bench.TestsChlorine(0.5, minutesAgo: 120);
        _bench.Minutes(59);
        Assert.False(IsOverdue);
    }

    [Fact, Evidence("R-070")]
    public void A_retest_inside_ends_it_and_one_outside_starts_the_clock_anew_and_calls_nobody_a_second_time()
    {
        _bench.TestsChlorine(0.1);
        _bench.Minutes(16);
        Assert.True(IsOverdue);
        _bench.TestsChlorine(0.1, who: "J. Sample");
        _bench.Minutes(1);
        Assert.True(IsOverdue);
        Assert.Equal((OwedAct.ActAndRetest, "J. Sample", false), (Line.Owed.Act, Line.Owed.Who, Line.Owed.IsOverdue(_bench.Now)));
        _bench.Minutes(15);
        Assert.True(Line.Owed.IsOverdue(_bench.Now));
        _bench.TestsChlorine(1.4);
        Assert.False(IsOverdue);
        Assert.Equal("exception.overdue_act", _bench.AlarmsTold.Last(e => e.Alarm.Rule == "R-070").Alarm.Cause.Code);
        Assert.Equal(1, Rang);
    }

    private int Rang => _bench.AlarmsTold.Count(e => e.Alarm.Rule == "R-070" && e.Change == AlarmChange.Raised);

    [Fact, Evidence("R-070")]
    public void Whoever_acknowledges_in_words_is_not_called_again_for_the_same_lapse()
    {
        _bench.TestsChlorine(0.5);
        _bench.Minutes(61);
        var alarm = _bench.Alarm(RuleBook.ExceptionOverdue, BreachBench.Chlorine)!;
        _bench.Run(at => new AlarmAcknowledged(at, alarm.Id, "J. Sample", "dosing pump is being primed"));
        _bench.Says(Line, "primed");
        _bench.Minutes(30);
        Assert.Equal((OwedAct.Retest, AlarmState.Acknowledged, 1), (Line.Owed.Act, _bench.Alarm(RuleBook.ExceptionOverdue, BreachBench.Chlorine)!.State, Rang));
    }

    [Fact, Evidence("R-070")]
    public void Tests_that_go_on_failing_are_one_call_and_an_action_that_is_not_tested_in_time_is_another()
    {
        _bench.TestsChlorine(0.5);
        for (var hour = 0; hour < 5; hour++)
        {
            _bench.Minutes(70);
            _bench.TestsChlorine(0.5);
        }

        Assert.True(IsOverdue);
        Assert.Equal(1, Rang);
        _bench.Doses(ProductKind.SodiumHypochlorite);
        _bench.Minutes(1);
        Assert.False(IsOverdue);
        _bench.Minutes(61);
        Assert.True(IsOverdue);
        Assert.Equal(2, Rang);
    }

    [Theory]
    [InlineData(10, 60)]
    [InlineData(120, 120)]
    [InlineData(600, 240)]
    public void After_a_dose_the_retest_is_due_within_the_hour_or_when_it_has_mixed_and_within_four_hours_at_the_latest(double mixed, int minutes)
    {
        _bench.TestsChlorine(0.1);
        _bench.Doses(ProductKind.SodiumHypochlorite, mixedAfterMinutes: mixed, by: "M. Invented");
        Assert.Equal((OwedAct.Retest, "M. Invented"), (Line.Owed.Act, Line.Owed.Who));
        Assert.Equal(minutes, (int)Math.Round((Line.Owed.By - Line.Steps[^1].At).TotalMinutes));
    }

    [Fact]
    public void Words_and_a_closed_pool_do_not_move_the_clock()
    {
        _bench.TestsChlorine(0.5);
        var due = Line.Owed.By;
        _bench.Says(Line, "pump primed");
        Assert.Equal((OwedAct.Retest, due), (Line.Owed.Act, Line.Owed.By));
    }

    [Fact, Evidence("R-070")]
    public void Of_a_pool_that_nobody_bathes_in_the_gate_asks_and_the_alarm_is_silent()
    {
        _bench.TestsChlorine(0.1);
        _bench.Run(at => new PoolStateSet(at, TimeOrderedId.Derive(at, "shut"), "main", OperatingState.Closed, "J. Sample", "no chlorine", ForCause: true));
        _bench.Minutes(90);
        Assert.True(_bench.Alarm(RuleBook.ExceptionOverdue, BreachBench.Chlorine)!.Suppressed);
        Assert.Equal("suppressed.not_open", _bench.Alarm(RuleBook.ExceptionOverdue, BreachBench.Chlorine)!.SuppressedBy!.Code);
    }

    [Fact]
    public void A_probe_that_was_never_tested_begins_no_breach_of_a_comfort_limit_and_one_of_a_stop()
    {
        _bench.Hold(TimeSpan.FromMinutes(4), (Hall.Ph, 7.9), (Hall.Flow, 1));
        Assert.True(_bench.IsUp(RuleBook.AboveLimit, "main-ph"));
        Assert.Empty(_bench.State.Exceptions);
        _bench.Hold(TimeSpan.FromMinutes(2), (Hall.Ph, 8.6), (Hall.Flow, 1));
        var line = Assert.Single(_bench.State.Exceptions);
        Assert.Equal(("main/ph", BreachGrade.Stop, BreachSource.Probe, (string?)null), (line.Key, line.Grade, line.Reading.Source, line.Reading.By));
    }

    [Fact]
    public void No_test_closes_a_line_while_a_probe_reads_outside_a_stop_and_then_it_is_closed_by_that_test()
    {
        _bench.Hold(TimeSpan.FromMinutes(2), (Hall.Ph, 8.6), (Hall.Flow, 1));
        _bench.Tests(Measurand.Ph, 7.4, method: TestMethod.Meter);
        Assert.Equal(OwedAct.Settle, _bench.Open("main/ph")!.Owed.Act);
        _bench.Hold(TimeSpan.FromMinutes(3), (Hall.Ph, 7.4), (Hall.Flow, 1));
        var line = _bench.Closed("main/ph");
        Assert.Equal((Closing.ByRetest, "R. Example"), (line.Closing, line.ClosedBy));
        Assert.Contains(line.Steps, s => s.Kind == StepKind.BackInside);
    }

    [Fact]
    public void A_believed_probe_that_comes_back_by_itself_still_owes_a_test_within_the_shift()
    {
        Believed();
        _bench.Hold(TimeSpan.FromMinutes(4), (Hall.Ph, 7.75), (Hall.Flow, 1));
        Assert.Equal(BreachGrade.Operating, _bench.Open("main/ph")!.Grade);
        _bench.Hold(TimeSpan.FromMinutes(6), (Hall.Ph, 7.4), (Hall.Flow, 1));
        var line = _bench.Open("main/ph")!;
        Assert.Equal((StepKind.BackInside, OwedAct.Retest), (line.Steps[^1].Kind, line.Owed.Act));
        Assert.Equal(8, (line.Owed.By - line.Steps[^1].At).TotalHours);
        _bench.CheckBeside("main-ph", 7.4, Bench.Test(Measurand.Ph, 7.4, TestMethod.Meter));
        Assert.Equal(Closing.ByRetest, _bench.Closed("main/ph").Closing);
    }

    [Fact]
    public void What_becomes_graver_has_no_hour_any_more()
    {
        Believed();
        _bench.Hold(TimeSpan.FromMinutes(4), (Hall.Ph, 7.75), (Hall.Flow, 1));
        _bench.Hold(TimeSpan.FromMinutes(5), (Hall.Ph, 8.4), (Hall.Flow, 1));
        var line = _bench.Open("main/ph")!;
        Assert.Equal((BreachGrade.Stop, StepKind.Reading), (line.Grade, line.Steps[^1].Kind));
        Assert.Equal(15, (line.Owed.By - line.Steps[^1].KnownAt).TotalMinutes);
    }

    [Fact]
    public void A_finding_of_the_laboratory_owes_a_resample_of_its_own_clock_and_a_person_who_may_closes_it()
    {
        var bench = BreachBench.New(p => p.WithPool("main", m => m with { Laboratory = new() { Limits = [new(Organism.Legionella, 0, "invented code, s. 1")], ResampleWithin = TimeSpan.FromDays(2) } }) with
        {
            People = [new("js", "J. Sample", PersonRole.DutyManager)],
        });
        var first = Report(bench, 4);
        var line = bench.Open("main/legionella")!;
        Assert.Equal((BreachGrade.Laboratory, OwedAct.Resample, 2.0, "R. Example"), (line.Grade, line.Owed.Act, (line.Owed.By - line.Reading.At).TotalDays, line.Owed.Who));
        bench.Pass(TimeSpan.FromDays(2.1));
        Assert.False(bench.IsUp(RuleBook.ExceptionOverdue, "main/legionella"));
        Assert.True(bench.IsUp(RuleBook.ResampleOverdue, "main"));
        Report(bench, 2);
        Assert.Equal(RetestWord.Outside, bench.Open("main/legionella")!.Retest!.Word);
        Assert.IsType<Outcome.Done>(bench.Run(at => new LabResultClosed(at, bench.State.Pools[0].Laboratory[0].Outside!.ResultId, "J. Sample", "shower heads replaced")));
        Assert.Equal((Closing.ByPerson, "J. Sample", "shower heads replaced"), (bench.Closed("main/legionella").Closing, bench.Closed("main/legionella").ClosedBy, bench.Closed("main/legionella").ClosedWhy));
        Assert.Equal(first, bench.Closed("main/legionella").Reading.Id);
    }

    [Fact]
    public void A_resample_inside_closes_a_finding_and_a_corrected_report_says_that_there_was_none()
    {
        var bench = BreachBench.New(p => p.WithPool("main", m => m with { Laboratory = new() { Limits = [new(Organism.Legionella, 0, "invented code, s. 1")] } }));
        Report(bench, 4);
        bench.Minutes(60);
        Report(bench, 0);
        Assert.Equal(Closing.ByRetest, bench.Closed("main/legionella").Closing);
        bench.Minutes(60);
        var wrong = Report(bench, 40);
        Report(bench, 0, corrects: wrong);
        Assert.Equal(Closing.Corrected, bench.Closed("main/legionella").Closing);
        Assert.Empty(bench.State.Exceptions);
    }

    [Fact]
    public void A_probe_in_the_water_that_pools_share_makes_one_line_that_a_test_in_any_of_them_answers()
    {
        var bench = BreachBench.New(p => p.With("main-ph", x => x with { PoolId = null }));
        bench.Hold(TimeSpan.FromMinutes(2), (Hall.Ph, 8.6), (Hall.Flow, 1));
        Assert.Equal("hall/ph", Assert.Single(bench.State.Exceptions).Key);
        bench.Hold(TimeSpan.FromMinutes(3), (Hall.Ph, 7.4), (Hall.Flow, 1));
        bench.Tests(Measurand.Ph, 7.4, pool: "learner", method: TestMethod.Meter);
        Assert.Equal(Closing.ByRetest, bench.Closed("hall/ph").Closing);
    }

    private void Believed()
    {
        for (var i = 0; i < 3; i++)
        {
            _bench.Hold(TimeSpan.FromMinutes(10), (Hall.Ph, 7.4), (Hall.Flow, 1));
            _bench.CheckBeside("main-ph", 7.4, Bench.Test(Measurand.Ph, 7.4, TestMethod.Meter));
        }
    }

    private static Guid Report(Bench bench, double count, Guid? corrects = null)
    {
        var id = TimeOrderedId.Derive(bench.Now, $"sample {bench.Events.Count}");
        Assert.IsType<Outcome.Done>(bench.Run(at => new LabResultEntered(at, new LabResult
        {
            Id = id, PoolId = "main", Point = SamplePoint.Pool, SampledAt = at, ReportedAt = at, Laboratory = "Example laboratory", SampleNumber = "26-0417", By = "R. Example",
            Counts = [new(Organism.Legionella, count, CountSense.Counted, 100)], Corrects = corrects,
        }, [])));
        return id;
    }
}
