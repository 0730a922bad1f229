using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Reagents that are out of date, and what a test made with one is worth.</summary>
public sealed class ReagentRuleTests
{
    private static readonly TimeSpan Day = TimeSpan.FromDays(1);

    private static readonly CircuitPlan Plan = Hall.Plan with
    {
        Reagents =
        [
            new() { Id = "dpd", Name = "DPD 1", Tests = [Measurand.FreeChlorine, Measurand.TotalChlorine], Use = ReagentUse.Photometer, LifeAfterOpening = 90 * Day, IsWatchedHere = true },
            new() { Id = "red", Name = "Phenol red", Tests = [Measurand.Ph] },
        ],
    };

    // The hall's clock shows 09:00 on 5 May 2026.
    private static readonly DateOnly Today = new(2026, 5, 5);

    [Theory]
    [InlineData(ReagentUse.Photometer, TestMethod.Photometer, true)]
    [InlineData(ReagentUse.Photometer, TestMethod.Comparator, false)]
    [InlineData(ReagentUse.Comparator, TestMethod.Comparator, true)]
    [InlineData(ReagentUse.Comparator, TestMethod.TabletCount, false)]
    [InlineData(ReagentUse.TabletCount, TestMethod.TabletCount, true)]
    [InlineData(ReagentUse.TabletCount, TestMethod.Photometer, false)]
    [InlineData(ReagentUse.TabletCount, TestMethod.Unknown, true)]
    [InlineData(ReagentUse.Comparator, TestMethod.Meter, false)]
    public void A_result_is_made_with_the_reagent_of_its_method_and_one_without_a_method_may_be(ReagentUse use, TestMethod method, bool concerns) =>
        Assert.Equal(concerns, ReagentWatch.Concerns(new() { Id = "r", Name = "Reagent", Tests = [Measurand.Ph], Use = use }, new(Measurand.Ph, 7.4, method)));

    [Fact]
    public void Two_weeks_before_its_end_another_is_to_be_ordered() => Assert.Equal(14 * Day, ReagentWatch.OrderBefore);

    [Fact, Evidence("R-042")]
    public void A_lot_is_good_to_the_end_of_its_last_day_on_the_clock_of_the_site()
    {
        var bench = new Bench(Plan);
        Open(bench, "dpd", Today);
        bench.Skip(TimeSpan.FromHours(14.9));
        bench.Tick();
        Assert.False(bench.IsUp(RuleBook.ReagentOutOfDate, "dpd"));
        bench.Skip(TimeSpan.FromHours(0.2));
        bench.Tick();
        Assert.Equal("reagent.out_of_date", bench.Alarm(RuleBook.ReagentOutOfDate, "dpd")?.Cause.Code);
        Open(bench, "dpd", Today.AddYears(1));
        Assert.False(bench.IsUp(RuleBook.ReagentOutOfDate, "dpd"));
    }

    [Fact, Evidence("R-042")]
    public void A_buffer_that_is_out_of_date_alarms_and_no_test_is_doubted_for_it()
    {
        var bench = new Bench(Plan with { Reagents = [new() { Id = "buffer", Name = "Buffer pH 7", Tests = [Measurand.Ph], Use = ReagentUse.Calibration, LifeAfterOpening = 90 * Day, IsWatchedHere = true }] });
        Open(bench, "buffer", Today.AddYears(1));
        bench.Skip(TimeSpan.FromDays(91));
        bench.Tick();
        Assert.Equal("reagent.open_too_long", bench.Alarm(RuleBook.ReagentOutOfDate, "buffer")?.Cause.Code);
        foreach (var method in Enum.GetValues<TestMethod>())
            Assert.False(ReagentWatch.Concerns(bench.State.Plan.Reagents[0], new TestResult(Measurand.Ph, 7.4, method)));
    }

    [Fact, Evidence("R-042")]
    public void What_has_been_open_too_long_is_out_of_date_whatever_is_printed()
    {
        var bench = new Bench(Plan);
        Open(bench, "dpd", Today.AddYears(1), ago: 89.9 * Day);
        Assert.False(bench.IsUp(RuleBook.ReagentOutOfDate, "dpd"));
        bench.Skip(0.2 * Day);
        bench.Tick();
        Assert.Equal("reagent.open_too_long", bench.Alarm(RuleBook.ReagentOutOfDate, "dpd")?.Cause.Code);
        bench.Load(Plan with { Reagents = [Plan.Reagents[0] with { LifeAfterOpening = 180 * Day }, Plan.Reagents[1]] });
        bench.Tick();
        Assert.False(bench.IsUp(RuleBook.ReagentOutOfDate, "dpd"));
    }

