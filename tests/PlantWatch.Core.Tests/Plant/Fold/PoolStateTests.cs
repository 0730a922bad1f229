using System.Collections.Immutable;
using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Opening;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>Pools are opened through the gate and closed at once.</summary>
public sealed class PoolStateTests
{
    private static readonly CircuitPlan Plan = Hall.Plan with { People = [new("d", "D. Example", PersonRole.DutyManager), new("o", "O. Example", PersonRole.Operator)] };

    private static readonly (string, double)[] Running =
        [(Hall.Flow, 1), (Hall.Ph, 7.4), (Hall.Orp, 720), (Hall.Temperature, 28), (Hall.Chlorine, 1.5)];

    [Fact]
    public void A_pool_whose_lines_are_all_passed_opens()
    {
        var bench = Ready();
        Assert.All(Gate(bench), line => Assert.Equal(GateWord.Passed, line.Word));
        Assert.IsType<Outcome.Done>(Set(bench, OperatingState.Open));
        Assert.Equal((OperatingState.Open, "O. Example"), (MainPool(bench).Operation.State, MainPool(bench).Operation.By));
    }

    [Fact]
    public void Without_a_test_nothing_opens_and_the_missing_lines_are_said()
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(3), Running);
        var no = Assert.IsType<Outcome.TurnedDown>(Set(bench, OperatingState.Open));
        Assert.Equal(["gate.test_missing", "gate.test_missing", "gate.bottom_missing"], no.Remarks.Select(r => r.Reason.Code));
        Assert.Equal(OperatingState.NotStated, MainPool(bench).Operation.State);
    }

    [Theory]
    [InlineData("test.ph", "gate.test_high", 7.9, 1.5, true, Censoring.None)]
    [InlineData("test.free_chlorine", "gate.test_low", 7.4, 0.7, true, Censoring.None)]
    [InlineData("test.free_chlorine", "gate.test_proves_nothing", 7.4, 2, true, Censoring.Below)]
    [InlineData("test.free_chlorine", "gate.test_proves_nothing", 7.4, 2.9, true, Censoring.Above)]
    [InlineData("bottom", "gate.bottom_hidden", 7.4, 1.5, false, Censoring.None)]
    public void A_line_of_a_check_that_is_not_well_keeps_the_pool_closed(string code, string reason, double ph, double chlorine, bool bottom, Censoring censoring)
    {
        var bench = new Bench(Plan);
        bench.Hold(TimeSpan.FromMinutes(3), Running);
        Check(bench, ph, chlorine, bottom, censoring);
        Assert.Equal(reason, Gate(bench).Single(l => l.Code == code).Reason.Code);
        Assert.IsType<Outcome.TurnedDown>(Set(bench, OperatingState.Open));
    }

    [Fact]
    public void A_test_of_more_than_two_hours_ago_no_longer_opens()
    {
        var bench = Ready();
        bench.Hold(TimeSpan.FromMinutes(121), Running);
        Assert.Equal(["test.ph", "test.free_chlorine", "bottom"], Open(bench).Where(c => !c.StartsWith("alarm", StringComparison.Ordinal)).OrderByDescending(c => c == "test.ph").ThenByDescending(c => c));
    }

    [Fact]
    public void A_doubted_test_opens_nothing()
    {
        var bench = Ready();
        bench.Hold(TimeSpan.FromMinutes(5), Running);
        // Nil chlorine and ORP that stands well: bleached, or empty. Either way it is repeated first.
        Check(bench, 7.4, 0, true);
        Assert.Contains("test.free_chlorine", Open(bench));
    }

    [Fact, Evidence("R-014")]
    public void New_water_ends_the_doubt_about_a_test_of_the_old_and_not_what_was_found_outside()
    {
        var bench = Ready();
        bench.Hold(TimeSpan.FromMinutes(5), Running);
        Check(bench, 7.4, 0, true);
        Assert.True(bench.IsUp(RuleBook.RepeatTest, "main/free_chlorine"));
        Set(bench, OperatingState.Drained, why: "relined");
        bench.Hold(TimeSpan.FromMinutes(5), Running);
        Set(bench, OperatingState.Closed, refilled: true);
        Assert.False(bench.IsUp(RuleBook.RepeatTest, "main/free_chlorine"));
        Assert.True(bench.IsUp(RuleBook.TestOutsideStop, "main/free_chlorine"));
        bench.Pass(TimeSpan.FromMinutes(90));
        Assert.False(bench.IsUp(RuleBook.TestWanted, "main/free_chlorine"));
    }

    [Fact]
    public void Silence_a_still_cell_and_a_pump_in_fault_keep_it_closed()
    {
        var bench = Ready();
        bench.Says(Hall.Flow, "0");
        Assert.Equal("gate.no_flow", Gate(bench).Single(l => l.Code == "flow").Reason.Code);
        bench.Hold(TimeSpan.FromMinutes(1), Running);
        bench.Pass(TimeSpan.FromMinutes(4));
        Assert.Equal((GateWord.NotKnown, "gate.silent"), Line(bench, "flow"));
        bench.Hold(TimeSpan.FromMinutes(1), Running);
        Assert.Equal((GateWord.Passed, "gate.runs"), Line(bench, "flow"));
        bench.Says(Hall.AcidState, "fault");
        Assert.Equal((GateWord.NotPassed, "gate.pump_fault"), Line(bench, "pumps"));
    }

    [Fact]
    public void An_alarm_that_is_only_pending_or_shelved_keeps_it_closed()
    {
        var bench = Ready();
        bench.Says(Hall.Ph, "7.9");
        Assert.False(bench.IsUp(RuleBook.AboveLimit, "main-ph"));
        Assert.Contains("alarm.R-011/main-ph", Open(bench));
        bench.Hold(TimeSpan.FromMinutes(3), [.. Running.Select(r => r.Item1 == Hall.Ph ? (Hall.Ph, 7.9) : r)]);
        var id = bench.Alarm(RuleBook.AboveLimit, "main-ph")!.Id;
        Assert.IsType<Outcome.Done>(bench.Run(at => new AlarmShelved(at, id, at + TimeSpan.FromHours(1), "O. Example", "waiting for acid")));
        Assert.Contains("alarm.R-011/main-ph", Open(bench));
    }

    [Fact]
    public void Without_limits_nothing_opens()
    {
        var bench = Ready(Plan.WithPool("main", p => p with { Limits = [] }));
        Assert.Equal((GateWord.NotPassed, "gate.limits_none"), Line(bench, "limits"));
    }

    [Fact]
    public void A_pool_without_probes_is_not_measured_and_passes_that_line()
    {
        var bench = new Bench(Plan with { Probes = [] });
        Assert.Equal((GateWord.Passed, "gate.not_measured"), Line(bench, "flow"));
    }

    [Fact]
    public void An_incident_leaves_both_pools_of_the_circuit_closed_for_cause_and_its_end_opens_neither()
    {
        var bench = Ready();
        Set(bench, OperatingState.Open);
        Set(bench, OperatingState.Drained, pool: "learner");
        var id = Declare(bench);
        Assert.Equal([(OperatingState.Closed, true), (OperatingState.Drained, true)], bench.State.Pools.Select(p => (p.Operation.State, p.Operation.ForCause)));
        Assert.Equal(2, bench.Entries.Count(e => e.Body is PoolStateEntry { ByIncident: true }));
        Assert.Contains("incident", Open(bench));
        bench.Run(at => new IncidentClosed(at, id, "D. Example", "the hold is over"));
        bench.Restart();
        Assert.Equal([(OperatingState.Closed, true), (OperatingState.Drained, true)], bench.State.Pools.Select(p => (p.Operation.State, p.Operation.ForCause)));
        // Tested before it was closed: that says nothing of the water since.
        Assert.Equal("gate.test_before_closing", Gate(bench).Single(l => l.Code == "test.ph").Reason.Code);
    }

    [Fact]
    public void After_a_cause_only_somebody_entitled_opens_and_says_why()
    {
        var bench = Ready();
        Assert.IsType<Outcome.TurnedDown>(Set(bench, OperatingState.Closed, forCause: true));
        Assert.IsType<Outcome.Done>(Set(bench, OperatingState.Closed, why: "glass on the floor", forCause: true));
        Assert.IsType<Outcome.Done>(Set(bench, OperatingState.Covered));
        Assert.Equal((true, "glass on the floor"), (MainPool(bench).Operation.ForCause, MainPool(bench).Operation.Why));
        bench.Hold(TimeSpan.FromMinutes(2), Running);
        Check(bench, 7.4, 1.5, true);
        Assert.Equal("gate.not_entitled", Refused(Set(bench, OperatingState.Open, why: "swept")));
        Assert.Equal("field.required", Refused(Set(bench, OperatingState.Open, by: "D. Example")));
        Assert.IsType<Outcome.Done>(Set(bench, OperatingState.Open, by: "d. example", why: "swept and looked at"));
        Assert.False(MainPool(bench).Operation.ForCause);
    }

    [Fact]
    public void Where_the_plan_names_nobody_entitled_nobody_opens_after_a_cause()
    {
        var bench = Ready(Hall.Plan);
        Set(bench, OperatingState.Closed, why: "glass", forCause: true);
        Assert.Equal("gate.nobody_entitled", Refused(Set(bench, OperatingState.Open, by: "D. Example", why: "swept")));
    }

    [Fact]
    public void Closing_while_a_stop_stands_is_for_cause_also_when_nobody_said_so()
    {
        var bench = Ready();
        Check(bench, 8.6, 1.5, true);
        Assert.IsType<Outcome.Done>(Set(bench, OperatingState.Closed));
        Assert.True(MainPool(bench).Operation.ForCause);
    }

    [Fact]
    public void A_drained_pool_is_filled_first_and_its_new_water_is_unknown()
    {
        var bench = Ready();
        Set(bench, OperatingState.Drained);
        var old = bench.CheckOf(Bench.Test(Measurand.Ph, 7.4));
        Assert.Equal("pool.fill_first", Refused(Set(bench, OperatingState.Open)));
        bench.Skip(TimeSpan.FromMinutes(5));
        Assert.IsType<Outcome.Done>(Set(bench, OperatingState.Closed));
        Assert.Empty(MainPool(bench).Manual);
        Assert.Empty(bench.Probe("main-orp").Trust.Pairs);
        Assert.NotEmpty(bench.Probe("main-ph").Trust.Pairs);
        bench.Check(old);
        Assert.Empty(MainPool(bench).Manual);
    }

    [Fact]
    public void An_act_that_comes_again_later_does_nothing()
    {
        var bench = Ready();
        var id = TimeOrderedId.Derive(bench.Now, "open");
        Assert.IsType<Outcome.Done>(Set(bench, OperatingState.Open, id: id));
        Set(bench, OperatingState.Closed);
        Assert.IsType<Outcome.AlreadyDone>(Set(bench, OperatingState.Open, id: id));
        Assert.Equal(OperatingState.Closed, MainPool(bench).Operation.State);
        Assert.Equal("id.taken", Refused(Set(bench, OperatingState.Covered, id: id)));
        Assert.Equal(bench.Events[^1], JournalCodec.Read(JournalCodec.Write(bench.Events))[^1]);
    }

    [Fact, Evidence("R-040")]
    public void No_check_is_due_while_nobody_bathes()
    {
        var bench = new Bench(Plan);
        bench.Pass(TimeSpan.FromMinutes(2));
        Assert.NotEmpty(DueChecks.At(bench.State.Plan, bench.State.Pools, bench.Now));
        Assert.True(bench.IsUp(RuleBook.CheckOverdue, "main"));
        Set(bench, OperatingState.Closed);
        Assert.Empty(DueChecks.At(bench.State.Plan, bench.State.Pools, bench.Now));
        Assert.False(bench.IsUp(RuleBook.CheckOverdue, "main"));
    }

    [Fact]
    public void Whatever_is_done_no_act_opens_past_the_gate_and_closing_is_never_turned_down() =>
        Gen.Select(Gen.Int[0, 9], Gen.Int[0, 9]).List[1, 40].Sample(acts =>
        {
            var bench = Ready();
            foreach (var (what, how) in acts)
            {
                var mayOpen = what == 0 && Gate(bench).All(l => l.Word == GateWord.Passed);
                switch (what)
                {
                    case 0: Assert.True(Set(bench, OperatingState.Open, by: how < 5 ? "O. Example" : "D. Example", why: "looked at") is not Outcome.Done || mayOpen); break;
                    case 1 or 2: Assert.IsType<Outcome.Done>(Set(bench, OperatingState.Closed, why: "so", forCause: how < 3, refilled: how == 9)); break;
                    case 3: Assert.IsType<Outcome.Done>(Set(bench, OperatingState.Drained)); break;
                    case 4: Declare(bench); break;
                    case 5: foreach (var id in bench.State.Incidents.Keys) bench.Run(at => new IncidentClosed(at, id, "D. Example", "over")); break;
                    case 6: bench.Says(Hall.Ph, how < 5 ? "7.4" : "8.6"); break;
                    case 7: bench.Hold(TimeSpan.FromMinutes(how < 8 ? 1 : 20), Running); break;
                    default: Check(bench, how == 0 ? 7.9 : 7.4, how == 1 ? 0.1 : 1.5, how != 2); break;
                }

                if (what is 1 or 2 or 3 or 4) Assert.False(MainPool(bench).Operation.MayBatheIn);
            }
        }, iter: 200);

    private static Bench Ready(CircuitPlan? plan = null)
    {
        var bench = new Bench(plan ?? Plan);
        bench.Hold(TimeSpan.FromMinutes(3), Running);
        Check(bench, 7.4, 1.5, true);
        return bench;
    }

    private static void Check(Bench bench, double ph, double chlorine, bool bottom, Censoring censoring = Censoring.None)
    {
        bench.Skip(TimeSpan.FromSeconds(1));
        var check = bench.CheckOf(Bench.Test(Measurand.Ph, ph), Bench.Test(Measurand.FreeChlorine, chlorine) with { Censoring = censoring }) with { BottomVisible = bottom };
        bench.Check(check, Bench.Window("main-ph", bench.Now, ph), Bench.Window("main-orp", bench.Now, 720), Bench.Window("main-chlorine", bench.Now, chlorine > 0 ? chlorine : 1.5));
    }

    private static Guid Declare(Bench bench)
    {
        var id = TimeOrderedId.Derive(bench.Now, $"incident {bench.Events.Count}");
        Assert.IsType<Outcome.Done>(bench.Run(at => new IncidentDeclared(at, new Incident { Id = id, PoolId = "main", Kind = IncidentKind.FormedStool, Authority = IncidentAuthority.UsCdc, DeclaredBy = "O. Example" })));
        return id;
    }

    private static Outcome Set(Bench bench, OperatingState state, string pool = "main", string by = "O. Example", string? why = null, bool forCause = false, bool refilled = false, Guid id = default) =>
        bench.Run(at => new PoolStateSet(at, id == Guid.Empty ? TimeOrderedId.Derive(at, "act") : id, pool, state, by, why, forCause, refilled));

    private static PoolState MainPool(Bench bench) => bench.State.Pools[0];

    private static ImmutableArray<GateLine> Gate(Bench bench) => OpeningGate.Of(bench.State.Plan, bench.State, bench.State.Plan.Pools[0], bench.Now);

    private static (GateWord, string) Line(Bench bench, string code) => Gate(bench).Single(l => l.Code == code) is var line ? (line.Word, line.Reason.Code) : default;

    private static string[] Open(Bench bench) => [.. Gate(bench).Where(l => l.Word != GateWord.Passed).Select(l => l.Code)];

    private static string Refused(Outcome outcome) => Assert.IsType<Outcome.TurnedDown>(outcome).Remarks[0].Reason.Code;
}
