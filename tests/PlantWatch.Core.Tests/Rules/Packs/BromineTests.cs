using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Opening;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Rules.Packs;
using PlantWatch.Core.Tests.Plant.Fold;
using static PlantWatch.Core.Tests.Rules.Packs.PrintedRows;

namespace PlantWatch.Core.Tests.Rules.Packs;

/// <summary>A pool that is run with bromine: total bromine by hand, as Br2. Rows of Quebec Q-2, r. 39, s. 5 and 17 (published): 2 to 5 mg/L, closed under 0.6.</summary>
public sealed class BromineTests
{
    private static readonly PackRow Standard = Row("bromine", PackQuantity.Bromine, 2, 5, "Q-2, r. 39, s. 5");
    private static readonly PackRow Closes = Row("bromine-closure", PackQuantity.Bromine, 0.6, null, "Q-2, r. 39, s. 17") with { Grade = RowGrade.Closure };

    private readonly Bench _bench = new(Hall.Plan with
    {
        Pools = [Hall.Plan.Pools[0] with { Limits = [], Duties = [], Disinfectant = Disinfectant.Bromine }, .. Hall.Plan.Pools.Skip(1)],
        Pack = Pack(Standard, Closes),
        People = [new("e", "E. Example", PersonRole.Engineer)],
    });

    [Theory, Evidence("R-007"), Evidence("R-012"), Evidence("R-013")]
    [InlineData(3.0, false, false, false)]
    [InlineData(1.0, true, false, false)]
    [InlineData(7.0, true, false, false)]
    [InlineData(0.55, true, true, false)]
    [InlineData(0.4, true, true, true)] // 0.2 mg/L of chlorine by the mole is 0.45 of bromine
    public void A_test_is_held_against_its_rows_and_against_the_stop_that_always_holds(double tested, bool outside, bool closes, bool stops)
    {
        Confirm(Standard);
        Confirm(Closes);
        _bench.Check(Bench.Test(Measurand.Bromine, tested));
        Assert.Equal((outside, closes, stops), (Up(RuleBook.TestOutsideLimit), Up(RuleBook.TestOutsideClosure), Up(RuleBook.TestOutsideStop)));
        Assert.Equal(outside, _bench.State.Exceptions.Any(l => l.Key == "main/bromine"));
    }

    [Fact]
    public void Its_row_concerns_only_a_pool_that_is_run_with_it() =>
        Assert.Equal((true, false), (LimitsMaker.IsLimit(Standard, _bench.State.Plan.Pools[0]), LimitsMaker.IsLimit(Standard, Hall.Plan.Pools[0])));

    [Fact]
    public void The_same_colour_read_as_bromine_has_the_chlorines_doubt_times_its_weight()
    {
        var (bromine, chlorine) = (MethodUncertainty.Of(Bench.Test(Measurand.Bromine, 1)), MethodUncertainty.Of(Bench.Test(Measurand.FreeChlorine, 1 / Bromine.PerChlorine)));
        Assert.Equal(Bromine.PerChlorine * chlorine.Expanded, bromine.Expanded, 3);
        Assert.Equal(159.808 / 70.906, Bromine.PerChlorine, 0.005);
    }

    [Theory]
    [InlineData(11, null)]
    [InlineData(12, "check.above_dpd_range")] // 5 mg/L of chlorine in the cell, ISO 7393-2
    [InlineData(24, "check.dpd_may_bleach")]
    public void Beyond_the_range_of_its_method_it_is_doubted(double tested, string? code)
    {
        _bench.Check(Bench.Test(Measurand.Bromine, tested));
        Assert.Equal(code, _bench.Entries.Select(e => e.Body).OfType<CheckEntry>().Single().Remarks.FirstOrDefault()?.Reason.Code);
    }

    [Fact, Evidence("R-014")]
    public void Nil_bromine_beside_a_lively_orp_is_bleached_and_to_be_repeated()
    {
        _bench.Hold(TimeSpan.FromMinutes(3), (Hall.Orp, 720), (Hall.Flow, 1));
        _bench.Check(Bench.Test(Measurand.Bromine, 0.1));
        Assert.Equal("check.nil_bromine_with_high_orp", _bench.Entries.Select(e => e.Body).OfType<CheckEntry>().Single().Remarks[0].Reason.Code);
        Assert.NotNull(WantedTests.Of(_bench.State, 0, Measurand.Bromine));
        Assert.Null(WantedTests.Of(_bench.State, 1, Measurand.Bromine));
    }

    [Fact]
    public void What_no_water_can_hold_is_refused() =>
        Assert.IsType<Outcome.TurnedDown>(_bench.Check(_bench.CheckOf(Bench.Test(Measurand.Bromine, 500))));

    [Fact]
    public void The_gate_asks_for_bromine_where_it_disinfects_and_for_chlorine_elsewhere()
    {
        string[] Asked(int pool) => [.. OpeningGate.Of(_bench.State.Plan, _bench.State, _bench.State.Plan.Pools[pool], _bench.Now).Select(l => l.Code).Where(c => c.StartsWith("test.", StringComparison.Ordinal))];
        Assert.Equal(["test.ph", "test.bromine"], Asked(0));
        Assert.Contains("test.free_chlorine", Asked(1));
        Assert.DoesNotContain("test.bromine", Asked(1));
        _bench.Check(Bench.Test(Measurand.Bromine, 0.3));
        Assert.Equal(GateWord.NotPassed, OpeningGate.Of(_bench.State.Plan, _bench.State, _bench.State.Plan.Pools[0], _bench.Now).Single(l => l.Code == "test.bromine").Word);
    }

    private bool Up(Rule rule) => _bench.IsUp(rule, "main/bromine");

    private void Confirm(PackRow row) => Assert.IsType<Outcome.Done>(_bench.Run(at => new PackRowConfirmed(at, "made-up", row.Id, RowDigest.Of(row), "E. Example", "the document in hand", true)));
}
