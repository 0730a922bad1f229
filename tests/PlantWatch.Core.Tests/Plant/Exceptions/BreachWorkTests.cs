using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Plant.Exceptions;

/// <summary>Incidents, jobs and calibrations in the course of a breach. Hyperchlorination at 20 mg/L and more after a loose stool: CDC, as IncidentTables has it.</summary>
public sealed class BreachWorkTests
{
    private readonly Bench _bench = BreachBench.New(plan => plan with
    {
        Pumps = [.. plan.Pumps.Select(p => p with { Doses = p.Id == "hypo-pump" ? ProductKind.SodiumHypochlorite : ProductKind.HydrochloricAcid })],
    });
    private readonly Guid _incident = TimeOrderedId.Derive(Hall.Nine, "incident");

    private ExceptionLine Line => _bench.Open(BreachBench.Chlorine)!;

    [Fact]
    public void Chlorine_that_the_plan_of_an_incident_asks_for_is_bound_to_it_and_owed_when_it_is_over()
    {
        Declare(IncidentKind.DiarrhoealStool);
        _bench.Minutes(60);
        _bench.TestsChlorine(22);
        Assert.Equal((_incident, OwedAct.Incident, false), (Line.IncidentId, Line.Owed.Act, Line.Owed.By.IsSet));
        Assert.Equal((StepKind.Incident, "exception.raised_for", "R. Example"), (Line.Action!.Kind, Line.Action.What!.Code, Line.Action.By));
        // The stop speaks all the same: what is bound is who owes what, and not the danger.
        Assert.True(_bench.IsUp(RuleBook.TestOutsideStop, BreachBench.Chlorine));
        _bench.Minutes(600);
        Assert.False(Line.Owed.IsOverdue(_bench.Now));
        Assert.Null(_bench.Alarm(RuleBook.ExceptionOverdue, BreachBench.Chlorine));

        _bench.Run(at => new IncidentClosed(at, _incident, "J. Sample", "hold reached"));
        Assert.Equal((null, OwedAct.ActAndRetest, 15.0), (Line.IncidentId, Line.Owed.Act, (Line.Owed.By - _bench.Now).TotalMinutes));
        _bench.TestsChlorine(1.8);
        Assert.Equal(Closing.ByRetest, _bench.Closed(BreachBench.Chlorine).Closing);
    }

    [Theory]
    [InlineData(0.1, IncidentKind.DiarrhoealStool)] // too little is never on purpose
    [InlineData(80, IncidentKind.DiarrhoealStool)] // far more than any plan asks for
    [InlineData(12, IncidentKind.FormedStool)] // asks for 2 mg/L, which the limits allow
    [InlineData(12, IncidentKind.DeckSpill)] // not in the water
    public void What_the_plan_does_not_ask_for_is_a_breach_as_any_other(double tested, IncidentKind kind)
    {
        Declare(kind);
        _bench.TestsChlorine(tested);
        Assert.Null(Line.IncidentId);
        Assert.True(Line.Owed.Act is OwedAct.ActAndRetest or OwedAct.Retest && Line.Owed.By.IsSet);
    }

    [Theory]
    [InlineData(0.1)] // the next test: far too little
    [InlineData(80)] // far more than any plan asks for
    public void A_bound_line_is_asked_again_by_every_later_test_and_owed_when_the_plan_no_longer_asks_for_it(double later)
    {
        Declare(IncidentKind.DiarrhoealStool);
        _bench.TestsChlorine(22);
        Assert.Equal(OwedAct.Incident, Line.Owed.Act);
        _bench.Minutes(30);
        _bench.TestsChlorine(later);
        Assert.Equal((null, OwedAct.ActAndRetest, true), (Line.IncidentId, Line.Owed.Act, Line.Owed.By.IsSet));
        Assert.Contains(Line.Steps, s => s is { Kind: StepKind.IncidentOver, By: "R. Example" });
        _bench.Minutes(20);
        Assert.True(Line.Owed.IsOverdue(_bench.Now));

        _bench.TestsChlorine(24);
        Assert.Equal((_incident, OwedAct.Incident), (Line.IncidentId, Line.Owed.Act));
        Assert.Single(Line.Steps, s => s is { Kind: StepKind.Incident, What.Code: "exception.raised_for" });
        // What was sampled before has no word any more.
        _bench.TestsChlorine(later, minutesAgo: 5);
        Assert.Equal(_incident, Line.IncidentId);
    }

