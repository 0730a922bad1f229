using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Live;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Live;

/// <summary>Combined chlorine as a screen gets it: with its uncertainty, and with what breaking it down would take, never as a dose.</summary>
public sealed class CombinedViewsTests
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 5, 4, 12);

    private static readonly PoolPlan Chlorinated = new() { Id = "main", Name = "Main pool", Disinfectant = Disinfectant.Chlorine };

    [Fact]
    public void High_combined_chlorine_comes_with_the_equation_the_rule_of_thumb_by_name_and_what_comes_first()
    {
        var view = CombinedViews.Of(Tested(1.0, 1.8), Chlorinated, Wording.English)!;
        Assert.Equal(0.8, view.Value!.Value, 1e-9);
        Assert.Equal(["breakpoint.stoichiometric", "breakpoint.rule_of_thumb", "breakpoint.dilute_first"], view.Breakpoint.Select(said => said.Code));
        Assert.Contains("0.4 mg/L", view.Breakpoint[0].Text, StringComparison.Ordinal);
        Assert.Contains("8.0 mg/L", view.Breakpoint[1].Text, StringComparison.Ordinal);
        Assert.Contains("rule of thumb", view.Breakpoint[1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_told_from_none_or_is_doubted_asks_for_nothing()
    {
        Assert.Empty(CombinedViews.Of(Tested(1.0, 1.05), Chlorinated, Wording.English)!.Breakpoint);
        var doubted = CombinedViews.Of(Tested(1.0, 1.8, suspect: true), Chlorinated, Wording.English)!;
        Assert.Empty(doubted.Breakpoint);
        Assert.Equal("combined.from_doubted_test", doubted.Remark!.Code);
    }

    [Fact]
    public void Bromine_water_has_no_combined_chlorine()
    {
        var view = CombinedViews.Of(Tested(1.0, 1.8), Chlorinated with { Disinfectant = Disinfectant.Bromine }, Wording.English)!;
        Assert.Null(view.Value);
        Assert.Equal("combined.bromine", view.Remark!.Code);
    }

    private static PoolState Tested(double free, double total, bool suspect = false)
    {
        var check = Guid.CreateVersion7();
        var pool = new PoolState { Id = "main" };
        return pool with
        {
            Manual = pool.Manual
                .SetItem(Measurand.FreeChlorine, new(new(Measurand.FreeChlorine, free, TestMethod.Photometer), Noon, suspect, check))
                .SetItem(Measurand.TotalChlorine, new(new(Measurand.TotalChlorine, total, TestMethod.Photometer), Noon, suspect, check)),
        };
    }
}