    [Fact, Evidence("R-042")]
    public void Of_all_circuits_one_tells_and_all_doubt()
    {
        var bench = new Bench(Plan with { Reagents = [Plan.Reagents[0] with { IsWatchedHere = false }] });
        Open(bench, "dpd", Today.AddDays(-1));
        bench.Tick();
        Assert.Null(bench.Alarm(RuleBook.ReagentOutOfDate, "dpd"));
        Assert.Equal("reagent.out_of_date", Remark(bench.Check(Bench.Test(Measurand.FreeChlorine, 1.5))));
    }

    [Fact, Evidence("R-042")]
    public void A_test_with_it_raises_what_it_shows_and_clears_nothing_until_one_with_a_fresh_reagent()
    {
        var bench = new Bench(Plan);
        bench.Check(Bench.Test(Measurand.FreeChlorine, 0.6));
        Assert.True(bench.IsUp(RuleBook.TestOutsideLimit, "main/free_chlorine"));
        Open(bench, "dpd", Today.AddDays(-1));
        bench.Pass(TimeSpan.FromMinutes(10));
        Assert.Equal("reagent.out_of_date", Remark(bench.Check(Bench.Test(Measurand.FreeChlorine, 1.5))));
        Assert.True(bench.IsUp(RuleBook.TestOutsideLimit, "main/free_chlorine"));
        Assert.True(bench.IsUp(RuleBook.RepeatTest, "main/free_chlorine"));
        bench.Pass(TimeSpan.FromMinutes(10));
        bench.Check(Bench.Test(Measurand.FreeChlorine, 0.1));
        Assert.True(bench.IsUp(RuleBook.TestOutsideStop, "main/free_chlorine"));
        Open(bench, "dpd", Today.AddYears(1));
        bench.Pass(TimeSpan.FromMinutes(10));
        bench.Check(Bench.Test(Measurand.FreeChlorine, 1.5));
        foreach (var rule in new[] { RuleBook.TestOutsideStop, RuleBook.TestOutsideLimit, RuleBook.RepeatTest }) Assert.False(bench.IsUp(rule, "main/free_chlorine"), rule.Number);
    }

    [Fact, Evidence("R-042")]
    public void A_test_with_it_weighs_on_no_probe()
    {
        var bench = new Bench(Plan);
        Open(bench, "red", Today.AddDays(-1));
        bench.Hold(TimeSpan.FromMinutes(5), (Hall.Flow, 1), (Hall.Ph, 7.4));
        bench.CheckBeside("main-ph", 7.4, Bench.Test(Measurand.Ph, 7.42));
        var judged = bench.Entries.Select(e => e.Body).OfType<JudgementEntry>().Single(j => j.Judgement.ProbeId == "main-ph").Judgement;
        Assert.Equal((Verdict.NotComparable, "reagent.out_of_date"), (judged.Verdict, judged.Reasons[0].Code));
        Assert.False(bench.Probe("main-ph").Trust.Bias.IsKnown);
    }

    [Theory]
    [InlineData(TestMethod.Photometer, true), InlineData(TestMethod.Unknown, true), InlineData(TestMethod.Comparator, false), InlineData(TestMethod.Meter, false)]
    public void Only_tests_that_are_made_with_it_are_doubted(TestMethod method, bool doubted)
    {
        var bench = new Bench(Plan);
        Open(bench, "dpd", Today.AddDays(-1));
        bench.Check(Bench.Test(Measurand.FreeChlorine, 1.5, method), Bench.Test(Measurand.Ph, 7.4));
        Assert.Equal((doubted, false), (bench.State.Pools[0].Manual[Measurand.FreeChlorine].Suspect, bench.State.Pools[0].Manual[Measurand.Ph].Suspect));
    }

