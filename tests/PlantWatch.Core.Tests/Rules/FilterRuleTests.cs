using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Circulation, filter pressure and the time between washes.</summary>
public sealed class FilterRuleTests
{
    private const string Flow = "hall/circulation";
    private const string Pressure = "hall/filter";

    // 480 m3 in 4 h: 120 m3/h by design, low under 90, standing under 9.
    private static readonly CircuitPlan Plan = Hall.Plan with
    {
        TurnoverHours = 4,
        Filters = [new("f1", "Filter 1", 3.1) { CleanKilopascals = 30, BackwashEvery = TimeSpan.FromDays(7) }],
        Probes =
        [
            .. Hall.Plan.Probes,
            new() { Id = "circulation", Name = "Circulation", Measurand = Measurand.CirculationFlow, Topic = Flow, Range = new(-5, 300) },
            new() { Id = "f1-pressure", Name = "Filter 1 pressure", Measurand = Measurand.FilterPressure, Topic = Pressure, Range = new(-50, 500), FilterId = "f1" },
        ],
    };

    [Theory, Evidence("R-050")]
    [InlineData(95, null)]
    [InlineData(70, "circulation.low")]
    [InlineData(2, "circulation.lost")]
    public void Circulation_is_low_under_three_quarters_of_its_design_and_lost_under_a_tenth_of_that(double flow, string? cause)
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(3), (Flow, flow));
        Assert.Equal(cause, bench.Alarm(RuleBook.CirculationLow, "circulation")?.Cause.Code);
    }

    [Fact, Evidence("R-050")]
    public void A_figure_of_the_plant_file_goes_before_the_design_and_silence_clears_nothing()
    {
        var bench = new Bench(Plan with { CirculationLowStated = 60 });
        bench.Hold(TimeSpan.FromMinutes(3), (Flow, 70));
        Assert.Null(bench.Alarm(RuleBook.CirculationLow, "circulation"));
        bench.Hold(TimeSpan.FromMinutes(3), (Flow, 50));
        bench.Says(Flow, "80");
        bench.Pass(TimeSpan.FromMinutes(10));
        Assert.True(bench.IsUp(RuleBook.CirculationLow, "circulation"));
        bench.Hold(TimeSpan.FromMinutes(3), (Flow, 80));
        Assert.False(bench.IsUp(RuleBook.CirculationLow, "circulation"));
    }

    [Fact, Evidence("R-051")]
    public void A_wash_is_due_when_the_pressure_has_risen_by_its_figure_and_not_before()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(5), (Flow, 110), (Pressure, 78));
        Assert.Null(bench.Alarm(RuleBook.FilterPressureRisen, "f1"));
        bench.Hold(TimeSpan.FromMinutes(5), (Flow, 110), (Pressure, 82));
        Assert.True(bench.IsUp(RuleBook.FilterPressureRisen, "f1"));
        bench.Hold(TimeSpan.FromMinutes(5), (Flow, 2), (Pressure, 0));
        Assert.True(bench.IsUp(RuleBook.FilterPressureRisen, "f1"));
    }

    [Fact, Evidence("R-051")]
    public void What_is_read_after_a_wash_is_clean_from_then_on()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(5), (Flow, 110), (Pressure, 85));
        Wash(bench);
        Assert.True(bench.IsUp(RuleBook.FilterPressureRisen, "f1"));
        bench.Hold(TimeSpan.FromMinutes(45), (Flow, 110), (Pressure, 40));
        Assert.False(bench.IsUp(RuleBook.FilterPressureRisen, "f1"));
        Assert.Equal(40, bench.State.Filters[0].CleanKilopascals);
        bench.Hold(TimeSpan.FromMinutes(5), (Flow, 110), (Pressure, 85));
        Assert.False(bench.IsUp(RuleBook.FilterPressureRisen, "f1"));
        bench.Hold(TimeSpan.FromMinutes(5), (Flow, 110), (Pressure, 91));
        Assert.True(bench.IsUp(RuleBook.FilterPressureRisen, "f1"));
    }

    [Fact, Evidence("R-051")]
    public void A_wash_that_cleaned_nothing_makes_no_new_measure_and_clears_nothing()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(5), (Flow, 110), (Pressure, 85));
        Wash(bench);
        bench.Hold(TimeSpan.FromMinutes(45), (Flow, 110), (Pressure, 84));
        Assert.True(bench.IsUp(RuleBook.FilterPressureRisen, "f1"));
        Assert.Equal(30, bench.State.Filters[0].CleanKilopascals);
    }

    [Fact, Evidence("R-052")]
    public void A_wash_is_overdue_after_its_days_and_one_that_is_noted_puts_it_right()
    {
        var bench = new Bench(Plan);
        bench.Skip(TimeSpan.FromDays(6.9));
        bench.Tick();
        Assert.Null(bench.Alarm(RuleBook.BackwashOverdue, "f1"));
        bench.Skip(TimeSpan.FromDays(0.2));
        bench.Tick();
        Assert.Equal("filter.never_washed", bench.Alarm(RuleBook.BackwashOverdue, "f1")?.Cause.Code);
        Wash(bench);
        bench.Tick();
        Assert.False(bench.IsUp(RuleBook.BackwashOverdue, "f1"));
        bench.Skip(TimeSpan.FromDays(7.1));
        bench.Tick();
        Assert.Equal("filter.wash_overdue", bench.Alarm(RuleBook.BackwashOverdue, "f1")?.Cause.Code);
    }

    [Fact]
    public void A_wash_is_taken_once_named_and_for_a_filter_that_is_there()
    {
        var bench = new Bench(Plan);
        var id = TimeOrderedId.Derive(bench.Now, "wash");
        Assert.IsType<Outcome.Done>(bench.Run(at => new FilterWashed(at, id, "f1", " R. Example ")));
        Assert.IsType<Outcome.AlreadyDone>(bench.Run(at => new FilterWashed(at, id, "f1", "R. Example")));
        Assert.IsType<Outcome.TurnedDown>(bench.Run(at => new FilterWashed(at, Guid.CreateVersion7(), "f9", "R. Example")));
        Assert.IsType<Outcome.TurnedDown>(bench.Run(at => new FilterWashed(at, Guid.CreateVersion7(), "f1", " ")));
        Assert.Equal("R. Example", Assert.Single(bench.Entries.Select(e => e.Body).OfType<FilterEntry>()).By);
    }

    [Fact]
    public void Washes_come_back_from_the_journal_and_filters_through_a_new_plan()
    {
        var bench = new Bench(Plan);
        Wash(bench);
        Begin(bench);
        bench.Run(at => new BackwashEnded(at, bench.State.Filters[0].Backwash.Id, "f1", "R. Example"));
        Assert.Equal(bench.Events.TakeLast(3), JournalCodec.Read(JournalCodec.Write(bench.Events)).TakeLast(3));
        bench.Restart();
        var washed = bench.State.Filters[0];
        bench.Load(Plan with { CirculationLowStated = 80 });
        Assert.Equal(washed, bench.State.Filters[0]);
        Assert.Contains(bench.Entries.Select(e => e.Body).OfType<PlanEntry>().Last().Effects, e => e.Facts.Any(f => f.Text == "circulation_low_m3h"));
    }

    [Fact, Evidence("R-050")]
    public void What_a_backwash_does_to_flow_cell_and_pressure_is_suppressed_and_says_by_what()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(3), (Flow, 110), (Pressure, 82), (Hall.Flow, 1));
        Begin(bench);
        bench.Hold(TimeSpan.FromMinutes(8), (Flow, 0), (Pressure, 2), (Hall.Flow, 0));
        foreach (var (rule, subject) in new[] { (RuleBook.CirculationLow, "circulation"), (RuleBook.NoSampleFlow, "main-flow"), (RuleBook.FilterPressureRisen, "f1") })
            Assert.Equal((true, "suppressed.backwash"), (bench.Alarm(rule, subject)!.Suppressed, bench.Alarm(rule, subject)!.SuppressedBy!.Code));
        // The pressure of water that goes backwards has cleaned nothing.
        Assert.True(bench.IsUp(RuleBook.FilterPressureRisen, "f1"));
        Wash(bench);
        // What comes back within minutes calls nobody on its way.
        bench.Hold(TimeSpan.FromMinutes(1), (Flow, 40), (Pressure, 60), (Hall.Flow, 0));
        Assert.True(bench.Alarm(RuleBook.NoSampleFlow, "main-flow")!.Suppressed);
        bench.Hold(TimeSpan.FromMinutes(5), (Flow, 118), (Pressure, 31), (Hall.Flow, 1));
        Assert.DoesNotContain(bench.State.Alarms.Values, a => a is { Active: true } or { Suppressed: true } && a.Rule is "R-050" or "R-051" or "R-022");
        Assert.Equal([BackwashChange.Begun, BackwashChange.Washed], bench.Entries.Select(e => e.Body).OfType<BackwashEntry>().Select(b => b.Change));
    }

    [Fact, Evidence("R-050")]
    public void Water_that_still_stands_half_an_hour_after_a_backwash_began_calls_somebody()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(3), (Flow, 110));
        Begin(bench);
        bench.Hold(TimeSpan.FromMinutes(29), (Flow, 0));
        Assert.Equal(AlarmState.SuppressedByDesign, bench.Alarm(RuleBook.CirculationLow, "circulation")!.State);
        bench.Hold(TimeSpan.FromMinutes(2), (Flow, 0));
        Assert.Equal(AlarmState.Unacknowledged, bench.Alarm(RuleBook.CirculationLow, "circulation")!.State);
        Assert.Equal(BackwashChange.RanOut, bench.Entries.Select(e => e.Body).OfType<BackwashEntry>().Last().Change);
    }

    [Fact]
    public void A_backwash_that_is_given_up_suppresses_nothing_any_more()
    {
        var bench = new Bench(Plan);
        Begin(bench);
        bench.Hold(TimeSpan.FromMinutes(3), (Flow, 0));
        bench.Run(at => new BackwashEnded(at, bench.State.Filters[0].Backwash.Id, "f1", "R. Example"));
        bench.Hold(TimeSpan.FromMinutes(1), (Flow, 0));
        Assert.Equal((AlarmState.Unacknowledged, false), (bench.Alarm(RuleBook.CirculationLow, "circulation")!.State, bench.State.Filters[0].WashedAt.IsSet));
    }

    [Fact]
    public void A_sample_taken_during_a_backwash_is_compared_with_no_probe()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(5), (Flow, 110), (Hall.Flow, 1), (Hall.Ph, 7.4));
        Begin(bench);
        bench.Hold(TimeSpan.FromMinutes(1), (Flow, 0), (Hall.Ph, 7.4));
        bench.CheckBeside("main-ph", 7.4, Bench.Test(Measurand.Ph, 7.42));
        Assert.Equal("pair.backwash", bench.Entries.Select(e => e.Body).OfType<JudgementEntry>().Single(j => j.Judgement.ProbeId == "main-ph").Judgement.Reasons[0].Code);
    }

    [Fact, Evidence("R-050")]
    public void A_second_backwash_on_end_says_why_and_a_third_is_written_down_and_silences_nothing()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(3), (Flow, 110));
        Begin(bench);
        bench.Hold(TimeSpan.FromMinutes(31), (Flow, 0));
        Assert.Equal("backwash.again_why", Refused(bench, null));
        Assert.Equal("backwash.again_why", Refused(bench, " "));
        Assert.Null(Refused(bench, "coagulant went through, bed still cloudy"));
        Assert.Equal("coagulant went through, bed still cloudy", bench.Entries.Select(e => e.Body).OfType<BackwashEntry>().Last().Why);
        bench.Hold(TimeSpan.FromMinutes(29), (Flow, 0));
        Assert.Equal(AlarmState.SuppressedByDesign, bench.Alarm(RuleBook.CirculationLow, "circulation")!.State);
        bench.Hold(TimeSpan.FromMinutes(2), (Flow, 0));

        // An hour of quiet is used up: whatever is said, the flow alarm calls.
        Assert.Null(Refused(bench, "still cloudy"));
        bench.Hold(TimeSpan.FromMinutes(1), (Flow, 0));
        Assert.True(bench.State.Filters[0].Backwash.IsUnderWay(bench.Now));
        Assert.Equal((AlarmState.Unacknowledged, false), (bench.Alarm(RuleBook.CirculationLow, "circulation")!.State, bench.Alarm(RuleBook.CirculationLow, "circulation")!.Suppressed));

        // Half a day after the first of them there is some quiet again.
        bench.Pass(TimeSpan.FromHours(11.3));
        Begin(bench);
        bench.Hold(TimeSpan.FromMinutes(2), (Flow, 0));
        Assert.Equal(AlarmState.SuppressedByDesign, bench.Alarm(RuleBook.CirculationLow, "circulation")!.State);
    }

    [Fact, Evidence("R-051")]
    public void A_filter_whose_pressure_asks_for_it_is_washed_again_without_a_word_and_two_short_washes_leave_quiet_for_more()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(5), (Flow, 110), (Pressure, 85));
        Assert.True(bench.IsUp(RuleBook.FilterPressureRisen, "f1"));
        Begin(bench);
        bench.Hold(TimeSpan.FromMinutes(10), (Flow, 0));
        Wash(bench);
        bench.Hold(TimeSpan.FromMinutes(10), (Flow, 110), (Pressure, 84));
        Assert.Null(Refused(bench, null));
        bench.Hold(TimeSpan.FromMinutes(10), (Flow, 0));
        Wash(bench);
        bench.Hold(TimeSpan.FromMinutes(10), (Flow, 110), (Pressure, 31));
        Assert.Equal("backwash.again_why", Refused(bench, null));
        Assert.Equal(30, BackwashQuiet.Left(bench.State.Filters[0], bench.Now).TotalMinutes, 0.01);
        bench.Pass(TimeSpan.FromHours(2));
        Assert.Null(Refused(bench, null));
        bench.Restart();
        Assert.Equal(30, bench.State.Filters[0].Backwash.Allowance.TotalMinutes, 0.01);
    }

    [Fact]
    public void A_second_backwash_without_a_word_that_a_journal_of_before_holds_was_taken_and_is_again()
    {
        var bench = new Bench(Plan);
        Begin(bench);
        bench.Pass(TimeSpan.FromMinutes(31));
        var again = TimeOrderedId.Derive(bench.Now, "again");
        BackwashBegun Begun(Instant at) => new(at, again, "f1", "R. Example");
        Assert.Equal("backwash.again_why", BackwashWhy.Objection(bench.State, Begun(bench.Now))?.Remarks[0].Reason.Code);
        Assert.IsType<Outcome.Done>(bench.Run(Begun));
        // Sent again it is answered as the first time, also when it is over.
        bench.Pass(TimeSpan.FromMinutes(31));
        Assert.Null(BackwashWhy.Objection(bench.State, Begun(bench.Now)));
        Assert.IsType<Outcome.AlreadyDone>(bench.Run(Begun));
    }

    // As the interface asks: at the door first.
    private static string? Refused(Bench bench, string? why)
    {
        BackwashBegun Begun(Instant at) => new(at, TimeOrderedId.Derive(at, "backwash"), "f1", "R. Example") { Why = why };
        var no = BackwashWhy.Objection(bench.State, Begun(bench.Now)) ?? bench.Run(Begun) as Outcome.TurnedDown;
        return no?.Remarks[0].Reason.Code;
    }

    [Fact]
    public void A_pump_that_doses_into_a_backwash_is_told_at_once()
    {
        var bench = new Bench(Plan);
        Begin(bench);
        bench.Says(Hall.AcidState, "running");
        bench.Hold(TimeSpan.FromMinutes(1), (Flow, 0));
        Assert.Equal(AlarmState.Unacknowledged, bench.Alarm(RuleBook.DosesWithoutFlow, Plan.Pumps[0].Id)!.State);
    }

    [Fact]
    public void A_backwash_is_begun_by_one_person_at_a_time_by_name_and_ended_by_its_id()
    {
        var bench = new Bench(Plan);
        Begin(bench);
        var id = bench.State.Filters[0].Backwash.Id;
        string? Code(Func<Instant, PlantEvent> said) => bench.Run(said) is Outcome.TurnedDown no ? no.Remarks[0].Reason.Code : null;
        Assert.IsType<Outcome.AlreadyDone>(bench.Run(at => new BackwashBegun(at, id, "f1", "R. Example")));
        Assert.Equal("backwash.under_way", Code(at => new BackwashBegun(at, Guid.CreateVersion7(), "f1", "J. Sample")));
        Assert.Equal("filter.unknown", Code(at => new BackwashBegun(at, Guid.CreateVersion7(), "f9", "J. Sample")));
        Assert.Equal("field.required", Code(at => new BackwashBegun(at, Guid.CreateVersion7(), "f1", " ")));
        Assert.Equal("backwash.unknown", Code(at => new BackwashEnded(at, Guid.CreateVersion7(), "f1", "J. Sample")));
        Assert.Null(Code(at => new BackwashEnded(at, id, "f1", "J. Sample")));
        Assert.IsType<Outcome.AlreadyDone>(bench.Run(at => new BackwashEnded(at, id, "f1", "J. Sample")));
    }

    private static void Begin(Bench bench) => bench.Run(at => new BackwashBegun(at, TimeOrderedId.Derive(at, "backwash"), "f1", "R. Example"));

    private static void Wash(Bench bench) => bench.Run(at => new FilterWashed(at, TimeOrderedId.Derive(at, "wash"), "f1", "R. Example"));
}
