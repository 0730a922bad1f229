using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Rules.Packs;
using PlantWatch.Core.Tests.Plant.Fold;
using PlantWatch.Core.Tests.Rules.Packs;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Water that eats or coats its pool is told by the newest full set of tests, and only when the tests can tell it.</summary>
public sealed class BalanceRuleTests
{
    [Fact, Evidence("R-018")]
    public void Soft_acid_water_is_aggressive_and_hard_alkaline_water_scales()
    {
        Assert.Equal("balance.aggressive", Tested(7.0, 30, 60).Alarm(RuleBook.OutOfBalance, "main")?.Cause.Code);
        Assert.Equal("balance.scaling", Tested(8.1, 220, 600).Alarm(RuleBook.OutOfBalance, "main")?.Cause.Code);
        Assert.Null(Tested(7.5, 100, 250).Alarm(RuleBook.OutOfBalance, "main"));
    }

    [Fact, Evidence("R-018")]
    public void An_index_outside_by_less_than_its_tests_can_tell_raises_nothing_and_clears_nothing()
    {
        // About -0.56 where the tests leave about 0.1: beyond the band and not beyond doubt.
        var bench = Tested(7.27, 65, 150);
        Assert.Null(bench.Alarm(RuleBook.OutOfBalance, "main"));
        var standing = Tested(7.0, 30, 60);
        Test(standing, 7.27, 65, 150);
        Assert.True(standing.IsUp(RuleBook.OutOfBalance, "main"));
    }

    [Fact, Evidence("R-018")]
    public void A_newer_set_inside_the_band_clears_it()
    {
        var bench = Tested(7.0, 30, 60);
        Test(bench, 7.5, 100, 250);
        Assert.False(bench.IsUp(RuleBook.OutOfBalance, "main"));
    }

    [Fact, Evidence("R-018")]
    public void Without_calcium_or_with_an_old_ph_nothing_is_said()
    {
        var bench = new Bench();
        bench.Check(Bench.Test(Measurand.Ph, 7.0, Core.Readings.TestMethod.Meter), Bench.Test(Measurand.TotalAlkalinity, 30), Bench.Test(Measurand.Temperature, 28));
        Assert.Null(bench.Alarm(RuleBook.OutOfBalance, "main"));
        bench.Skip(TimeSpan.FromHours(13));
        bench.Check(Bench.Test(Measurand.CalciumHardness, 60));
        Assert.Null(bench.Alarm(RuleBook.OutOfBalance, "main"));
    }

    [Fact, Evidence("R-018")]
    public void A_confirmed_row_of_the_pack_on_the_index_is_watched_too_and_only_while_it_is_in_force()
    {
        // 0.0 to 0.5, as a council in England prints it (published on its page).
        var row = PrintedRows.Row("lsi", PackQuantity.SaturationIndex, 0, 0.5, "a council's page");
        var bench = new Bench(Hall.Plan with { Pack = PrintedRows.Pack(row), People = [new("e", "E. Example", PersonRole.Engineer)] });
        Test(bench, 7.35, 70, 170);
        Assert.Null(bench.Alarm(RuleBook.OutOfBalance, "main"));
        bench.Run(at => new PackRowConfirmed(at, "made-up", "lsi", RowDigest.Of(row), "E. Example", "the document in hand", true));
        var alarm = bench.Alarm(RuleBook.OutOfBalance, "main")!;
        Assert.Equal(("balance.under_limit", 0.0, "lsi"), (alarm.Cause.Code, alarm.Cause.Facts[3].Number, alarm.Cause.Facts[4].Text));
        bench.Run(at => new PackRowRevoked(at, "made-up", "lsi", "E. Example", "the wrong sheet"));
        Assert.False(bench.IsUp(RuleBook.OutOfBalance, "main"));
    }

    [Fact]
    public void The_band_is_one_figure_everywhere() =>
        Assert.Equal(IndexResult.Tolerance, UsualBands.Of(Hall.Plan.Pools[0]).Single(b => b.Figure == PlannedFigure.SaturationIndex).High);

    private static Bench Tested(double ph, double alkalinity, double calcium)
    {
        var bench = new Bench();
        Test(bench, ph, alkalinity, calcium);
        return bench;
    }

    private static void Test(Bench bench, double ph, double alkalinity, double calcium)
    {
        // Days apart, so that a change is no doubt.
        bench.Skip(TimeSpan.FromDays(3));
        bench.Check(Bench.Test(Measurand.Ph, ph, Core.Readings.TestMethod.Meter), Bench.Test(Measurand.TotalAlkalinity, alkalinity), Bench.Test(Measurand.CalciumHardness, calcium), Bench.Test(Measurand.Temperature, 28));
    }
}
