using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry.Chlorine;

public class BreakpointTests
{
    [Fact]
    public void Chlorine_to_ammonia_nitrogen_by_mass()
    {
        var row = ReferenceRows.Of("Chemistry", "chlorine_values.csv").Single(row => row["id"] == "CL-32");
        Assert.Equal(7.6, Breakpoint.ToAmmoniaNitrogen, row.Number("tolerance"));
        Assert.StartsWith("7.6", row["expected"], StringComparison.Ordinal);
        Assert.Equal(Breakpoint.ToAmmoniaNitrogen / 2, Breakpoint.ForAmmonia(0.5).Value, 1e-12);
    }

    [Fact]
    public void The_ten_times_rule_is_named_beside_what_the_equation_asks_for()
    {
        // CL-33 (common practice): CC 0.8, FC 1.0: raise to 8.0, add 7.0. The equation asks for half of 0.8.
        var need = Breakpoint.Of(Combined(1.8, 1.0), FreeChlorine.From(1.0))!;
        Assert.Equal(8.0, need.RuleOfThumbLevel, 1e-9);
        Assert.Equal(7.0, need.RuleOfThumbRise, 1e-9);
        Assert.Equal(0.4, need.Stoichiometric, 1e-12);
        Assert.Equal(["breakpoint.stoichiometric", "breakpoint.rule_of_thumb", "breakpoint.dilute_first"], need.Says.Select(reason => reason.Code));
    }

    [Fact]
    public void A_pool_already_above_ten_times_is_not_lowered() => Assert.Equal(0, Breakpoint.Of(Combined(3.1, 3), FreeChlorine.From(3))!.RuleOfThumbRise);

    [Fact]
    public void Combined_chlorine_that_the_tests_cannot_tell_from_none_is_called_that() =>
        Assert.Equal("combined.not_told_from_zero", Breakpoint.Of(Combined(1.1, 1.0), FreeChlorine.From(1.0))!.Says[0].Code);

    [Fact]
    public void A_rejected_pair_asks_for_nothing() => Assert.Null(Breakpoint.Of(Combined(1.0, 2.0), FreeChlorine.From(2.0)));

    private static CombinedResult Combined(double total, double free) => CombinedCalculation.Of(TotalChlorine.From(total), 0.1, FreeChlorine.From(free), 0.1);

    [Theory]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    public void Ammonia_out_of_range_is_named(double ammonia) => Assert.Equal("input_ammonia", Breakpoint.ForAmmonia(ammonia).Why!.Facts[0].Text);
}
