using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Opening;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Plant.Opening;

/// <summary>Each line of the gate by itself: with all others met, it alone keeps the pool closed.</summary>
public sealed class GateLineTests
{
    private const string Circulation = "hall/circulation";

    private static readonly CircuitPlan Plan = Hall.Plan with { People = [new("d", "D. Example", PersonRole.DutyManager)] };

    private static readonly (string, double)[] Running = [(Hall.Flow, 1), (Hall.Ph, 7.4), (Hall.Orp, 720), (Hall.Temperature, 28), (Hall.Chlorine, 1.5)];

    [Fact]
    public void A_laboratory_result_outside_its_limit_keeps_it_closed_whatever_the_chemistry_says()
    {
        var bench = Ready(Plan.WithPool("main", p => p with { Laboratory = new() { Limits = [new(Organism.Legionella, 0, "invented code, s. 1")] } }));
        Assert.Equal((GateWord.Passed, "gate.laboratory_clear"), Line(bench, "laboratory"));
        var id = TimeOrderedId.Derive(bench.Now, "report");
        bench.Run(at => new LabResultEntered(at, new LabResult
        {
            Id = id, PoolId = "main", Point = SamplePoint.Pool, SampledAt = at - TimeSpan.FromHours(1), ReportedAt = at, Laboratory = "Example laboratory", SampleNumber = "26-0417", By = "R. Example", Counts = [new(Organism.Legionella, 4, CountSense.Counted, 100)],
        }, []));
        Assert.Equal((GateWord.NotPassed, "lab.outside"), Line(bench, "alarm.R-060/main/legionella"));
        Assert.Equal(["gate.alarm.R-060/main/legionella"], Refused(bench));
        bench.Run(at => new LabResultClosed(at, id, "D. Example", "sample mixed up, confirmed by the laboratory"));
        Assert.Equal((GateWord.Passed, "gate.laboratory_clear"), Line(bench, "laboratory"));
        Assert.Empty(Refused(bench));
    }

    [Fact]
    public void Water_that_stands_keeps_it_closed()
    {
        var flow = new ProbePlan { Id = "circulation", Name = "Circulation", Measurand = Measurand.CirculationFlow, Topic = Circulation, Range = new(0, 300), Every = TimeSpan.FromSeconds(10) };
        var bench = new Bench(Plan with { Probes = [.. Plan.Probes, flow], CirculationLowStated = 100 });
        bench.Hold(TimeSpan.FromMinutes(3), [.. Running, (Circulation, 140)]);
        Check(bench);
        Assert.Equal((GateWord.Passed, "gate.runs"), Line(bench, "flow"));
        // A tenth of what is low is still moving; under it nothing is.
        bench.Says(Circulation, "10");
        Assert.Equal((GateWord.Passed, "gate.runs"), Line(bench, "flow"));
        bench.Says(Circulation, "9.9");
        Assert.Equal((GateWord.NotPassed, "gate.no_circulation"), Line(bench, "flow"));
        Assert.Equal(["gate.flow"], Refused(bench));
    }

    [Fact]
    public void A_row_of_what_is_tested_that_nobody_can_decide_keeps_it_closed_and_says_what_is_not_known()
    {
        var bench = Ready(Plan);
        Assert.Equal((GateWord.Passed, "gate.limits_own"), Line(bench, "limits"));
        var undecided = Gate(Undecided(bench.State, PackQuantity.FreeChlorine), bench.Now).Single(l => l.Code == "limits");
        Assert.Equal((GateWord.NotKnown, "gate.limits_undecided"), (undecided.Word, undecided.Reason.Code));
        Assert.Equal(["fc-with-cyanurate", "cyanuric_acid"], undecided.Reason.Facts.Select(f => f.Text));
        // Of what no test of the gate is about, it says nothing.
        Assert.Equal(GateWord.Passed, Gate(Undecided(bench.State, PackQuantity.Turbidity), bench.Now).Single(l => l.Code == "limits").Word);
    }

