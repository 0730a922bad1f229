using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Dosing into standing water is told at once.</summary>
public sealed class DosingFlowRuleTests
{
    private static readonly CircuitPlan Plan = Hall.Plan.With("main-ph", p => p with { Origin = SignalOrigin.PanelScaled }) with
    {
        TurnoverHours = 4,
        Pumps = [.. Hall.Plan.Pumps.Select(p => p with { Doses = p.Id == "acid-pump" ? ProductKind.HydrochloricAcid : ProductKind.SodiumHypochlorite })],
    };

    [Fact, Evidence("R-033")]
    public void A_pump_that_runs_without_sample_flow_is_told_after_a_few_strokes_and_not_before()
    {
        var bench = new Bench(Plan);
        bench.Says(Hall.AcidState, "running");
        bench.Says(Hall.Flow, "0");
        bench.Tick();
        bench.Skip(TimeSpan.FromSeconds(10));
        bench.Tick();
        Assert.False(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
        bench.Skip(TimeSpan.FromSeconds(15));
        bench.Tick();
        Assert.Equal("dosing.without_sample_flow", bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")?.Cause.Code);
        Assert.True(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
        Assert.False(bench.IsUp(RuleBook.DosesWithoutFlow, "hypo-pump"));
    }

    [Theory, Evidence("R-033")]
    [InlineData(Hall.AcidState, "stopped")]
    [InlineData(Hall.Flow, "1")]
    public void It_clears_when_the_pump_stands_or_flow_is_back(string topic, string says)
    {
        var bench = Running();
        bench.Says(topic, says);
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.False(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
    }

    [Fact, Evidence("R-033")]
    public void A_circulation_that_stands_is_enough_even_while_the_sample_pump_keeps_the_cell_alive()
    {
        // 480 m3 in 4 h are 120 m3/h; low is 90 and standing is under 9.
        var flow = new ProbePlan { Id = "circulation", Name = "Circulation", Measurand = Measurand.CirculationFlow, Topic = "hall/circulation", Range = new(0, 300), Every = TimeSpan.FromSeconds(30) };
        var bench = new Bench(Plan with { Probes = [.. Plan.Probes, flow] });
        bench.Says(Hall.Flow, "1");
        bench.Says(Hall.AcidState, "running");
        bench.Says("hall/hypo/state", "running");
        bench.Says("hall/circulation", "118");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.False(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
        bench.Says("hall/circulation", "3");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.Equal("dosing.without_circulation", bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")?.Cause.Code);
        Assert.True(bench.IsUp(RuleBook.DosesWithoutFlow, "hypo-pump"));
    }

    [Fact, Evidence("R-033")]
    public void A_silent_switch_does_not_take_it_back()
    {
        var bench = Running();
        bench.Pass(TimeSpan.FromMinutes(30));
        Assert.True(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
    }

    private static Bench Running()
    {
        var bench = new Bench(Plan);
        bench.Says(Hall.AcidState, "running");
        bench.Says(Hall.Flow, "0");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.True(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
        return bench;
    }
}
