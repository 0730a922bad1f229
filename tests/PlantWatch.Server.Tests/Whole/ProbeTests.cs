using System.Net;
using PlantWatch.Core.Probes.Answering;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>A probe with its past, as the interface gives it.</summary>
public sealed class ProbeTests
{
    [PeerFact("mosquitto_pub")]
    public async Task Every_verdict_is_given_once_page_by_page_even_where_several_checks_share_a_moment()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.42", 20));
        var moment = WholeServer.Now;
        // Nine checks of three moments: a page of two must not part those of one.
        for (var i = 0; i < 9; i++) await CheckAsync(server, moment - TimeSpan.FromHours(i / 3), 7.40 + (i * 0.01));

        var seen = new List<Guid>();
        var (older, pages) = ("", 0);
        do
        {
            var page = await server.GetAsync<JudgementPage>($"/api/v1/probes/ph/judgements?limit=2{older}");
            seen.AddRange(page.Judgements.Select(j => j.CheckId));
            older = page.Older is { } next ? $"&before={Uri.EscapeDataString(next.ToString())}" : "";
            pages++;
        }
        while (older.Length > 0);
        Assert.Equal((9, 9, 3), (seen.Count, seen.Distinct().Count(), pages));
    }

    [Fact]
    public async Task A_probe_without_a_reading_or_a_check_says_what_to_do_first()
    {
        await using var server = await WholeServer.StartAsync();
        var history = await server.GetAsync<ProbeHistory>("/api/v1/probes/ph");
        Assert.Equal((Believe.Tests, "probe_answer.never_heard", NextStep.RestoreSignal), (history.Answer.Whom, history.Answer.Sentence.Code, history.Answer.Steps[0].Kind));
        Assert.Equal((0, 0), (history.Judgements.Count, history.Bias.Count));
        Assert.Null(history.Ahead);
        Assert.Null(history.Older);
        Assert.Equal(0.15, history.Limits!.MaintenanceAt);
    }

    [PeerFact("mosquitto_pub")]
    public async Task The_bias_after_each_check_and_the_bias_to_come_stand_on_one_axis()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.42", 20));
        for (var i = 0; i < 4; i++) await CheckAsync(server, WholeServer.Now, 7.40 + (i * 0.01));
        var history = await server.GetAsync<ProbeHistory>("/api/v1/probes/ph");
        Assert.Equal(4, history.Bias.Count);
        Assert.Equal(history.Bias.OrderBy(p => p.At), history.Bias);
        Assert.Equal(Believe.Either, history.Answer.Whom);
        Assert.Equal(history.Judgements.Select(j => j.CheckId).Order(), history.TakenIn.Order());
        Assert.True(history.Ahead!.Points[0].At >= history.Bias[^1].At);
        Assert.Equal(4, history.Agreement!.Count);
    }

    [Fact]
    public async Task A_page_that_begins_at_no_time_is_refused_and_a_stranger_is_not_found()
    {
        await using var server = await WholeServer.StartAsync();
        Assert.Equal(HttpStatusCode.BadRequest, (await server.Http.GetAsync("/api/v1/probes/ph/judgements?before=yesterday")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync("/api/v1/probes/nobody/judgements")).StatusCode);
    }

    private static async Task CheckAsync(WholeServer server, Instant at, double ph) => await WholeServer.ReadAsync<CheckAnswer>(
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(at, new TestResult(Measurand.Ph, ph, TestMethod.Photometer))));
}
