using System.Net;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>What people do: checks, calibrations, acknowledgements, fault notes, through the public interface.</summary>
public sealed class CheckTests
{
    private static readonly TestResult Ph = new(Measurand.Ph, 7.38, TestMethod.Photometer);

    [PeerFact("mosquitto_pub")]
    public async Task A_check_is_answered_with_what_it_says_of_each_probe_and_sending_it_again_changes_nothing()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.40", 20));
        var (id, check) = (Guid.CreateVersion7(), WholeServer.Check(WholeServer.Now, Ph));
        var first = await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{id}", check));
        var again = await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{id}", check));
        Assert.Equal(Verdict.Agrees, first.Judgements.Single(j => j.ProbeId == "ph").Verdict);
        Assert.Equal(first.ArrivedAt, again.ArrivedAt);
        Assert.Equal(first.Judgements.Select(j => j.Reasons[0].Text), again.Judgements.Select(j => j.Reasons[0].Text));
        Assert.Single(await server.GetAsync<List<CheckAnswer>>("/api/v1/checks?pool=main"));
    }

    [PeerFact("mosquitto_pub")]
    public async Task The_same_id_with_other_content_is_a_conflict_also_after_a_restart()
    {
        var server = await WholeServer.StartAsync();
        var (id, check) = (Guid.CreateVersion7(), WholeServer.Check(WholeServer.Now, Ph));
        await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{id}", check));
        server = await server.RestartAsync();
        await using (server)
        {
            var other = await server.PutAsync($"/api/v1/checks/{id}", check with { Who = "somebody else" });
            Assert.Equal(HttpStatusCode.Conflict, other.StatusCode);
            await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{id}", check));
        }
    }

    [Fact]
    public async Task What_is_impossible_is_refused_beside_its_field_and_nothing_is_kept()
    {
        await using var server = await WholeServer.StartAsync();
        var check = WholeServer.Check(WholeServer.Now + TimeSpan.FromDays(1), Ph with { Value = -1 });
        var answer = await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.Contains("\"sampledAt\"", text, StringComparison.Ordinal);
        Assert.Contains("\"results[0].value\"", text, StringComparison.Ordinal);
        Assert.Empty(await server.GetAsync<List<CheckAnswer>>("/api/v1/checks?pool=main"));
    }

    [Theory]
    [InlineData("9999-12-31T23:59:59.9999999Z")]
    [InlineData("0001-01-01T00:00:00Z")]
    public async Task A_sample_at_the_end_of_time_is_refused_beside_its_field(string sampledAt)
    {
        await using var server = await WholeServer.StartAsync();
        Assert.True(Instant.TryParse(sampledAt, out var at));
        var answer = await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(at, Ph));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("\"sampledAt\"", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_seen_in_the_cell_and_the_step_of_a_count_are_kept_with_the_check_and_weigh_in_it()
    {
        await using var server = await WholeServer.StartAsync();
        var check = WholeServer.Check(
            WholeServer.Now, new TestResult(Measurand.FreeChlorine, 0, TestMethod.Photometer, Look: CellLook.PinkFlash),
            new TestResult(Measurand.TotalAlkalinity, 90, TestMethod.TabletCount, Step: 20));
        var answer = await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check));
        Assert.Equal("check.flash_of_pink", Assert.Single(answer.Remarks).Code);
        var kept = Assert.Single(await server.GetAsync<List<CheckAnswer>>("/api/v1/checks?pool=main")).Check;
        Assert.Equal((CellLook.PinkFlash, 20.0), (kept.Results[0].Look, kept.Results[1].Step));
        var manual = (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Pools.Single(p => p.Id == "main").Manual;
        Assert.True(manual.Single(m => m.Measurand == Measurand.FreeChlorine).Suspect);
        // One tablet in 100 mL is 20 mg/L: k = 2 of 20/sqrt(12) and of what the tablets have in common.
        Assert.Equal(2 * Math.Sqrt((400.0 / 12) + 25), manual.Single(m => m.Measurand == Measurand.TotalAlkalinity).U, 1e-9);
    }

    [PeerFact("mosquitto_pub")]
    public async Task Checks_that_agree_with_each_other_against_a_probe_lead_to_an_offer_that_an_engineer_brings_into_force()
    {
        await using var server = await WholeServer.StartAsync();
        for (var i = 0; i < 4; i++)
        {
            await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.90", 20));
            await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, Ph with { Value = 7.4 + (i * 0.01) })));
        }

        var history = await server.GetAsync<ProbeHistory>("/api/v1/probes/ph");
        Assert.Equal(Verdict.ProbeDrifts, history.Now.Verdict);
        var offer = Assert.IsType<OfferedCalibration>(history.Offer);
        Assert.Equal(CalibrationKind.Offset, offer.Kind);
        Assert.InRange(offer.Offset, -0.6, -0.3);

        var id = Guid.CreateVersion7();
        await WholeServer.ReadAsync<CalibrationView>(await server.PutAsync($"/api/v1/calibrations/{id}", new ProposeCalibration("ph", offer.Kind, offer.Slope, offer.Offset, offer.Checks, "R. Castellan", null)));
        var inForce = await WholeServer.ReadAsync<CalibrationView>(await server.PostAsync($"/api/v1/calibrations/{id}/decision", new DecideCalibration(CalibrationStatus.Approved, "I. Brandvold", "two rounds agree", Instant.Never)));
        Assert.Equal(CalibrationStatus.Approved, inForce.Status);

        await server.PublishAsync("hall/ph", "7.90");
        var ph = (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Probes.Single(p => p.Id == "ph");
        Assert.Equal((7.90, 7.90 + offer.Offset), (ph.Raw!.Value, ph.Value!.Value));
        var raw = await server.Series.RawAsync(new PartitionKey("hall"), "ph", WholeServer.Now - TimeSpan.FromHours(1), WholeServer.Now, 1000, default);
        Assert.All(raw, r => Assert.Equal(7.90, r.Raw));
    }

    [Fact]
    public async Task A_probe_scaled_by_the_panel_is_never_calibrated_here()
    {
        await using var server = await WholeServer.StartAsync();
        var refused = await server.PutAsync($"/api/v1/calibrations/{Guid.CreateVersion7()}", new ProposeCalibration("panel-ph", CalibrationKind.Offset, 1, -0.2, null, "R. Castellan", null));
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);

        var id = Guid.CreateVersion7();
        await WholeServer.ReadAsync<CalibrationView>(await server.PutAsync($"/api/v1/calibrations/{id}", new ProposeCalibration("panel-ph", CalibrationKind.PanelAdjustment, 1, -0.2, null, "R. Castellan", null)));
        Assert.Equal(HttpStatusCode.BadRequest, (await server.PostAsync($"/api/v1/calibrations/{id}/decision", new DecideCalibration(CalibrationStatus.Approved, "I. Brandvold", null, Instant.Never))).StatusCode);
        var done = await WholeServer.ReadAsync<CalibrationView>(await server.PostAsync($"/api/v1/calibrations/{id}/decision", new DecideCalibration(CalibrationStatus.Adjusted, "I. Brandvold", "turned by -0.2", Instant.Never)));
        Assert.Equal(CalibrationStatus.Adjusted, done.Status);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_pump_fault_raises_an_alarm_that_is_acknowledged_and_noted_by_maintenance()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        var alarm = (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms.Single(a => a.Rule == "R-030");
        Assert.Equal("Acid pump reports a fault", alarm.Cause);

        await WholeServer.ReadAsync<AlarmView>(await server.PostAsync($"/api/v1/alarms/{alarm.Id}/acknowledge", new Acknowledge("T. Wren", "on my way")));
        Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync($"/api/v1/alarms/{alarm.Id}/made-safe", new MakeSafe(true, true, true, "T. Wren", null))).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await server.PostAsync($"/api/v1/alarms/{alarm.Id}/made-safe", new MakeSafe(true, true, true, " ", null))).StatusCode);
        var noteId = Guid.CreateVersion7();
        await WholeServer.ReadAsync<JobView>(await server.PutAsync($"/api/v1/jobs/{noteId}", new JobRequest("acid-pump", "no stroke, relay clicks", null, JobState.Open, alarm.Id, "T. Wren")));
        Assert.Equal(HttpStatusCode.BadRequest, (await server.PutAsync($"/api/v1/jobs/{noteId}", new JobRequest("acid-pump", "no stroke, relay clicks", null, JobState.Done, alarm.Id, "T. Wren"))).StatusCode);
        await WholeServer.ReadAsync<JobView>(await server.PutAsync($"/api/v1/jobs/{noteId}", new JobRequest("acid-pump", "no stroke, relay clicks", "diaphragm replaced", JobState.Done, alarm.Id, "T. Wren")));
        await server.PublishAsync("hall/acid/state", "running");

        var view = await server.GetAsync<CircuitView>("/api/v1/circuits/hall");
        Assert.DoesNotContain(view.Alarms, a => a.Rule == "R-030");
        var job = Assert.Single(await server.GetAsync<List<JobView>>("/api/v1/jobs?asset=acid-pump"));
        Assert.Equal((noteId, JobState.Done, "diaphragm replaced", JobEffect.Unknown), (job.Id, job.State, job.Done, job.Effect));
        Assert.Equal([JobState.Open, JobState.Done], (await server.GetAsync<List<JobVersion>>($"/api/v1/jobs/{noteId}")).Select(v => v.State));
        Assert.Contains(await server.GetAsync<List<AlarmChangeView>>("/api/v1/alarms"), c => c is { By: "T. Wren", Comment: "on my way" });
    }
}
