using System.Collections.Immutable;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>One cause, one alarm that speaks, and what follows from it under it. First-out order after IEC 62682.</summary>
public sealed class ConsequenceTests
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    private static readonly CircuitPlan Plan = Hall.Plan with
    {
        Pumps =
        [
            new() { Id = "acid-pump", Name = "Acid pump", PoolId = "main", ProductId = "acid", Doses = ProductKind.HydrochloricAcid, FollowsProbeId = "main-ph", StateTopic = Hall.AcidState, TankTopic = Hall.AcidTank },
            new() { Id = "hypo-pump", Name = "Hypochlorite pump", PoolId = "main", ProductId = "hypo", Doses = ProductKind.SodiumHypochlorite, StateTopic = "hall/hypo/state" },
            new() { Id = "soda-pump", Name = "Soda pump", PoolId = "main", ProductId = "soda", Doses = ProductKind.SodiumCarbonate, FollowsProbeId = "main-ph", StateTopic = "hall/soda/state" },
        ],
    };

    private static AlarmRecord Up(Rule rule, string subject, string code = "limit.below", long order = 1) => new()
    {
        Key = rule.KeyFor(subject), Rule = rule.Number, Subject = subject, Priority = rule.Priority, Cause = Reason.Of(code), Active = true, IsAcknowledged = false, Order = order,
    };

    public static TheoryData<string, string, string, string, string, bool> Pairs => new()
    {
        { "R-001", "main-ph", "R-010", "main-ph", "limit.below", true },
        { "R-001", "main-ph", "R-010", "learner-ph", "limit.below", false },
        { "R-001", "main-ph", "R-006", "main-ph", "limit.below", true },
        { "R-001", "main-ph", "R-012", "main/ph", "test.below_limit", true },
        { "R-001", "main-ph", "R-012", "learner/ph", "test.below_limit", false },
        { "R-002", "main-chlorine", "R-010", "main-chlorine", "limit.below", true },
        { "R-002", "main-chlorine", "R-012", "main/free_chlorine", "test.below_limit", true },
        { "R-003", "main-temperature", "R-011", "main-temperature", "limit.above", true },
        { "R-013", "main/free_chlorine", "R-012", "main/free_chlorine", "test.below_limit", true },
        { "R-013", "main/free_chlorine", "R-012", "main/ph", "test.below_limit", false },
        { "R-013", "main/ph", "R-011", "main-ph", "limit.above", true },
        { "R-013", "main/ph", "R-011", "main-chlorine", "limit.above", false },
        { "R-007", "main/ph", "R-012", "main/ph", "test.below_limit", true },
        { "R-022", "main-flow", "R-020", "main-ph", "probe.silent", true },
        { "R-022", "main-flow", "R-020", "learner-ph", "probe.silent", false },
        { "R-022", "main-flow", "R-041", "main/free_chlorine", "test.nothing_watches", true },
        { "R-022", "main-flow", "R-041", "learner/ph", "test.nothing_watches", false },
        { "R-020", "main-ph", "R-023", "main-ph", "probe.clock_behind", true },
        { "R-020", "main-ph", "R-032", "acid-pump", "follow.signal_is_wrong", true },
        { "R-021", "main-ph", "R-032", "hypo-pump", "follow.signal_is_wrong", false },
        { "R-021", "main-chlorine", "R-032", "hypo-pump", "follow.signal_is_wrong", true },
        { "R-021", "main-orp", "R-041", "main/free_chlorine", "test.nothing_watches", true },
        { "R-014", "main/ph", "R-041", "main/ph", "test.repeat_wanted", true },
        { "R-030", "acid-pump", "R-011", "main-ph", "limit.above", true },
        { "R-030", "acid-pump", "R-010", "main-ph", "limit.below", false },
        { "R-030", "soda-pump", "R-010", "main-ph", "limit.below", true },
        { "R-030", "soda-pump", "R-011", "main-ph", "limit.above", false },
        { "R-030", "hypo-pump", "R-010", "main-chlorine", "limit.below", true },
        { "R-030", "hypo-pump", "R-010", "main-ph", "limit.below", false },
        { "R-031", "acid-pump", "R-030", "acid-pump", "pump.fault", true },
        { "R-031", "acid-pump", "R-011", "main-ph", "limit.above", true },
        { "R-005", "main", "R-002", "main-chlorine", "limit.above_stop", true },
        { "R-005", "main", "R-002", "main-chlorine", "limit.below_stop", false },
        { "R-005", "main", "R-013", "main/free_chlorine", "test.above_stop", true },
        { "R-005", "main", "R-013", "learner/free_chlorine", "test.above_stop", false },
        { "R-050", "circulation", "R-022", "main-flow", "flow.none", false },
        { "R-051", "f1", "R-050", "circulation", "circulation.low", true },
        { "R-051", "f1", "R-050", "circulation", "circulation.lost", false },
        { "R-050", "circulation", "R-033", "acid-pump", "dosing.without_circulation", false },
        { "R-022", "main-flow", "R-033", "acid-pump", "dosing.without_sample_flow", false },
        { "R-060", "main/pool/legionella", "R-062", "main/pool", "lab.resample_overdue", false },
        { "R-042", "dpd", "R-014", "main/free_chlorine", "test.repeat", false },
        { "R-010", "main-ph", "R-001", "main-ph", "limit.below_stop", false },
        { "R-040", "main", "R-012", "main/ph", "test.below_limit", false },
    };

    [Theory, MemberData(nameof(Pairs))]
    public void What_follows_from_what(string cause, string of, string rule, string on, string code, bool follows)
    {
        var (first, second) = (Up(RuleBook.All[cause], of), Up(RuleBook.All[rule], on, code, 2));
        Assert.Equal(follows ? first.Key : null, Consequences.RootOf(second, [first, second], Plan));
        Assert.Null(Consequences.RootOf(second, [first with { Active = false }, second], Plan));
    }

    [Theory]
    [InlineData("R-022", "main-flow", "flow.none", true)]
    [InlineData("R-010", "main-chlorine", "limit.below", true)]
    [InlineData("R-010", "main-orp", "limit.below", true)]
    [InlineData("R-011", "main-chlorine", "limit.above", false)]
    [InlineData("R-011", "main-ph", "limit.above", true)]
    [InlineData("R-011", "learner-ph", "limit.above", false)]
    [InlineData("R-010", "main-temperature", "limit.below", false)]
    [InlineData("R-017", "main-chlorine", "trend.heads_low", true)]
    [InlineData("R-017", "main-chlorine", "trend.heads_high", false)]
    [InlineData("R-017", "main-ph", "trend.heads_high", true)]
    [InlineData("R-030", "acid-pump", "pump.fault", false)]
    public void Without_circulation_there_is_neither_sample_nor_dosing(string rule, string subject, string code, bool follows)
    {
        var lost = Up(RuleBook.CirculationLow, "circulation", "circulation.lost") with { RaisedAt = Hall.Nine };
        var second = Up(RuleBook.All[rule], subject, code, 2) with { RaisedAt = Hall.Nine + Minute };
        Assert.Equal(follows ? lost.Key : null, Consequences.RootOf(second, [lost, second], Plan));
        // Low is not lost: it still brings dosing and sample.
        Assert.Null(Consequences.RootOf(second, [lost with { Cause = Reason.Of("circulation.low") }, second], Plan));
        // What stood before is a fault of its own.
        Assert.Null(Consequences.RootOf(second with { RaisedAt = Hall.Nine - (3 * Minute) }, [lost, second], Plan));
    }

    [Fact]
    public void A_cell_that_lost_its_flow_with_the_circulation_is_told_first_and_stands_under_it_all_the_same()
    {
        var lost = Up(RuleBook.CirculationLow, "circulation", "circulation.lost", 2) with { RaisedAt = Hall.Nine };
        var cell = Up(RuleBook.NoSampleFlow, "main-flow", "flow.none") with { RaisedAt = Hall.Nine - TimeSpan.FromSeconds(45) };
        Assert.Equal(lost.Key, Consequences.RootOf(cell, [cell, lost], Plan));
        // Chlorine that was low before the circulation was lost was low for another reason.
        var low = Up(RuleBook.BelowLimit, "main-chlorine") with { RaisedAt = Hall.Nine - TimeSpan.FromSeconds(1) };
        Assert.Null(Consequences.RootOf(low, [low, lost], Plan));
    }

    [Theory]
    [InlineData("main/ph", "test.below_stop", "main", "balance.aggressive", true)]
    [InlineData("main/ph", "test.above_stop", "main", "balance.scaling", true)]
    [InlineData("main/ph", "test.below_stop", "main", "balance.scaling", false)]
    [InlineData("main/ph", "test.above_stop", "main", "balance.aggressive", false)]
    [InlineData("main/ph", "test.below_stop", "learner", "balance.aggressive", false)]
    [InlineData("main/free_chlorine", "test.below_stop", "main", "balance.aggressive", false)]
    public void A_pH_beyond_its_stop_puts_the_balance_out_on_its_side(string test, string code, string pool, string balance, bool follows)
    {
        var (cause, second) = (Up(RuleBook.TestOutsideStop, test, code), Up(RuleBook.OutOfBalance, pool, balance, 2));
        Assert.Equal(follows ? cause.Key : null, Consequences.RootOf(second, [cause, second], Plan));
        // Of a pH only outside its limit alkalinity and hardness may be the greater part.
        Assert.Null(Consequences.RootOf(second, [Up(RuleBook.TestOutsideLimit, test, "test.below_limit"), second], Plan));
    }

    // Combined 0.5 beside free 0.4 where 0.5 of free is allowed: 1.25. With free at 1.1 it would be 0.45, and inside.
    [Theory]
    [InlineData("free_chlorine", 0.4, 1.1, 1.25, 0.5, "free_chlorine", true)]
    [InlineData("free_chlorine", 0.4, 0.9, 1.25, 0.5, "free_chlorine", false)]
    [InlineData("free_chlorine", 3.4, 3.0, 1.25, 0.5, "free_chlorine", false)]
    [InlineData("combined_chlorine", 1.5, 0.5, 1.2, 0.5, "free_chlorine", true)]
    [InlineData("combined_chlorine", 0.6, 0.5, 1.2, 0.5, "free_chlorine", false)]
    // A third of total is a half of free: 5/9 of total is 1.25 of free.
    [InlineData("free_chlorine", 0.4, 1.1, 5.0 / 9, 1.0 / 3, "total_chlorine", true)]
    [InlineData("free_chlorine", 0.4, 0.9, 5.0 / 9, 1.0 / 3, "total_chlorine", false)]
    public void A_part_that_one_of_its_tests_accounts_for_stands_under_it_and_one_that_it_does_not_stands_for_itself(
        string tested, double value, double limit, double part, double most, string of, bool follows)
    {
        var cause = Up(RuleBook.TestOutsideLimit, $"main/{tested}") with { Cause = Reason.Of(value < limit ? "test.below_limit" : "test.above_limit", "Main pool", tested, value, limit, "mg/L") };
        var second = Up(RuleBook.CombinedPart, "main/combined_per_free", order: 2) with { Cause = Reason.Of("test.combined_part", "Main pool", part, most, of, "row") };
        Assert.Equal(follows ? cause.Key : null, Consequences.RootOf(second, [cause, second], Plan));
        Assert.Null(Consequences.RootOf(second with { Subject = "learner/combined_per_free" }, [cause, second], Plan));
        Assert.Null(Consequences.RootOf(second, [cause with { Cause = Reason.Of("test.below_limit") }, second], Plan));
    }

    // docs/decisions/0013 says of each why nothing explains it and it explains nothing.
    [Theory]
    [InlineData("R-004"), InlineData("R-033"), InlineData("R-034"), InlineData("R-040"), InlineData("R-042"), InlineData("R-052"), InlineData("R-060"), InlineData("R-061"), InlineData("R-062"), InlineData("R-090")]
    public void What_stands_alone_for_a_reason_that_is_written_down_is_in_no_row_of_the_table(string number)
    {
        Assert.True(RuleBook.All.ContainsKey(number));
        Assert.DoesNotContain(Consequences.Table, link => link.Cause == number || link.Consequence == number);
    }

    [Fact]
    public void No_rule_is_a_cause_of_itself_over_any_way()
    {
        var reach = Consequences.Table.GroupBy(l => l.Cause).ToDictionary(g => g.Key, g => g.Select(l => l.Consequence).ToHashSet());
        for (var i = 0; i < reach.Count; i++)
            foreach (var below in reach.Values)
                foreach (var next in below.ToArray())
                    if (reach.TryGetValue(next, out var further)) below.UnionWith(further);
        Assert.All(reach, pair => Assert.DoesNotContain(pair.Key, pair.Value));
        Assert.All(Consequences.Table, link => Assert.True(RuleBook.All.ContainsKey(link.Cause) && RuleBook.All.ContainsKey(link.Consequence)));
    }

    [Fact]
    public void What_follows_stands_under_the_root_and_of_several_causes_under_the_most_severe_then_the_first()
    {
        var (flow, silent, wanted) = (Up(RuleBook.NoSampleFlow, "main-flow", order: 3), Up(RuleBook.Silent, "main-ph", order: 4), Up(RuleBook.TestWanted, "main/ph", order: 5));
        Assert.Equal(flow.Key, Consequences.RootOf(wanted, [silent, flow, wanted], Plan));
        var (test, stop, limit) = (Up(RuleBook.TestOutsideStop, "main/ph", order: 9), Up(RuleBook.StopPh, "main-ph", order: 8), Up(RuleBook.BelowLimit, "main-ph", order: 2));
        Assert.Equal(stop.Key, Consequences.RootOf(limit, [test, stop, limit], Plan));
        Assert.Equal(test.Key, Consequences.RootOf(limit, [test with { Order = 7 }, stop, limit], Plan));
        Assert.Equal(stop.Key, Consequences.RootOf(limit, [flow with { Order = 1 }, stop, limit], Plan));
    }

    [Fact]
    public void A_consequence_is_silent_only_while_a_cause_at_least_as_severe_stands_where_people_see_it()
    {
        var (stop, limit) = (Up(RuleBook.StopPh, "main-ph"), Up(RuleBook.BelowLimit, "main-ph") with { ConsequenceOf = "R-001/main-ph" });
        bool Speaks(AlarmRecord alarm, AlarmRecord? cause) => Annunciation.Speaks(alarm, key => key == cause?.Key ? cause : null);
        Assert.True(Speaks(stop, null));
        Assert.False(Speaks(limit, stop));
        Assert.False(Speaks(limit, stop with { IsAcknowledged = true }));
        Assert.True(Speaks(limit, null));
        Assert.True(Speaks(limit, stop with { Active = false }));
        Assert.True(Speaks(limit, stop with { Suppressed = true }));
        Assert.True(Speaks(limit, stop with { OutOfService = true }));
        Assert.True(Speaks(limit, stop with { ShelvedUntil = Hall.Nine }));
        Assert.True(Speaks(limit, stop with { Priority = Priority.Low }));
        Assert.False(Speaks(limit, stop with { Priority = limit.Priority }));
        Assert.True(Speaks(limit with { Active = false, LatchHeld = true }, null));
        foreach (var quiet in new[] { stop with { IsAcknowledged = true }, stop with { Active = false }, stop with { Suppressed = true }, stop with { ShelvedUntil = Hall.Nine }, stop with { OutOfService = true } })
            Assert.False(Speaks(quiet, null));
    }

    [Fact, Evidence("R-013")]
    public void Of_one_test_outside_stop_and_limit_only_the_stop_speaks()
    {
        var bench = new Bench(Plan);
        bench.Check(Bench.Test(Measurand.Ph, 9.0));
        var (stop, limit) = (bench.Alarm(RuleBook.TestOutsideStop, "main/ph")!, bench.Alarm(RuleBook.TestOutsideLimit, "main/ph")!);
        Assert.Equal((null, stop.Key), (stop.ConsequenceOf, limit.ConsequenceOf));
        Assert.True(Annunciation.Speaks(stop, Find(bench)));
        Assert.False(Annunciation.Speaks(limit, Find(bench)));
        Assert.True(stop.Order > 0 && limit.Order > stop.Order);
    }

    [Fact]
    public void A_consequence_that_outlives_its_cause_stands_for_itself_and_speaks()
    {
        var bench = new Bench(Plan);
        bench.Says(Hall.AcidState, "fault");
        bench.Hold(3 * Minute, (Hall.Ph, 7.8));
        Assert.Equal("R-030/acid-pump", bench.Alarm(RuleBook.AboveLimit, "main-ph")!.ConsequenceOf);
        Assert.False(Annunciation.Speaks(bench.Alarm(RuleBook.AboveLimit, "main-ph")!, Find(bench)));
        bench.Says(Hall.AcidState, "running");
        Assert.Null(bench.Alarm(RuleBook.AboveLimit, "main-ph")!.ConsequenceOf);
        Assert.True(Annunciation.Speaks(bench.Alarm(RuleBook.AboveLimit, "main-ph")!, Find(bench)));
    }

    [Fact]
    public void What_came_first_is_grouped_under_the_cause_that_came_later()
    {
        var bench = new Bench(Plan);
        bench.Hold(3 * Minute, (Hall.Ph, 7.8));
        Assert.Null(bench.Alarm(RuleBook.AboveLimit, "main-ph")!.ConsequenceOf);
        bench.Hold(Minute, (Hall.Ph, 8.6));
        Assert.Equal("R-001/main-ph", bench.Alarm(RuleBook.AboveLimit, "main-ph")!.ConsequenceOf);
    }

    [Fact]
    public void The_order_of_raising_rises_strictly_also_across_restarts()
    {
        var bench = new Bench(Plan);
        var orders = ImmutableArray.CreateBuilder<long>();
        foreach (var topic in new[] { Hall.AcidState, "hall/hypo/state", "hall/soda/state" })
        {
            bench.Says(topic, "fault");
            orders.Add(bench.State.Alarms.Values.Max(a => a.Order));
            bench.Restart();
        }

        Assert.Equal(orders.Distinct().Order(), orders);
        Assert.True(orders[0] > 0);
    }

    private static Func<string, AlarmRecord?> Find(Bench bench) => key => bench.State.Alarms.GetValueOrDefault(key);
}
