using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Paper;

/// <summary>The month, the probes, alarms and work, and what an inspector asks for; each in all of its forms.</summary>
public sealed class OtherSheetTests
{
    private static readonly Instant Evening = Instant.FromUtc(2026, 5, 4, 20);

    [Fact]
    public async Task The_month_has_a_line_for_every_day_that_has_begun_with_least_mean_and_most()
    {
        await using var server = await PaperPlant.AtAsync(Evening, out _);
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 30), 7.30);
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 11), 7.50);
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 17), 7.90);
        var rows = TableFileTests.Rows(await server.Http.GetByteArrayAsync("/api/v1/sheets/month.csv?from=2026-05-01&to=2026-05-31&pool=main&by=me"));
        var head = rows.FindIndex(r => r[0] == "Day");
        var days = rows[(head + 1)..].TakeWhile(r => r[0].StartsWith("2026-05-", StringComparison.Ordinal)).ToArray();
        Assert.Equal(["2026-05-01", "2026-05-02", "2026-05-03", "2026-05-04"], days.Select(d => d[0]));
        string Of(string column, int day) => days[day][Array.IndexOf(rows[head], column)];
        Assert.Equal(("3", "0", "1"), (Of("Tests", 3), Of("Missed", 3), Of("Breaches", 3)));
        Assert.Equal(("7.3", "7.9", "above"), (Of("pH, least", 3), Of("pH, most", 3), Of("pH, most, limit", 3)));
        Assert.Equal(7.5667, double.Parse(Of("pH, mean", 3), System.Globalization.CultureInfo.InvariantCulture), 3);
        Assert.Equal(("0", "3", ""), (Of("Tests", 0), Of("Missed", 0), Of("pH, mean", 0)));
    }

    [Fact]
    public async Task Alarms_and_work_stand_with_what_was_done_and_by_whom()
    {
        await using var server = await PaperPlant.AtAsync(Evening, out _);
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 19), 7.9);
        var job = await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", new JobRequest("acid-pump", "no stroke", "valve cleaned", JobState.Done, null, "E. Sample") { Minutes = 40, Parts = [new("valve", 1, "V-7")] });
        Assert.True(job.IsSuccessStatusCode, await job.Content.ReadAsStringAsync());
        var text = PaperPlant.TextOf(await server.PdfAsync("from=2026-05-04&pool=main", "alarms-and-jobs"));
        Assert.All(["Alarms and maintenance", "no stroke", "valve cleaned", "1 valve (V-7)", "Job done", "40", "operating limit"], part => Assert.Contains(part, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_began_long_before_the_days_and_still_stands_is_on_the_sheet_and_a_pool_closed_since_owes_no_test()
    {
        await using var server = await PaperPlant.AtAsync(Instant.FromUtc(2026, 5, 4, 5), out var clock);
        await StateAsync(server, OperatingState.Covered);
        var job = await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", new JobRequest("acid-pump", "no stroke", null, JobState.Open, null, "E. Sample"));
        Assert.True(job.IsSuccessStatusCode, await job.Content.ReadAsStringAsync());
        await server.PublishAsync("hall/acid/state", "fault");
        await Peer.UntilAsync(() => server.Host.Circuits.Any(c => c.State.Alarms.Values.Any(a => a.Rule == "R-030" && a.Active)), "the fault is known");
        clock.Forward(TimeSpan.FromDays(60));
        await StateAsync(server, OperatingState.Drained);
        var html = await server.HtmlAsync("from=2026-06-28&pool=main", "alarms-and-jobs");
        Assert.All(["no stroke", "2026-05-04", "R-030"], part => Assert.Contains(part, html, StringComparison.Ordinal));
        var rows = TableFileTests.Rows(await server.Http.GetByteArrayAsync("/api/v1/sheets/month.csv?from=2026-06-28&to=2026-06-28&pool=main&by=me"));
        var head = rows.FindIndex(r => r[0] == "Day");
        Assert.Equal("0", rows[head + 1][Array.IndexOf(rows[head], "Missed")]);
    }

    [Fact]
    public async Task An_alarm_that_was_raised_long_before_the_days_and_cleared_long_after_them_is_on_their_sheet()
    {
        await using var server = await PaperPlant.AtAsync(Instant.FromUtc(2026, 5, 4, 5), out var clock);
        await server.PublishAsync("hall/acid/state", "fault");
        await Peer.UntilAsync(() => Fault() is { Active: true }, "the fault is known");
        clock.Forward(TimeSpan.FromDays(90));
        await server.PostAsync($"/api/v1/alarms/{Fault()!.Id}/acknowledge", new Acknowledge("E. Sample", null));
        await server.PublishAsync("hall/acid/state", "stopped");
        await Peer.UntilAsync(() => Fault() is null or { Active: false }, "it has cleared");
        var during = await server.HtmlAsync("from=2026-06-28&pool=main", "alarms-and-jobs");
        Assert.Contains("R-030", during, StringComparison.Ordinal);
        clock.Forward(TimeSpan.FromDays(60));
        Assert.DoesNotContain("R-030", await server.HtmlAsync("from=2026-09-28&pool=main", "alarms-and-jobs"), StringComparison.Ordinal);

        Core.Alarms.AlarmRecord? Fault() => server.Host.Circuits.SelectMany(c => c.State.Alarms.Values).FirstOrDefault(a => a.Rule == "R-030");
    }

    private static async Task StateAsync(Whole.WholeServer server, OperatingState state)
    {
        var answer = await server.PutAsync($"/api/v1/pools/main/state/{Guid.CreateVersion7()}", new PoolStateRequest(state, "R. Castellan", "holiday", false, false));
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task What_an_inspector_asks_for_begins_with_what_was_tested_and_ends_with_what_is_worked_out()
    {
        await using var server = await PaperPlant.AtAsync(Evening, out _);
        var wrong = await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 30), 7.9);
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 30), 7.8, wrong, "E. Sample", "read the wrong line");
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 7, 30), 7.4);
        var html = await server.HtmlAsync("from=2026-05-01&to=2026-05-04", "inspection");
        string[] parts = ["Tests by hand, Main pool", "Exceptions, from reading to closing", "Probes and what is worked out", "<h2>Corrections</h2>", "<h2>People</h2>"];
        var order = parts.Select(part => html.IndexOf(part, StringComparison.Ordinal)).ToArray();
        Assert.DoesNotContain(-1, order);
        Assert.Equal(order.Order(), order);
        Assert.All(["by a retest inside", "read the wrong line", "<del>was", "2026-05-04 07:30"], part => Assert.Contains(part, html, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("day-log")]
    [InlineData("month")]
    [InlineData("calibration")]
    [InlineData("alarms-and-jobs")]
    [InlineData("inspection")]
    public async Task Every_sheet_comes_in_every_form_and_in_every_language_and_names_site_clock_and_printer(string kind)
    {
        await using var server = await PaperPlant.AtAsync(Evening, out _);
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 30), 7.4);
        foreach (var (format, type) in new[] { ("html", "text/html"), ("pdf", "application/pdf"), ("csv", "text/csv"), ("xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet") })
        {
            var answer = await server.Http.GetAsync($"/api/v1/sheets/{kind}.{format}?from=2026-05-01&to=2026-05-04&by=I.+Spector");
            Assert.Equal((true, type), (answer.IsSuccessStatusCode, answer.Content.Headers.ContentType?.MediaType));
            Assert.Contains($"{kind}-2026-05-01-to-2026-05-04.{format}", answer.Content.Headers.ContentDisposition!.ToString(), StringComparison.Ordinal);
        }

        foreach (var language in Language.All)
        {
            var text = PaperPlant.TextOf(await server.PdfAsync($"from=2026-05-01&to=2026-05-04&language={language.Code}", kind));
            var title = Wording.Of(language).Find($"paper.kind_{kind.Replace('-', '_')}");
            Assert.All([title, "Bramble Street Baths", "Europe/London", "I. Spector"], part => Assert.Contains(part, text, StringComparison.Ordinal));
            if (language != Language.English) Assert.NotEqual(Wording.English.Find($"paper.kind_{kind.Replace('-', '_')}"), title);
            // A code without words would stand there as it is.
            Assert.DoesNotContain("paper.", text.Replace("docs/paper.md", "", StringComparison.Ordinal), StringComparison.Ordinal);
        }
    }
}
