using System.Net;
using System.Net.Http.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The exceptions through the public interface: from a test outside to the one that closes it, over a restart, in a table.</summary>
public sealed class ExceptionTests
{
    [Fact]
    public async Task A_breach_stands_open_over_a_restart_with_what_is_owed_and_is_closed_by_a_retest()
    {
        var server = await WholeServer.StartAsync();
        await TestAsync(server, 7.9, minutesAgo: 20);
        var open = Assert.Single((await ViewAsync(server)).Open);
        Assert.Equal(("main", "ph", "pH", BreachGrade.Operating, "R-012", BreachSource.Test), (open.PoolId, open.Quantity, open.Name, open.Grade, open.Rule, open.Source));
        Assert.Equal((OwedAct.ActAndRetest, false), (open.Owed!.Act, open.Owed.Overdue));
        server = await server.RestartAsync();
        await using (server)
        {
            Assert.Equal((open.Id, open.Owed), (Assert.Single((await ViewAsync(server)).Open).Id, (await ViewAsync(server)).Open[0].Owed));
            var noted = await WholeServer.ReadAsync<ExceptionView>(await server.PostAsync($"/api/v1/exceptions/{open.Id}/notes", new ExceptionNote(Guid.CreateVersion7(), "J. Sample", "=acid pump primed", WholeServer.Now - TimeSpan.FromMinutes(10))));
            Assert.Equal(("J. Sample", "=acid pump primed", OwedAct.Retest), (noted.Action!.By, noted.Action.Text, noted.Owed!.Act));
            await TestAsync(server, 7.4);
            var view = await ViewAsync(server);
            Assert.Empty(view.Open);
            var closed = Assert.Single(view.Closed);
            Assert.Equal((open.Id, Closing.ByRetest, "R. Castellan", 1, 1), (closed.Id, closed.Closing, closed.ClosedBy, view.Page, view.Count));
            Assert.Equal((10, 20), ((int)Math.Round(closed.Action!.Minutes), (int)Math.Round(closed.Retest!.Minutes)));
            await TableAsync(server);
        }
    }

    [Fact]
    public async Task They_are_asked_for_by_pool_by_month_and_by_page()
    {
        await using var server = await WholeServer.StartAsync();
        for (var i = 0; i < 3; i++)
        {
            await TestAsync(server, 7.9, minutesAgo: 50 - (10 * i));
            await TestAsync(server, 7.4, minutesAgo: 45 - (10 * i));
        }

        Assert.Equal(3, (await ViewAsync(server)).Count);
        var second = await ViewAsync(server, "?size=2&page=2");
        Assert.Equal((2, 2, 3), (second.Page, second.Pages, second.Count));
        Assert.Equal(50, (int)Math.Round((WholeServer.Now - Assert.Single(second.Closed).ReadAt).TotalMinutes));
        Assert.Equal(0, (await ViewAsync(server, "?pool=nowhere")).Count);
        Assert.Equal(3, (await ViewAsync(server, "?pool=main")).Count);
        Assert.Equal(0, (await ViewAsync(server, "?month=2001-02")).Count);
        foreach (var wrong in (string[])["?month=2026-13", "?month=soon", "?page=0", "?size=0", "?size=201"])
            Assert.Equal(HttpStatusCode.BadRequest, (await server.Http.GetAsync($"/api/v1/exceptions{wrong}")).StatusCode);
    }

    [Fact]
    public async Task What_is_said_without_sense_is_refused_beside_its_field_and_sent_twice_it_is_once()
    {
        await using var server = await WholeServer.StartAsync();
        await TestAsync(server, 7.9, minutesAgo: 5);
        var path = $"/api/v1/exceptions/{Assert.Single((await ViewAsync(server)).Open).Id}/notes";
        var good = new ExceptionNote(Guid.CreateVersion7(), "J. Sample", "pump primed", null);
        foreach (var (note, field) in new[]
        {
            (good with { By = " " }, "by"), (good with { Text = "" }, "text"), (good with { Id = Guid.NewGuid() }, "id"), (good with { DoneAt = WholeServer.Now - TimeSpan.FromHours(1) }, "doneAt"),
            (good with { Text = new string('x', 4001) }, "text"),
        })
        {
            var answer = await server.PostAsync(path, note);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            Assert.Equal(field, (await answer.Content.ReadFromJsonAsync<Problem>(PlantJson.Options))!.Errors[0].Field);
        }

        Assert.True((await server.PostAsync(path, good)).IsSuccessStatusCode);
        Assert.True((await server.PostAsync(path, good)).IsSuccessStatusCode);
        Assert.Single((await ViewAsync(server)).Open[0].Steps);
        Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync(path, good with { Text = "another" })).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await server.PostAsync($"/api/v1/exceptions/{Guid.CreateVersion7()}/notes", good)).StatusCode);
    }

    private static async Task TableAsync(WholeServer server)
    {
        var answer = await server.Http.GetAsync("/api/v1/exceptions.csv");
        Assert.Equal("text/csv", answer.Content.Headers.ContentType!.MediaType);
        var rows = (await answer.Content.ReadAsStringAsync()).TrimStart('\uFEFF').Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, rows.Length);
        Assert.StartsWith("line,place,quantity,grade,rule,reading,read_at", rows[0]);
        Assert.Contains(",pH,operating,R-012,", rows[1], StringComparison.Ordinal);
        Assert.Contains(",by_retest,", rows[1], StringComparison.Ordinal);
    }

    private static async Task TestAsync(WholeServer server, double ph, double minutesAgo = 0)
    {
        var check = WholeServer.Check(WholeServer.Now - TimeSpan.FromMinutes(minutesAgo), new TestResult(Measurand.Ph, ph, TestMethod.Meter));
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check)).IsSuccessStatusCode);
    }

    private static async Task<ExceptionsView> ViewAsync(WholeServer server, string query = "") =>
        await WholeServer.ReadAsync<ExceptionsView>(await server.Http.GetAsync($"/api/v1/exceptions{query}"));
}
