using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Dosing.Supervision;

/// <summary>A pool of own physics runs well for ten days, and then one thing fails.</summary>
public sealed class PoolSupervisorTests
{
    private static readonly Instant Fails = DosedPool.Start + TimeSpan.FromDays(10);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Pumps_that_do_what_their_strokes_say_are_left_in_peace(int seed) => Assert.Empty(Run(seed, _ => { }, TimeSpan.FromDays(15)));

    [Fact]
    public void Strokes_into_standing_water_are_said_at_the_very_sample()
    {
        var said = Run(1, p => (p.Circulates, p.AcidDriven) = (false, 8), TimeSpan.FromHours(1));
        var first = Assert.Single(said, v => v is { Raised: true, Pump: DosedProduct.Acid });
        Assert.Equal(PumpTrouble.WithoutCirculation, first.Trouble);
        Assert.Equal(Fails, first.At);
    }

    [Fact]
    public void Standing_water_into_which_nothing_is_dosed_is_no_trouble_of_a_pump() => Assert.Empty(Run(1, p => p.Circulates = false, TimeSpan.FromHours(1)));

    [Theory]
    [InlineData(DosedProduct.Acid)]
    [InlineData(DosedProduct.Chlorine)]
    public void A_pump_that_runs_on_without_being_asked_is_said_within_a_quarter_of_an_hour(DosedProduct pump)
    {
        var said = Run(2, p => p.Drive(pump, 30), TimeSpan.FromHours(1));
        Assert.Equal(PumpTrouble.StuckOn, Assert.Single(said).Trouble);
        Assert.Equal(pump, said[0].Pump);
        Assert.InRange(said[0].At - Fails, TimeSpan.Zero, TimeSpan.FromMinutes(15));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Acid_that_does_not_arrive_is_missed_by_its_effect(int seed)
    {
        var said = Run(seed, p => p.AcidArrives = _ => 0, TimeSpan.FromHours(18));
        var first = said[0];
        Assert.Equal((DosedProduct.Acid, PumpTrouble.LostPrime, true), (first.Pump, first.Trouble, first.Raised));
        Assert.True(first.Evidence!.Expected < first.Evidence.Observed, "pH did not fall as the strokes should have made it");
        Assert.Equal(first.Evidence.Strokes * 0.0004, first.Evidence.LitresMissing, 6);
        Assert.InRange(first.Evidence.Certainty, 0.99, 1);
    }

    [Fact]
    public void A_tank_that_does_not_sink_makes_it_known_sooner()
    {
        var blind = Run(2, p => p.AcidArrives = _ => 0, TimeSpan.FromHours(24))[0].At;
        var seen = Run(2, p => p.AcidArrives = _ => 0, TimeSpan.FromHours(24), tank: 30)[0].At;
        Assert.True(seen <= blind);
    }

    [Fact]
    public void Chlorine_that_does_not_arrive_is_missed_by_what_the_controller_asks()
    {
        var said = Run(1, p => p.ChlorineArrives = _ => 0, TimeSpan.FromHours(8));
        Assert.Equal((DosedProduct.Chlorine, PumpTrouble.LostPrime, true), (said[0].Pump, said[0].Trouble, said[0].Raised));
    }

    [Theory]
    [InlineData(DosedProduct.Acid)]
    [InlineData(DosedProduct.Chlorine)]
    public void Product_that_comes_without_strokes_is_a_siphon(DosedProduct pump)
    {
        var said = Run(1, p =>
        {
            if (pump == DosedProduct.Acid) p.AcidArrives = s => s + 10;
            else p.ChlorineArrives = s => s + 8;
        }, TimeSpan.FromHours(12));
        Assert.Contains(said, v => v.Pump == pump && v.Trouble == PumpTrouble.Siphon && v.Evidence!.LitresMissing < 0);
    }

    [Fact]
    public void Product_of_half_its_strength_is_told_from_none_within_days()
    {
        var said = Run(3, p => p.ChlorineArrives = s => 0.5 * s, TimeSpan.FromDays(5));
        Assert.Contains(said, v => v is { Pump: DosedProduct.Chlorine, Trouble: PumpTrouble.WeakProduct, Raised: true });
    }

    [Fact]
    public void A_trouble_that_is_mended_is_said_to_be_over()
    {
        var said = Run(1, p => p.ChlorineArrives = _ => 0, TimeSpan.FromHours(36), again: TimeSpan.FromHours(10), mend: p => p.ChlorineArrives = s => s);
        Assert.True(said[0].Raised);
        Assert.Contains(said, v => v.Pump == DosedProduct.Chlorine && v.Trouble == said[0].Trouble && !v.Raised);
    }

    [Fact]
    public void What_was_said_does_not_change_by_what_comes_later()
    {
        var whole = Run(1, p => p.AcidArrives = _ => 0, TimeSpan.FromHours(36));
        var half = Run(1, p => p.AcidArrives = _ => 0, TimeSpan.FromHours(18));
        Assert.NotEmpty(half);
        Assert.Equal(half, whole.Take(half.Count));
    }

    private static List<PumpVerdict> Run(int seed, Action<DosedPool> fail, TimeSpan after, double? tank = null, TimeSpan? again = null, Action<DosedPool>? mend = null)
    {
        var pool = new DosedPool(seed) { AcidTank = tank };
        var supervisor = new PoolSupervisor(DosedPool.Plan);
        var said = new List<PumpVerdict>();
        for (var minute = 0; minute < 14400 + after.TotalMinutes; minute++)
        {
            if (minute == 14400) fail(pool);
            if (minute == 14400 + again?.TotalMinutes) mend!(pool);
            if (minute % 480 == 0) supervisor.Test(1.5);
            said.AddRange(supervisor.Take(pool.Next()));
        }

        Assert.All(said, v => Assert.True(v.At >= Fails, $"{v} before anything failed"));
        return said;
    }
}