    [Fact]
    public void A_test_told_late_is_judged_by_the_lot_of_its_time()
    {
        var bench = new Bench(Plan);
        Open(bench, "dpd", Today.AddDays(-1), ago: 10 * Day);
        Open(bench, "dpd", Today.AddYears(1), ago: TimeSpan.FromHours(1));
        Assert.Null(Remark(bench.Check(Bench.Test(Measurand.FreeChlorine, 1.5))));
        Assert.Equal("reagent.out_of_date", Remark(bench.Check(bench.CheckOf(Bench.Test(Measurand.FreeChlorine, 1.5)) with { SampledAt = bench.Now - TimeSpan.FromHours(2) })));
        // Before the first lot that anybody noted nothing is known.
        Assert.Null(Remark(bench.Check(bench.CheckOf(Bench.Test(Measurand.TotalChlorine, 1.6)) with { SampledAt = bench.Now - 11 * Day }), "reagent.out_of_date"));
    }

    [Fact]
    public void A_lot_is_noted_once_by_name_with_a_number_and_a_day_that_can_be()
    {
        var bench = new Bench(Plan);
        var lot = new ReagentLot(TimeOrderedId.Derive(bench.Now, "lot"), " 26-41 ", Today.AddYears(1), bench.Now, "R. Example");
        string? Code(string reagent, ReagentLot said) => bench.Run(at => new ReagentOpened(at, reagent, said)) is Outcome.TurnedDown no ? no.Remarks[0].Reason.Code : null;
        Assert.Null(Code("dpd", lot));
        Assert.IsType<Outcome.AlreadyDone>(bench.Run(at => new ReagentOpened(at, "dpd", lot)));
        Assert.Equal("id.taken", Code("dpd", lot with { LastDay = Today }));
        var other = lot with { Id = Guid.CreateVersion7() };
        Assert.Equal("reagent.unknown", Code("none", other));
        Assert.Equal("field.required", Code("dpd", other with { Number = " " }));
        Assert.Equal("field.required", Code("dpd", other with { NotedBy = "" }));
        Assert.Equal("reagent.day_astray", Code("dpd", other with { LastDay = default }));
        Assert.Equal("reagent.opened_astray", Code("dpd", other with { OpenedAt = bench.Now + Day }));
        Assert.Equal("reagent.opened_astray", Code("dpd", other with { OpenedAt = default }));
        Assert.Equal("26-41", Assert.Single(bench.State.Reagents[0].Lots).Number);
    }

    [Fact]
    public void Lots_come_back_from_the_journal_and_a_restart_and_through_a_new_plan_and_the_oldest_are_let_go()
    {
        var bench = new Bench(Plan);
        for (var i = 0; i < ReagentState.Remembered + 2; i++) Open(bench, "dpd", Today.AddDays(i), ago: (30 - i) * Day);
        Assert.Equal(bench.Events[^1], JournalCodec.Read(JournalCodec.Write(bench.Events))[^1]);
        bench.Restart();
        Assert.Equal((ReagentState.Remembered, Today.AddDays(2), Today.AddDays(ReagentState.Remembered + 1)), (bench.State.Reagents[0].Lots.Length, bench.State.Reagents[0].Lots[0].LastDay, bench.State.Reagents[0].Lots[^1].LastDay));
        bench.Load(Plan with { Reagents = [Plan.Reagents[1], Plan.Reagents[0] with { Name = "DPD" }] });
        Assert.Equal((0, ReagentState.Remembered), (bench.State.Reagents[0].Lots.Length, bench.State.Reagents[1].Lots.Length));
        Assert.Contains(bench.Entries.Select(e => e.Body).OfType<PlanEntry>().Last().Effects, e => e.Code == "plan.reagents_changed");
        bench.Load(Plan with { Reagents = [] });
        Assert.Null(bench.Alarm(RuleBook.ReagentOutOfDate, "dpd"));
    }

    private static string? Remark(Outcome taken, string? code = null) =>
        Assert.IsType<Outcome.CheckTaken>(taken).Remarks.Select(r => r.Reason.Code).FirstOrDefault(c => code is null ? c.StartsWith("reagent.", StringComparison.Ordinal) : c == code);

    private static void Open(Bench bench, string reagent, DateOnly lastDay, TimeSpan ago = default) =>
        Assert.IsType<Outcome.Done>(bench.Run(at => new ReagentOpened(at, reagent, new(TimeOrderedId.Derive(at, "lot"), "26-41", lastDay, at - ago, "R. Example"))));
}