    [Fact]
    public void Combined_chlorine_is_asked_where_the_rounds_ask_for_it_and_is_total_less_free_of_one_sample()
    {
        var bench = new Bench(Plan.WithPool("main", p => p with { Duties = [new([Measurand.CombinedChlorine], [new(7, 0)])] }));
        bench.Hold(TimeSpan.FromMinutes(3), Running);
        Check(bench);
        Assert.Equal((GateWord.NotKnown, "gate.test_missing"), Line(bench, "test.combined_chlorine"));
        Assert.Equal(["gate.test.combined_chlorine"], Refused(bench));
        // Free of one sample and total of another have nothing between them.
        Check(bench, Bench.Test(Measurand.TotalChlorine, 1.8));
        Check(bench, Bench.Test(Measurand.Ph, 7.4), Bench.Test(Measurand.FreeChlorine, 1.5));
        Assert.Equal((GateWord.NotKnown, "gate.test_missing"), Line(bench, "test.combined_chlorine"));

        Pair(bench, 1.5, 1.9, Censoring.Above);
        Assert.Equal((GateWord.NotKnown, "gate.test_proves_nothing"), Line(bench, "test.combined_chlorine"));
        Pair(bench, 1.5, 2.6);
        Assert.Equal((GateWord.NotPassed, "gate.test_high"), Line(bench, "test.combined_chlorine"));
        Assert.Contains("gate.test.combined_chlorine", Refused(bench));
        Pair(bench, 1.5, 2.3);
        Assert.Equal((GateWord.Passed, "gate.test_inside"), Line(bench, "test.combined_chlorine"));
        Assert.Equal(0.8, Gate(bench.State, bench.Now).Single(l => l.Code == "test.combined_chlorine").Reason.Facts[1].Number!.Value, 9);
        Assert.Empty(Refused(bench));
        bench.Skip(TimeSpan.FromHours(3));
        Assert.Equal((GateWord.NotKnown, "gate.test_too_old"), Line(bench, "test.combined_chlorine"));
    }

    [Fact]
    public void A_pool_whose_rounds_do_not_ask_for_combined_chlorine_opens_without_it() =>
        Assert.DoesNotContain(Gate(Ready(Plan).State, Hall.Nine), l => l.Code == "test.combined_chlorine");

    private static Bench Ready(CircuitPlan plan)
    {
        var bench = new Bench(plan);
        bench.Hold(TimeSpan.FromMinutes(3), Running);
        Check(bench);
        return bench;
    }

    private static void Check(Bench bench) => Check(bench, Bench.Test(Measurand.Ph, 7.4), Bench.Test(Measurand.FreeChlorine, 1.5));

    private static void Pair(Bench bench, double free, double total, Censoring censoring = Censoring.None) =>
        Check(bench, Bench.Test(Measurand.FreeChlorine, free), Bench.Test(Measurand.TotalChlorine, total) with { Censoring = censoring });

    private static void Check(Bench bench, params TestResult[] results)
    {
        bench.Skip(TimeSpan.FromSeconds(1));
        bench.Check(bench.CheckOf(results) with { BottomVisible = true }, Bench.Window("main-ph", bench.Now, 7.4), Bench.Window("main-orp", bench.Now, 720), Bench.Window("main-chlorine", bench.Now, 1.5));
    }

    private static CircuitState Undecided(CircuitState state, PackQuantity quantity) => state with
    {
        Pools = state.Pools.SetItem(0, state.Pools[0] with { Limits = state.Pools[0].Limits with { Undecided = [new("fc-with-cyanurate", quantity, "cyanuric_acid")] } }),
    };

    private static GateLine[] Gate(CircuitState state, Instant now) => [.. OpeningGate.Of(state.Plan, state, state.Plan.Pools[0], now)];

    private static (GateWord, string) Line(Bench bench, string code) => Gate(bench.State, bench.Now).Single(l => l.Code == code) is var line ? (line.Word, line.Reason.Code) : default;

    // Opens it where it can, and closes it again: what is left is what kept it closed.
    private static string[] Refused(Bench bench)
    {
        var outcome = bench.Run(at => new PoolStateSet(at, TimeOrderedId.Derive(at, "open"), "main", OperatingState.Open, "D. Example"));
        bench.Run(at => new PoolStateSet(at, TimeOrderedId.Derive(at, "close"), "main", OperatingState.Closed, "D. Example"));
        return outcome is Outcome.TurnedDown no ? [.. no.Remarks.Select(r => r.Field)] : [];
    }
}
