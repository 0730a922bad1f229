using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Doubt never makes safe: it sets a clock for a test by hand.</summary>
public sealed class DoubtRuleTests
{
    private const string Chlorine = "main/free_chlorine";
    private static readonly TestResult Flash = new(Measurand.FreeChlorine, 1.0, TestMethod.Photometer, Look: CellLook.PinkFlash);

    [Fact, Evidence("R-041")]
    public void A_doubted_test_that_nobody_repeats_within_the_hour_is_an_alarm_until_a_sound_one_settles_it()
    {
        var bench = new Bench();
        bench.Check(Flash);
        Keep(bench, TimeSpan.FromMinutes(59));
        Assert.False(bench.IsUp(RuleBook.TestWanted, Chlorine));
        Keep(bench, TimeSpan.FromMinutes(2));
        Assert.True(bench.IsUp(RuleBook.TestWanted, Chlorine));
        Assert.Equal("test.repeat_wanted", bench.Alarm(RuleBook.TestWanted, Chlorine)!.Cause.Code);
        bench.Check(Bench.Test(Measurand.FreeChlorine, 1.4));
        Keep(bench, TimeSpan.FromMinutes(1));
        Assert.False(bench.IsUp(RuleBook.TestWanted, Chlorine));
    }

    [Fact, Evidence("R-041")]
    public void A_doubted_test_that_would_close_the_pool_has_a_quarter_of_an_hour()
    {
        var bench = new Bench();
        bench.Check(Flash with { Value = 0.05 });
        Keep(bench, TimeSpan.FromMinutes(14));
        Assert.False(bench.IsUp(RuleBook.TestWanted, Chlorine));
        Keep(bench, TimeSpan.FromMinutes(2));
        Assert.True(bench.IsUp(RuleBook.TestWanted, Chlorine));
    }

    [Fact, Evidence("R-041")]
    public void A_repeat_that_is_doubted_too_does_not_move_the_time()
    {
        var bench = new Bench();
        bench.Check(Flash);
        Keep(bench, TimeSpan.FromMinutes(40));
        bench.Check(Flash);
        Keep(bench, TimeSpan.FromMinutes(21));
        Assert.True(bench.IsUp(RuleBook.TestWanted, Chlorine));
    }

    [Fact, Evidence("R-041")]
    public void A_value_that_no_probe_watches_is_to_be_tested_by_hand_every_four_hours()
    {
        var bench = new Bench();
        bench.Hold(TimeSpan.FromMinutes(3), (Hall.Ph, 7.4));
        bench.Pass(TimeSpan.FromMinutes(230));
        Assert.True(bench.IsUp(RuleBook.Silent, "main-ph"));
        Assert.False(bench.IsUp(RuleBook.TestWanted, "main/ph"));
        bench.Pass(TimeSpan.FromMinutes(20));
        Assert.Equal("test.nothing_watches", bench.Alarm(RuleBook.TestWanted, "main/ph")?.Cause.Code);
        bench.Check(Bench.Test(Measurand.Ph, 7.4));
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.False(bench.IsUp(RuleBook.TestWanted, "main/ph"));
        bench.Pass(TimeSpan.FromHours(4));
        Assert.True(bench.IsUp(RuleBook.TestWanted, "main/ph"));
    }

    [Fact, Evidence("R-041")]
    public void Work_on_a_probe_that_is_begun_again_and_again_blinds_it_like_anything_else()
    {
        var bench = new Bench();
        bench.Hold(TimeSpan.FromMinutes(3), (Hall.Ph, 7.4));
        for (var half = 0; half < 9; half++)
        {
            bench.Run(at => new ProbeWorkBegun(at, TimeOrderedId.Derive(at, "work"), "main-ph", "R. Example"));
            bench.Hold(TimeSpan.FromMinutes(29), (Hall.Ph, 7.0));
            Assert.Equal(half == 8, bench.IsUp(RuleBook.TestWanted, "main/ph"));
        }

        bench.Check(Bench.Test(Measurand.Ph, 7.4));
        bench.Pass(TimeSpan.FromSeconds(5));
        Assert.False(bench.IsUp(RuleBook.TestWanted, "main/ph"));
    }

    [Fact]
    public void What_is_wanted_can_be_asked_before_it_is_overdue()
    {
        var bench = new Bench();
        Assert.Null(WantedTests.Of(bench.State, 0, Measurand.FreeChlorine));
        bench.Check(Flash);
        var wanted = WantedTests.Of(bench.State, 0, Measurand.FreeChlorine);
        Assert.Equal(TimeSpan.FromHours(1), wanted!.By - bench.Now);
    }

    [Fact, Evidence("R-041")]
    public void A_test_that_stands_alone_against_its_probe_is_a_doubt_too()
    {
        var bench = new Bench();
        bench.CheckBeside("main-ph", 7.4, Bench.Test(Measurand.Ph, 7.9));
        Assert.Equal(TimeSpan.FromHours(1), WantedTests.Of(bench.State, 0, Measurand.Ph)!.By - bench.Now);
    }

    [Fact]
    public void Doubts_survive_a_restart()
    {
        var bench = new Bench();
        bench.Check(Flash);
        bench.Restart();
        Assert.NotNull(WantedTests.Of(bench.State, 0, Measurand.FreeChlorine));
    }

    // All probes go on speaking, so that only the doubt is at work.
    private static void Keep(Bench bench, TimeSpan span)
    {
        for (var end = bench.Now + span; bench.Now < end;)
        {
            bench.Skip(TimeSpan.FromMinutes(1));
            bench.Says(Hall.Ph, "7.4");
            bench.Says(Hall.Chlorine, "1.4");
            bench.Says(Hall.Orp, "720");
            bench.Tick();
        }
    }
}
