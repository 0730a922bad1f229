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
