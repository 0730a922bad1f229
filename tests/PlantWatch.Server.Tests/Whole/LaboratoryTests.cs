using System.Net;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Reports of a laboratory through the public interface: what is entered, what stands, and what alone answers it.</summary>
public sealed class LaboratoryTests
{
    private static readonly string Plant = WholeServer.Plant
        .Replace("products:\n", "people:\n  - { id: sample, name: J. Sample, role: duty_manager }\n  - { id: castellan, name: R. Castellan, role: operator }\nproducts:\n", StringComparison.Ordinal)
        .Replace("        volume_m3: 400\n", """
                    volume_m3: 400
                    laboratory:
                      every_days: 31
                      resample_days: 3
                      limits:
                        - { organism: pseudomonas_aeruginosa, high: 0, source: test }
                        - { organism: colony_count, high: 100, source: test }

            """, StringComparison.Ordinal);

    [Fact]
    public async Task A_report_is_entered_once_however_often_it_is_sent_and_its_id_is_never_another()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var (id, report) = (Guid.CreateVersion7(), Report(TimeSpan.FromDays(2), Colonies(20)));
        var first = await EnterAsync(server, id, report);
        var again = await EnterAsync(server, id, report);
        Assert.Equal((first.EnteredAt, false), (again.EnteredAt, again.Open));
        Assert.Equal((LabVerdict.Inside, 100.0), (first.Counts[0].Verdict, first.Counts[0].High));
        Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/laboratory/{id}", report with { SampleNumber = "other" })).StatusCode);
        var view = await ViewAsync(server);
        Assert.Equal(id, Assert.Single(view.Results).Id);
        Assert.Equal(report.SampledAt + TimeSpan.FromDays(31), Assert.Single(view.Pools).SampleDue);
    }

    [Fact]
    public async Task A_finding_stands_through_good_chemistry_and_a_restart_until_a_resample_is_inside()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        var found = Guid.CreateVersion7();
        var entered = await EnterAsync(server, found, Report(TimeSpan.FromDays(3), Pseudomonas(7)));
        Assert.Equal((true, LabVerdict.Outside), (entered.Open, entered.Counts[0].Verdict));
        Assert.Equal(entered.EnteredAt + TimeSpan.FromDays(3), (await ViewAsync(server)).Pools[0].ResampleDue);
        var good = WholeServer.Check(WholeServer.Now, new TestResult(Measurand.FreeChlorine, 1.5, TestMethod.Photometer), new TestResult(Measurand.Ph, 7.3, TestMethod.Photometer));
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", good)).IsSuccessStatusCode);
        server = await server.RestartAsync();
        await using (server)
        {
            Assert.True((await ViewAsync(server)).Results.Single().Open);
            Assert.True(await IsToldAsync(server));
            // None in 10 mL proves nothing of a limit of none in 100 mL.
            await EnterAsync(server, Guid.CreateVersion7(), Report(TimeSpan.FromDays(2), new LabCountRequest(Organism.PseudomonasAeruginosa, 0, CountSense.NotDetected, 10)));
            Assert.True(await IsToldAsync(server));
            await EnterAsync(server, Guid.CreateVersion7(), Report(TimeSpan.FromDays(1), new LabCountRequest(Organism.PseudomonasAeruginosa, 0, CountSense.NotDetected, 100)));
            var view = await ViewAsync(server);
            Assert.All(view.Results, r => Assert.False(r.Open));
            Assert.Null(view.Pools[0].ResampleDue);
            Assert.False(await IsToldAsync(server));
        }
    }

    [Fact]
    public async Task Only_a_person_entitled_closes_a_finding_and_says_why()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var id = Guid.CreateVersion7();
        await EnterAsync(server, id, Report(TimeSpan.FromDays(3), Pseudomonas(7)));
        foreach (var (request, field) in new[]
        {
            (new CloseLabResult("R. Castellan", "the bottle was dirty"), "by"), (new CloseLabResult("A. Stranger", "the bottle was dirty"), "by"),
            (new CloseLabResult("J. Sample", " "), "why"), (new CloseLabResult(null, "the bottle was dirty"), "by"),
        })
            await RefusedAsync(await server.PostAsync($"/api/v1/laboratory/{id}/close", request), field);
        Assert.True(await IsToldAsync(server));

        var closed = await WholeServer.ReadAsync<LabView>(await server.PostAsync($"/api/v1/laboratory/{id}/close", new CloseLabResult("J. Sample", "the bottle was dirty")));
        var result = Assert.Single(closed.Results);
        Assert.Equal((false, "J. Sample", "the bottle was dirty"), (result.Open, result.ClosedBy, result.ClosedWhy));
        Assert.False(await IsToldAsync(server));
        Assert.Equal(HttpStatusCode.NotFound, (await server.PostAsync($"/api/v1/laboratory/{Guid.CreateVersion7()}/close", new CloseLabResult("J. Sample", "why"))).StatusCode);
    }

    [Fact]
    public async Task What_is_wrong_is_said_beside_its_field_and_nothing_is_kept()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var report = Report(TimeSpan.FromDays(2), Colonies(20));
        foreach (var (wrong, field) in new[]
        {
            (report with { PoolId = "nowhere" }, "poolId"), (report with { By = " " }, "by"), (report with { Laboratory = null }, "laboratory"), (report with { SampleNumber = "" }, "sampleNumber"),
            (report with { SampledAt = WholeServer.Now + TimeSpan.FromDays(1) }, "sampledAt"), (report with { ReportedAt = report.SampledAt - TimeSpan.FromHours(1) }, "reportedAt"),
            (report with { Counts = [] }, "counts"), (report with { Counts = [Colonies(-1)] }, "counts[0]"), (report with { Counts = [Colonies(1), Colonies(2)] }, "counts"),
            (report with { Corrects = Guid.CreateVersion7() }, "corrects"),
        })
            await RefusedAsync(await server.PutAsync($"/api/v1/laboratory/{Guid.CreateVersion7()}", wrong), field);
        await RefusedAsync(await server.PutAsync($"/api/v1/laboratory/{Guid.NewGuid()}", report), "id");
        Assert.Empty((await ViewAsync(server)).Results);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync(new Uri("/api/v1/laboratory?pool=nowhere", UriKind.Relative))).StatusCode);
    }

    [Fact]
    public async Task Chemistry_of_the_day_stands_beside_the_count()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var sampled = WholeServer.Now - TimeSpan.FromHours(3);
        await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(sampled - TimeSpan.FromHours(1), new TestResult(Measurand.FreeChlorine, 0.4, TestMethod.Photometer))));
        var entered = await EnterAsync(server, Guid.CreateVersion7(), Report(TimeSpan.Zero, Colonies(20)) with { SampledAt = sampled });
        var water = Assert.Single(entered.Water);
        Assert.Equal((Measurand.FreeChlorine, 0.4, null), (water.Measurand, water.Value, water.ProbeId));
    }

    [Fact]
    public async Task The_health_of_the_alarms_counts_the_finding_and_turns_down_what_is_no_month()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var before = await server.GetAsync<AlarmHealthView>("/api/v1/alarm-health");
        await EnterAsync(server, Guid.CreateVersion7(), Report(TimeSpan.FromDays(3), Pseudomonas(7)));
        var health = await server.GetAsync<AlarmHealthView>("/api/v1/alarm-health?people=2");
        Assert.DoesNotContain(before.Busiest, b => b.Rule == "R-060");
        var told = Assert.Single(health.Busiest, b => b.Rule == "R-060");
        Assert.Equal((1, "Main pool, Pseudomonas aeruginosa"), (told.Count, told.SubjectName));
        Assert.Equal(health.Told, health.Days.Sum(d => d.Count));
        foreach (var (query, field) in new[] { ("month=2026-13", "month"), ("month=autumn", "month"), ("month=2999-01", "month"), ("people=0", "people"), ("people=-1", "people") })
            await RefusedAsync(await server.Http.GetAsync(new Uri($"/api/v1/alarm-health?{query}", UriKind.Relative)), field);
    }

    [Fact]
    public async Task The_rate_of_alarms_is_over_the_time_that_was_observed_and_not_over_the_month()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await EnterAsync(server, Guid.CreateVersion7(), Report(TimeSpan.FromDays(3), Pseudomonas(7)));
        var health = await server.GetAsync<AlarmHealthView>("/api/v1/alarm-health");
        // The record is seconds old, the month may be weeks old.
        Assert.InRange((health.To - health.From).TotalMinutes, 0, 10);
        Assert.Equal(health.Told / (health.To - health.From).TotalHours, health.PerHour, 1e-6);
        await RefusedAsync(await server.Http.GetAsync(new Uri("/api/v1/alarm-health?month=2020-01", UriKind.Relative)), "month");
    }

    private static LabCountRequest Pseudomonas(double count) => new(Organism.PseudomonasAeruginosa, count, CountSense.Counted, 100);

    private static LabCountRequest Colonies(double count) => new(Organism.ColonyCount, count, CountSense.Counted, 1);

    private static LabRequest Report(TimeSpan age, params LabCountRequest[] counts) =>
        new("main", SamplePoint.Pool, null, WholeServer.Now - age, WholeServer.Now, "Water laboratory", $"S-{age.TotalDays}", "R. Castellan", counts, null, null);

    private static async Task<LabResultView> EnterAsync(WholeServer server, Guid id, LabRequest report) =>
        await WholeServer.ReadAsync<LabResultView>(await server.PutAsync($"/api/v1/laboratory/{id}", report));

    private static Task<LabView> ViewAsync(WholeServer server) => server.GetAsync<LabView>("/api/v1/laboratory?pool=main");

    private static async Task<bool> IsToldAsync(WholeServer server) =>
        (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms.Any(a => a is { Rule: "R-060", Active: true });

    private static async Task RefusedAsync(HttpResponseMessage answer, string field)
    {
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.StatusCode == HttpStatusCode.BadRequest, $"{field}: {answer.StatusCode} {text}");
        Assert.Contains($"\"{field}\"", text, StringComparison.Ordinal);
    }
}
