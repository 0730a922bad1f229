using System.Net;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.House;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The rules through the public interface: their words, what they did here, and what of them is out of service.</summary>
public sealed class RulesTests
{
    private const string Fault = "R-030";

    private static async Task<IReadOnlyList<RuleView>> RulesAsync(WholeServer server) => await server.GetAsync<RuleView[]>("/api/v1/rules");

    private static async Task<RuleView> RuleAsync(WholeServer server, string number) => (await RulesAsync(server)).Single(r => r.Number == number);

    [Fact]
    public async Task Every_rule_is_told_in_the_words_of_its_page()
    {
        await using var server = await WholeServer.StartAsync();
        var rules = await RulesAsync(server);
        Assert.Equal(RuleBook.All.Keys.Order(StringComparer.Ordinal), rules.Select(r => r.Number));
        var page = Repository.ReadText("docs", "rules.md");
        Assert.All(rules, rule => Assert.All(
            (string[])[$"## {rule.Number} {rule.Title}\n\n{rule.Sentence}\n", $"| cause | {rule.Cause} |", $"| consequence | {rule.Consequence} |", $"| what to do | {rule.Action} |", $"| time to respond | {rule.TimeToRespond} |"],
            said => Assert.Contains(said, page, StringComparison.Ordinal)));
        var stop = rules[0];
        Assert.Equal((Priority.Critical, true, false, false, 60.0, 0, 0), (stop.Priority, stop.Latches, stop.Shelvable, stop.MayLeaveService, stop.ReAlarmMinutes, stop.Rang, stop.Standing));
        Assert.Empty(stop.Subjects);
    }

    [Fact]
    public async Task What_rang_and_what_stands_is_counted_with_its_rule()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        var rule = await RuleAsync(server, Fault);
        Assert.Equal((1, 1), (rule.Rang, rule.Standing));
        await server.PublishAsync("hall/acid/state", "running");
        await server.PublishAsync("hall/acid/state", "fault");
        await server.PublishAsync("hall/acid/state", "running");
        rule = await RuleAsync(server, Fault);
        Assert.Equal((2, 0), (rule.Rang, rule.Standing));
        Assert.True(rule.LastRang > WholeServer.Now - TimeSpan.FromMinutes(2));
        Assert.Equal(0, (await RuleAsync(server, "R-010")).Rang);
    }

    [Fact]
    public async Task What_a_rule_can_be_about_is_offered_and_taken_for_every_rule_that_may_leave_service()
    {
        await using var server = await WholeServer.StartAsync();
        var rules = await RulesAsync(server);
        foreach (var (rule, subject) in rules.SelectMany(r => r.Subjects.Select(s => (r, s))))
        {
            Assert.NotEqual(subject.Subject, subject.Name);
            var answer = await server.PostAsync("/api/v1/alarms/out-of-service", new OutOfService(rule.Number, subject.Subject, "J. Sample", "rebuilt"));
            Assert.True(answer.IsSuccessStatusCode, $"{rule.Number} {subject.Subject}: {await answer.Content.ReadAsStringAsync()}");
        }

        // This plant has no duties, no reagents, no filters, no pump whose rate is known, no product whose order takes a known time, nothing that tells flow and no way to tell anybody.
        var without = rules.Where(r => r.MayLeaveService && r.Subjects.Count == 0).Select(r => r.Number);
        Assert.Equal(["R-022", "R-035", "R-036", "R-037", "R-039", "R-040", "R-042", "R-045", "R-050", "R-051", "R-052", "R-053", "R-080"], without);
        Assert.All(rules.Where(r => !r.MayLeaveService), r => Assert.Empty(r.Subjects));
    }

    [Fact]
    public async Task What_is_out_of_service_stands_with_its_rule_until_its_time_and_comes_back()
    {
        await using var server = await WholeServer.StartAsync();
        var until = WholeServer.Now + TimeSpan.FromDays(1);
        var taken = await WholeServer.ReadAsync<AlarmView>(await server.PostAsync("/api/v1/alarms/out-of-service", new OutOfService(Fault, "acid-pump", "J. Sample", "pump is away for repair", until)));
        Assert.Equal(until, taken.OutOfServiceUntil);
        var told = Assert.Single((await RuleAsync(server, Fault)).OutOfService);
        Assert.Equal(("acid-pump", "Main pool, Acid pump", "J. Sample", "pump is away for repair", until), (told.Subject, told.Name, told.By, told.Why, told.Until!.Value));
        await WholeServer.ReadAsync<AlarmView>(await server.PostAsync("/api/v1/alarms/return-to-service", new OutOfService(Fault, "acid-pump", "J. Sample", null)));
        Assert.Empty((await RuleAsync(server, Fault)).OutOfService);
    }

    [Fact]
    public async Task An_alarm_says_whether_it_may_be_taken_out_of_service_and_the_server_keeps_its_word()
    {
        // Work that comes round is planned otherwise in the plant file; nothing of it is put away here.
        await using var server = await WholeServer.StartAsync(plant: WholeServer.Plant.Replace("    probes:\n", "    tasks:\n      - { id: tube, name: Pump tube, asset: acid-pump, every_days: 180, last_done: \"2020-01-01\" }\n    probes:\n", StringComparison.Ordinal));
        await server.PublishAsync("hall/acid/state", "fault");
        await Peer.UntilAsync(() => AlarmsAsync(server).Result.Count == 2, "the pump fault and the work overdue stand");
        foreach (var alarm in await AlarmsAsync(server))
        {
            Assert.Equal(alarm.Rule == Fault, alarm.MayLeaveService);
            var answer = await server.PostAsync("/api/v1/alarms/out-of-service", new OutOfService(alarm.Rule, alarm.Subject, "J. Sample", "away"));
            Assert.Equal(alarm.MayLeaveService, answer.IsSuccessStatusCode);
        }

        Assert.All(await AlarmsAsync(server), a => Assert.False(a.MayLeaveService, $"{a.Rule}: it is out already, or never goes"));
    }

    private static async Task<IReadOnlyList<AlarmView>> AlarmsAsync(WholeServer server) => (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms;

    [Fact]
    public async Task A_time_that_is_over_and_what_is_about_safety_are_turned_down()
    {
        await using var server = await WholeServer.StartAsync();
        var late = await server.PostAsync("/api/v1/alarms/out-of-service", new OutOfService(Fault, "acid-pump", "J. Sample", "away", WholeServer.Now - TimeSpan.FromMinutes(1)));
        Assert.Equal(HttpStatusCode.BadRequest, late.StatusCode);
        Assert.Contains("\"until\"", await late.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync("/api/v1/alarms/out-of-service", new OutOfService("R-001", "ph", "J. Sample", "away"))).StatusCode);
    }
}
