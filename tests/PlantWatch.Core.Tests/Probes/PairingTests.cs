using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Probes;

public class PairingTests
{
    private readonly TestPool _pool = new(Measurand.Ph);

    private ProbeCheck Sound(TestResult? result = null) => _pool.InputOf(_pool.CheckOf(0, result ?? new(Measurand.Ph, 7.4, TestMethod.Photometer)), 7.4);

    private void CannotCompare(ProbeCheck input, string code)
    {
        var judgement = _pool.Judge(input);
        Assert.Equal(Verdict.NotComparable, judgement.Verdict);
        Assert.Equal(code, Assert.Single(judgement.Reasons).Code);
        Assert.False(judgement.Probe.IsKnown);
        Assert.Empty(_pool.Trust.Pairs);
        Assert.Equal(Standing.Unknown, _pool.Trust.Standing);
    }

    [Fact]
    public void The_sound_one_is_compared() => Assert.Equal(Verdict.Agrees, _pool.Judge(Sound()).Verdict);

    [Fact]
    public void Without_readings_around_the_sample() => CannotCompare(Sound() with { Window = null }, "pair.no_readings");

    [Fact]
    public void With_readings_that_were_no_good()
    {
        var input = Sound();
        CannotCompare(input with { Window = input.Window! with { Count = 0, Excluded = 30 } }, "pair.function_check");
        CannotCompare(input with { Window = input.Window! with { Count = 20, Excluded = 10 } }, "pair.function_check");
    }

    [Fact]
    public void While_the_water_moves_too_fast()
    {
        var input = Sound();
        // 2 pH an hour over the two minutes that nobody knows: as much as the test itself.
        CannotCompare(input with { Window = input.Window! with { PerHour = -2.5 } }, "pair.moving_too_fast");
    }

    [Fact]
    public void Scatter_alone_is_no_movement()
    {
        var input = Sound();
        Assert.Equal(Verdict.Agrees, _pool.Judge(input with { Window = input.Window! with { StandardDeviation = 0.05, PerHour = 0.6 } }).Verdict);
    }

    [Fact]
    public void With_a_bound_instead_of_a_number() =>
        CannotCompare(Sound(new(Measurand.Ph, 8.2, TestMethod.Photometer, Censoring.Above)), "pair.only_a_bound");

    [Fact]
    public void At_the_end_of_the_colour_scale() => CannotCompare(Sound(new(Measurand.Ph, 8.4, TestMethod.Photometer)), "pair.outside_method_range");

    [Fact]
    public void From_the_balance_tank()
    {
        var input = Sound();
        CannotCompare(input with { Check = input.Check with { Point = SamplePoint.BalanceTank } }, "pair.sample_point");
    }

    [Fact]
    public void When_the_probe_sees_the_mixed_return_of_several_pools()
    {
        var input = Sound();
        var plan = input.Plan with { Pools = [.. input.Plan.Pools, new PoolPlan { Id = "spa", Name = "Spa" }] };
        CannotCompare(input with { Plan = plan, Probe = input.Probe with { PoolId = null } }, "pair.mixed_return");
    }

    [Fact]
    public void Typed_in_after_the_journal_is_gone()
    {
        var input = Sound();
        CannotCompare(input with { Now = input.Check.SampledAt + TimeSpan.FromDays(36) }, "pair.too_old");
    }

    [Fact]
    public void Older_than_all_the_pairs_that_are_kept()
    {
        for (var i = 0; i <= ProbeTrust.Kept; i++) _pool.Check(100 + i, 7.4, 7.4);
        var kept = _pool.Trust.Pairs.Length;
        var judgement = _pool.Check(1, 7.4, 7.4);
        Assert.Equal("pair.older_than_kept", Assert.Single(judgement.Reasons).Code);
        Assert.Equal(kept, _pool.Trust.Pairs.Length);
    }

    [Fact]
    public void The_lag_of_the_filter_is_waited_for_and_the_mean_is_taken_over_whole_dosing_cycles()
    {
        var check = _pool.CheckOf(0, new TestResult(Measurand.Ph, 7.4, TestMethod.Photometer)) with { Point = SamplePoint.Cell };
        var probe = _pool.Probe with { FilterLag = TimeSpan.FromSeconds(90) };
        Assert.Equal((check.SampledAt - TimeSpan.FromSeconds(90), check.SampledAt + TimeSpan.FromSeconds(270)), Reconciliation.WindowAround(probe, check));
        // Two cycles of four minutes are the fewest that cover six; one of a quarter of an hour covers more.
        Assert.Equal(TimeSpan.FromMinutes(8), Width(probe with { DosingCycle = TimeSpan.FromMinutes(4) }));
        Assert.Equal(TimeSpan.FromMinutes(15), Width(probe with { DosingCycle = TimeSpan.FromMinutes(15) }));
        TimeSpan Width(ProbePlan plan) => Reconciliation.WindowAround(plan, check) is var (from, to) ? to - from : default;
    }

    [Fact]
    public void Water_from_the_pool_is_looked_for_when_it_reaches_the_cell_and_water_from_the_cell_at_once()
    {
        var check = _pool.CheckOf(0, new TestResult(Measurand.Ph, 7.4, TestMethod.Photometer));
        Assert.Equal((TestPool.After(0) - TimeSpan.FromMinutes(1), TestPool.After(0) + TimeSpan.FromMinutes(5)), Reconciliation.WindowAround(_pool.Probe, check));
        Assert.Equal(TestPool.After(0) - TimeSpan.FromMinutes(3), Reconciliation.WindowAround(_pool.Probe, check with { Point = SamplePoint.Cell }).From);
    }

    [Fact]
    public void A_sample_from_the_cell_is_surer_than_one_from_the_pool()
    {
        var input = Sound();
        var fromPool = _pool.Judge(input).Test;
        var fromCell = Reconciliation.Judge(ProbeTrust.New, input with { Check = input.Check with { Point = SamplePoint.Cell } })!.Judgement.Test;
        Assert.True(fromCell.StandardUncertainty < fromPool.StandardUncertainty);
    }
}
