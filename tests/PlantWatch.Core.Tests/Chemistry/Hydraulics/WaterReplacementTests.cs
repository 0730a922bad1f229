using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry.Hydraulics;

public class WaterReplacementTests
{
    private static readonly Gen<(double Now, double Target, double Fill)> Levels =
        Gen.Select(Gen.Double[0, 500], Gen.Double[1, 500], Gen.Double[1, 5000], (fill, below, above) => (fill + below + above, fill + below, fill));

    [Fact]
    public void A_drain_of_the_part_asked_for_lands_on_the_target() => Levels.Sample(level =>
        Assert.Equal(level.Target, WaterReplacement.AfterBatch(level.Now, WaterReplacement.BatchPart(level.Now, level.Target, level.Fill).Value, level.Fill).Value, 1e-9));

    [Fact]
    public void An_overflow_of_the_volumes_asked_for_lands_on_the_target_and_takes_more_water() => Levels.Sample(level =>
    {
        var volumes = WaterReplacement.OverflowVolumes(level.Now, level.Target, level.Fill).Value;
        Assert.Equal(level.Target, WaterReplacement.AfterOverflow(level.Now, volumes, level.Fill).Value, 1e-9);
        Assert.True(volumes > WaterReplacement.BatchPart(level.Now, level.Target, level.Fill).Value);
    });

    [Fact]
    public void The_lower_the_target_the_more_is_drained() => Levels.Sample(level =>
        Assert.True(WaterReplacement.BatchPart(level.Now, (level.Target + level.Fill) / 2, level.Fill).Value > WaterReplacement.BatchPart(level.Now, level.Target, level.Fill).Value));

    [Fact]
    public void So_many_batches_reach_the_target_and_one_less_does_not() => Levels.Sample(level =>
    {
        var batches = (int)WaterReplacement.Batches(level.Now, level.Target, level.Fill, 0.25).Value;
        Assert.True(After(batches) <= level.Target + 1e-6);
        Assert.True(After(batches - 1) > level.Target - 1e-6);

        double After(int count)
        {
            var now = level.Now;
            for (var i = 0; i < count; i++) now = WaterReplacement.AfterBatch(now, 0.25, level.Fill).Value;
            return now;
        }
    });

    [Theory]
    [InlineData(120, 60, 80)]
    [InlineData(120, 60, 120)]
    [InlineData(60, 120, 0)]
    public void What_fill_water_cannot_reach_is_said(double now, double target, double fill) =>
        Assert.Equal("replacement.never_reached", WaterReplacement.BatchPart(now, target, fill).Why!.Code);

    [Fact]
    public void Hard_fill_water_raises_hardness_by_the_same_law() => Assert.Equal(0.5, WaterReplacement.BatchPart(100, 200, 300).Value);

    [Fact]
    public void Overflow_never_quite_reaches_the_fill_water() => Assert.False(WaterReplacement.OverflowVolumes(120, 20, 20).IsKnown);

    [Fact]
    public void A_bleed_holds_the_level_it_was_made_for()
    {
        var bleed = FreshWater.BleedToHold(gramsPerDay: 900, limit: 1500, fill: 300).Value;
        Assert.Equal(0.75, bleed);
        Assert.Equal(1500, FreshWater.SettlesAt(900, bleed, 300).Value, 1e-9);
    }

    [Fact]
    public void No_bleed_holds_a_level_below_that_of_the_fill_water() => Assert.Equal("replacement.never_reached", FreshWater.BleedToHold(900, 300, 300).Why!.Code);

    [Fact]
    public void Bathers_and_backwash_are_dilution()
    {
        Assert.Equal(6, FreshWater.ForBathers(200).Value);
        Assert.Equal(20, FreshWater.ByBackwash(200, 6).Value);
        Assert.Equal(1500 * Math.Exp(-26.0 / 450), FreshWater.Dilutes(1500, 0, 26, 450).Value, 1e-9);
    }

    [Fact]
    public void The_matter_that_asks_for_most_governs_a_partial_drain()
    {
        var plan = PartialDrain.Of(450, [new(Measurand.CyanuricAcid, 120, 60, 0), new(Measurand.DissolvedSolids, 2600, 1500, 300), new(Measurand.CalciumHardness, 200, 400, 250)], out _)!;
        Assert.Equal((Measurand.CyanuricAcid, 0.5, 225), (plan.Governs, plan.Part, plan.CubicMetres));
        Assert.Equal(Math.Log(2), plan.Overflow!.Value, 1e-9);
        Assert.Equal(2, plan.Steps);
        // Two equal drains with a refill between leave half.
        Assert.Equal(0.5, Math.Pow(1 - (plan.CubicMetresEach / 450), 2), 1e-9);
        Assert.Equal(["drain.caution", "drain.in_steps", "drain.retest_all"], plan.Says.Select(reason => reason.Code));
    }

    [Fact]
    public void Water_that_is_good_is_kept() => Assert.Equal(0, PartialDrain.Of(450, [new(Measurand.CyanuricAcid, 40, 60, 0)], out _)!.Part);

    [Fact]
    public void Every_matter_that_fill_water_cannot_bring_down_is_named()
    {
        Assert.Null(PartialDrain.Of(450, [new(Measurand.CyanuricAcid, 120, 60, 0), new(Measurand.CalciumHardness, 500, 300, 350), new(Measurand.DissolvedSolids, double.NaN, 1500, 300)], out var why));
        Assert.Equal(["replacement.never_reached", "input.outside_range"], why.Select(reason => reason.Code));
    }

    [Fact]
    public void A_target_at_the_fill_water_would_empty_the_pool_and_says_so()
    {
        var plan = PartialDrain.Of(450, [new(Measurand.CyanuricAcid, 120, 0, 0)], out _)!;
        Assert.Equal((1, null), (plan.Part, plan.Overflow));
        Assert.Contains(plan.Says, reason => reason.Code == "drain.empties_the_pool");
    }
}
