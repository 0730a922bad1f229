using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
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
        Assert.Equal(bench.Events[^1], JournalCodec.Read(JournalCodec.Write(bench.Events))[^1]);
        bench.Restart();
        var washed = bench.State.Filters[0];
        bench.Load(Plan with { CirculationLowStated = 80 });
        Assert.Equal(washed, bench.State.Filters[0]);
        Assert.Contains(bench.Entries.Select(e => e.Body).OfType<PlanEntry>().Last().Effects, e => e.Facts.Any(f => f.Text == "circulation_low_m3h"));
    }

    private static void Wash(Bench bench) => bench.Run(at => new FilterWashed(at, TimeOrderedId.Derive(at, "wash"), "f1", "R. Example"));
}