    [Fact]
    public void Never_while_bathers_may_be_in_the_water_and_what_was_read_before_it_happened_is_not_of_it()
    {
        _bench.TestsChlorine(12);
        Declare(IncidentKind.DiarrhoealStool);
        Assert.Null(Line.IncidentId);
        _bench.TestsChlorine(1.5);
        Assert.Null(_bench.Open(BreachBench.Chlorine));
        _bench.TestsChlorine(22, minutesAgo: 20);
        Assert.Null(Line.IncidentId);

        var open = BreachBench.New();
        open.TestsChlorine(22);
        Assert.Equal((null, OwedAct.ActAndRetest), (open.Open(BreachBench.Chlorine)!.IncidentId, open.Open(BreachBench.Chlorine)!.Owed.Act));
    }

    [Fact]
    public void A_bound_line_comes_back_from_a_restart()
    {
        Declare(IncidentKind.DiarrhoealStool);
        _bench.TestsChlorine(22);
        _bench.Restart();
        Assert.Equal((_incident, OwedAct.Incident), (Line.IncidentId, Line.Owed.Act));
    }

    [Fact]
    public void An_incident_and_what_is_noted_in_it_are_actions_on_the_open_breaches_of_its_water()
    {
        _bench.Tests(Measurand.Ph, 7.9);
        Declare(IncidentKind.DiarrhoealStool);
        _bench.Run(at => new IncidentNoted(at, _incident, TimeOrderedId.Derive(at, "remark"), "J. Sample", "acid dosed by hand"));
        var line = _bench.Open("main/ph")!;
        Assert.Equal([StepKind.Incident, StepKind.Incident], line.Steps.Where(s => s.Kind == StepKind.Incident).Select(s => s.Kind));
        Assert.Contains(line.Steps, s => s is { Kind: StepKind.Incident, Text: "acid dosed by hand", By: "J. Sample" });
        Assert.Equal((OwedAct.Retest, true), (line.Owed.Act, line.Action!.IsAction));
    }

    [Theory]
    [InlineData("main-chlorine", JobState.Done, true)]
    [InlineData("hypo-pump", JobState.InHand, true)]
    [InlineData("main", JobState.Done, true)]
    [InlineData("hypo-pump", JobState.Open, false)]
    [InlineData("hypo-pump", JobState.WaitingForParts, false)]
    [InlineData("acid-pump", JobState.Done, false)]
    [InlineData("main-ph", JobState.Done, false)]
    [InlineData("learner", JobState.Done, false)]
    public void A_job_on_what_the_breach_is_about_is_an_action_and_moves_no_clock(string asset, JobState state, bool counts)
    {
        _bench.TestsChlorine(0.5);
        var due = Line.Owed.By;
        Assert.IsType<Outcome.Done>(_bench.Run(at => new JobWritten(at, new Job(TimeOrderedId.Derive(at, "job"), asset, "doses nothing", "primed", state, null, "T. Wren", at))));
        Assert.Equal((counts, counts ? OwedAct.Retest : OwedAct.ActAndRetest, due), (Line.Action is { Kind: StepKind.Job, Text: "primed", By: "T. Wren" }, Line.Owed.Act, Line.Owed.By));
    }

    [Fact]
    public void A_job_that_answers_the_alarm_of_the_breach_is_an_action_whatever_it_is_on()
    {
        _bench.Hold(TimeSpan.FromMinutes(2), (Hall.Ph, 8.6), (Hall.Flow, 1));
        var line = _bench.Open("main/ph")!;
        _bench.Run(at => new JobWritten(at, new Job(TimeOrderedId.Derive(at, "job"), "hypo-pump", "runs on", "isolated", JobState.Done, line.Reading.Id, "T. Wren", at)));
        Assert.Equal(StepKind.Job, _bench.Open("main/ph")!.Action!.Kind);
    }

    [Fact]
    public void A_calibration_of_the_probe_of_the_quantity_is_an_action_once_it_is_in_force_and_closes_nothing()
    {
        _bench.Tests(Measurand.Ph, 7.9);
        _bench.TestsChlorine(0.5);
        var id = TimeOrderedId.Derive(_bench.Now, "cal");
        _bench.Run(at => new CalibrationProposed(at, new Calibration { Id = id, ProbeId = "main-ph", Kind = CalibrationKind.Offset, Slope = 1, Offset = -0.2, ProposedBy = "R. Example" }));
        Assert.Null(_bench.Open("main/ph")!.Action);
        _bench.Run(at => new CalibrationDecided(at, id, CalibrationStatus.Approved, at, "J. Sample", "agreed"));
        Assert.Equal((StepKind.Calibrated, "J. Sample"), (_bench.Open("main/ph")!.Action!.Kind, _bench.Open("main/ph")!.Action!.By));
        Assert.Null(Line.Action);
    }

    private void Declare(IncidentKind kind) => Assert.IsType<Outcome.Done>(_bench.Run(at => new IncidentDeclared(at, new Incident
    {
        Id = _incident, PoolId = "main", Kind = kind, Authority = IncidentAuthority.UsCdc, DeclaredBy = "R. Example", HappenedAt = at,
    })));
}
