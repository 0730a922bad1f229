using System.Net;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The doors of the bench: a probe is taken out, put into buffers, signed for and looked over by a second person.</summary>
public sealed class BenchTests
{
    private static readonly PointRequest Seven = new() { Buffer = PhBuffer.Technical7, Celsius = 25, Reading = 7.2, Lot = "K-2031", Expires = new DateOnly(2027, 6, 30) };
    private static readonly SheetRequest Sheet = new()
    {
        By = "R. Castellan", Work = [ProbeWork.Cleaned], AsFound = [Seven with { Reading = 7.35 }], Points = [Seven, Seven with { Buffer = PhBuffer.Technical4, Reading = 4.2 }],
    };

    [PeerFact("mosquitto_pub")]
    public async Task A_signed_sheet_corrects_at_once_is_kept_over_a_restart_and_reviewed_by_somebody_else()
    {
        var server = await WholeServer.StartAsync();
        var id = Guid.CreateVersion7();
        var signed = await WholeServer.ReadAsync<CalibrationView>(await server.PutAsync($"/api/v1/bench/ph/sheets/{id}", Sheet));
        Assert.Equal((CalibrationKind.Offset, CalibrationStatus.Approved, CalibrationBasis.Buffers, true), (signed.Kind, signed.Status, signed.Basis, signed.WaitsForReview));
        Assert.Equal([ProbeWork.Cleaned], signed.Work);
        Assert.Equal((100.0, 0.35, 0.0), (Math.Round(signed.Sheet!.SlopePercent!.Value, 6), Math.Round(signed.Sheet.FoundError!.Value, 6), Math.Round(signed.Sheet.LeftError!.Value, 6)));
        Assert.Equal(("K-2031", new DateOnly(2027, 6, 30), 7.00), (signed.Sheet.Points[0].Lot, signed.Sheet.Points[0].Expires, signed.Sheet.Points[0].Known));
        await server.PublishAsync("hall/ph", "7.60");
        Assert.Equal(7.4, (await ProbeAsync(server)).Value!.Value, 9);

        server = await server.RestartAsync();
        await using (server)
        {
            await WholeServer.ReadAsync<CalibrationView>(await server.PutAsync($"/api/v1/bench/ph/sheets/{id}", Sheet));
            Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/bench/ph/sheets/{id}", Sheet with { Note = "another" })).StatusCode);
            Assert.Contains("R. Castellan did this", await RefusedAsync(await server.PostAsync($"/api/v1/calibrations/{id}/review", new ReviewRequest(true, " r. castellan", null)), HttpStatusCode.Conflict), StringComparison.Ordinal);
            // The door knows the same person in another order and in letters that look alike.
            foreach (var again in (string[])["Castellan, R.", "R. C\u0430stellan"])
                Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync($"/api/v1/calibrations/{id}/review", new ReviewRequest(true, again, null))).StatusCode);
            Assert.Contains("Say what is wrong", await RefusedAsync(await server.PostAsync($"/api/v1/calibrations/{id}/review", new ReviewRequest(false, "I. Brandvold", null)), HttpStatusCode.BadRequest), StringComparison.Ordinal);
            for (var i = 0; i < 2; i++)
            {
                var reviewed = await WholeServer.ReadAsync<CalibrationView>(await server.PostAsync($"/api/v1/calibrations/{id}/review", new ReviewRequest(true, "I. Brandvold", "bottles seen")));
                Assert.Equal((false, "I. Brandvold", "bottles seen"), (reviewed.WaitsForReview, reviewed.ReviewedBy, reviewed.Review));
            }

            Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync($"/api/v1/calibrations/{id}/review", new ReviewRequest(false, "T. Wren", "no"))).StatusCode);
            Assert.Equal(id, (await server.GetAsync<CalibrationView>($"/api/v1/calibrations/{id}")).Id);
        }
    }

    [Fact]
    public async Task A_second_look_by_another_spelling_that_a_journal_of_before_holds_is_answered_as_the_first_time_when_it_is_sent_again()
    {
        await using var server = await WholeServer.StartAsync();
        var (id, by) = (Guid.CreateVersion7(), "Castellan, R.");
        await WholeServer.ReadAsync<CalibrationView>(await server.PutAsync($"/api/v1/bench/ph/sheets/{id}", Sheet));
        var review = new ReviewRequest(true, by, null);
        await RefusedAsync(await server.PostAsync($"/api/v1/calibrations/{id}/review", review), HttpStatusCode.Conflict);
        Assert.IsType<Outcome.Done>(await server.Host.SendAsync("hall", at => new CalibrationReviewed(at, id, true, by, null), default));
        Assert.Equal(by, (await WholeServer.ReadAsync<CalibrationView>(await server.PostAsync($"/api/v1/calibrations/{id}/review", review))).ReviewedBy);
    }

    [PeerFact("mosquitto_pub")]
    public async Task Readings_in_a_buffer_are_told_to_be_settled_and_are_no_pool_water()
    {
        await using var server = await WholeServer.StartAsync();
        var (work, since) = (Guid.CreateVersion7(), WholeServer.Now);
        var begun = await WholeServer.ReadAsync<WorkView>(await server.PutAsync($"/api/v1/bench/ph/out/{work}", new WorkRequest("R. Castellan")));
        Assert.Equal((work, true, TimeSpan.FromMinutes(30)), (begun.Id, begun.Open, begun.Until - begun.Since));
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("4.01", 5));
        var ph = await ProbeAsync(server);
        Assert.Equal((false, Standing.CheckFunction, "signal.worked_on"), (ph.Good, ph.Standing, ph.Reasons[0].Code));
        Assert.DoesNotContain((await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms, a => a.Subject == "ph" && a.Active);
        var bench = await server.GetAsync<BenchView>($"/api/v1/bench/ph?since={since}");
        Assert.Equal((false, 5, 60.0), (bench.Settled!.Value.IsSettled, bench.Settled.Value.Readings, bench.Settled.Value.SecondsNeeded));
        Assert.Equal(4.01, bench.Settled.Value.Mean!.Value, 9);
        Assert.Equal(7, bench.Buffers.Count);
        Assert.False(bench.Overdue);

        Assert.Contains("R. Castellan is working on this probe", await RefusedAsync(await server.PutAsync($"/api/v1/bench/ph/out/{Guid.CreateVersion7()}", new WorkRequest("T. Wren")), HttpStatusCode.Conflict), StringComparison.Ordinal);
        Assert.False((await WholeServer.ReadAsync<WorkView>(await server.PostAsync($"/api/v1/bench/ph/out/{work}/back", new WorkRequest("R. Castellan")))).Open);
        await server.PublishAsync("hall/ph", "7.40");
        Assert.True((await ProbeAsync(server)).Good);
    }

    [Fact]
    public async Task What_would_follow_is_said_without_keeping_anything()
    {
        await using var server = await WholeServer.StartAsync();
        var result = await WholeServer.ReadAsync<SheetResult>(await server.PostAsync("/api/v1/bench/ph/result", Sheet with { Points = [Seven, Seven with { Buffer = PhBuffer.Technical4, Reading = 4.8 }] }));
        Assert.Equal((CalibrationStatus.Proposed, BenchVerdict.Outside, "bench.slope_low"), (result.Status, result.Sheet.Verdict, result.Sheet.Why[0].Code));
        Assert.Empty(await server.GetAsync<List<CalibrationView>>("/api/v1/calibrations?probe=ph"));
    }

    [Fact]
    public async Task Beyond_the_limits_a_sheet_waits_for_somebody_else_to_approve_it()
    {
        await using var server = await WholeServer.StartAsync();
        var id = Guid.CreateVersion7();
        var signed = await WholeServer.ReadAsync<CalibrationView>(await server.PutAsync($"/api/v1/bench/ph/sheets/{id}", Sheet with { Points = [Seven, Seven with { Buffer = PhBuffer.Technical4, Reading = 4.8 }] }));
        Assert.Equal(CalibrationStatus.Proposed, signed.Status);
        foreach (var self in (string[])["R. Castellan", "Castellan, R.", "R. C\u0430stellan"])
            Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync($"/api/v1/calibrations/{id}/decision", new DecideCalibration(CalibrationStatus.Approved, self, "it will do", Instant.Never))).StatusCode);
        var approved = await WholeServer.ReadAsync<CalibrationView>(await server.PostAsync($"/api/v1/calibrations/{id}/decision", new DecideCalibration(CalibrationStatus.Approved, "I. Brandvold", "until the new one comes", Instant.Never)));
        Assert.Equal((CalibrationStatus.Approved, signed.HoldsFrom, "I. Brandvold"), (approved.Status, approved.HoldsFrom, approved.ReviewedBy));
    }

    [Fact]
    public async Task Wrong_input_is_named_with_its_field()
    {
        await using var server = await WholeServer.StartAsync();
        async Task Refused(string field, SheetRequest sheet, string probe = "ph") =>
            Assert.Contains($"\"field\":\"{field}\"", await RefusedAsync(await server.PutAsync($"/api/v1/bench/{probe}/sheets/{Guid.CreateVersion7()}", sheet), HttpStatusCode.BadRequest), StringComparison.Ordinal);
        await Refused("by", Sheet with { By = " " });
        await Refused("points[0].celsius", Sheet with { Points = [Seven with { Celsius = null }] });
        await Refused("points[1].reading", Sheet with { Points = [Seven, Seven with { Reading = null }] });
        await Refused("points", Sheet with { Points = [Seven with { Reading = 4.1 }, Seven with { Buffer = PhBuffer.Technical4, Reading = 7.1 }] });
        await Refused("points[0].solution", Sheet with { Points = [Seven with { Buffer = PhBuffer.Unknown }] });
        await Refused("endedAt", Sheet with { EndedAt = WholeServer.Now + TimeSpan.FromHours(2) });
        await Refused("points", new SheetRequest { By = "R. Castellan" });
        await Refused("asFound[0].solution", Sheet, "water");
        Assert.Equal(HttpStatusCode.NotFound, (await server.PutAsync($"/api/v1/bench/nobody/sheets/{Guid.CreateVersion7()}", Sheet)).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await server.PutAsync($"/api/v1/bench/ph/sheets/{Guid.NewGuid()}", Sheet)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await server.PostAsync($"/api/v1/calibrations/{Guid.CreateVersion7()}/review", new ReviewRequest(true, "I. Brandvold", null))).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await server.PostAsync($"/api/v1/bench/ph/out/{Guid.CreateVersion7()}/back", new WorkRequest("I. Brandvold"))).StatusCode);
    }

    [Fact]
    public async Task What_was_turned_on_the_panel_is_logged_and_never_corrected_again()
    {
        await using var server = await WholeServer.StartAsync();
        var turned = await WholeServer.ReadAsync<CalibrationView>(await server.PutAsync($"/api/v1/bench/panel-ph/sheets/{Guid.CreateVersion7()}", Sheet with { AsFound = [Seven with { Reading = 7.3 }], Points = [Seven with { Reading = 7.0 }] }));
        Assert.Equal((CalibrationKind.PanelAdjustment, CalibrationStatus.Adjusted, -0.3), (turned.Kind, turned.Status, Math.Round(turned.Offset, 6)));
    }

    private static async Task<ProbeView> ProbeAsync(WholeServer server) => (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Probes.Single(p => p.Id == "ph");

    private static async Task<string> RefusedAsync(HttpResponseMessage response, HttpStatusCode status)
    {
        Assert.Equal(status, response.StatusCode);
        return await response.Content.ReadAsStringAsync();
    }
}
