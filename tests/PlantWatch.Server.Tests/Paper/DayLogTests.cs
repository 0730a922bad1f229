using System.Net;
using System.Net.Http.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Paper;

/// <summary>The day log sheet through the public interface: what was tested, what was not, what was corrected, and what the sheet says of itself.</summary>
public sealed class DayLogTests
{
    private static readonly Instant Evening = Instant.FromUtc(2026, 5, 4, 20);

    [Fact]
    public async Task It_shows_what_was_tested_with_method_and_limit_what_was_missed_and_who_signed()
    {
        await using var server = await PaperPlant.AtAsync(Evening, out _);
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 25), 7.9, note: "cloudy at the shallow end");
        var text = PaperPlant.TextOf(await server.PdfAsync("from=2026-05-04&pool=main"));
        // 06:25 UTC is 07:25 in London in May; 7.90 lies above the plant's own limit of 7.6.
        Assert.All(["Day log sheet", "Bramble Street Baths", "Monday, 2026-05-04", "Europe/London", "07:25", "▲ 7.90", "photometer", "cloudy at the shallow end", "I. Spector"], part => Assert.Contains(part, text, StringComparison.Ordinal));
        var html = await server.HtmlAsync("from=2026-05-04&pool=main");
        // The morning round was walked; noon and six in the evening were not, and are rows with a dash.
        Assert.Equal(2, Count(html[..html.IndexOf("Probes at the times", StringComparison.Ordinal)], "<td class=\"w\">Due and not tested</td></tr>"));
        Assert.All(["12:00", "18:00"], time => Assert.Contains($"<th scope=\"row\">{time}<small>due</small></th><td>–</td>", html, StringComparison.Ordinal));
        Assert.DoesNotContain(">07:30<", html, StringComparison.Ordinal);
        Assert.All(["R. Castellan</th><td>operator</td>", "E. Sample</th><td>plant engineer</td>"], person => Assert.Contains(person, html, StringComparison.Ordinal));
        Assert.DoesNotContain(">Spa<", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_correction_is_shown_as_one_old_value_struck_new_beside_by_whom_when_and_why()
    {
        await using var server = await PaperPlant.AtAsync(Evening, out var clock);
        var wrong = await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 30), 7.9);
        clock.Forward(TimeSpan.FromMinutes(5));
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 30), 7.4, wrong, "E. Sample", "read the wrong line");
        var html = await server.HtmlAsync("from=2026-05-04&pool=main");
        Assert.Matches("<del>was ▲\u00a07\\.90</del>7\\.40", html);
        Assert.Contains("<del>was R. Castellan</del>E. Sample", html, StringComparison.Ordinal);
        Assert.Contains("Corrected by E. Sample, 21:05: read the wrong line", html, StringComparison.Ordinal);
        // Free chlorine was the same: it is not struck.
        Assert.DoesNotContain("<del>was 1.50", html, StringComparison.Ordinal);
        var text = PaperPlant.TextOf(await server.PdfAsync("from=2026-05-04&pool=main"));
        Assert.All(["was ▲ 7.90", "7.40", "read the wrong line", "E. Sample"], part => Assert.Contains(part, text, StringComparison.Ordinal));
        Assert.Equal(1, Count(html[..html.IndexOf("Probes at the times", StringComparison.Ordinal)], "<th scope=\"row\">07:30"));
    }

    [Fact]
    public async Task A_test_corrected_to_another_week_stands_no_more_on_its_old_day()
    {
        await using var server = await PaperPlant.AtAsync(Evening, out var clock);
        var wrong = await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 30), 7.9);
        clock.Forward(TimeSpan.FromDays(20));
        await server.TestAsync(Instant.FromUtc(2026, 5, 20, 6, 30), 7.9, wrong, "E. Sample", "wrote the wrong day");
        var html = await server.HtmlAsync("from=2026-05-04&pool=main");
        var tests = html[..html.IndexOf("Probes at the times", StringComparison.Ordinal)];
        Assert.Equal(3, Count(tests, "Due and not tested"));
        Assert.DoesNotContain("7.90", tests, StringComparison.Ordinal);
        Assert.Contains("wrote the wrong day", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_sheet_is_made_at_a_time_and_who_would_wait_long_is_told()
    {
        await using var server = await PaperPlant.AtAsync(Evening, out _);
        using (await server.PaperTurn.TakeAsync(TimeSpan.Zero, CancellationToken.None))
        {
            var answer = await server.Http.GetAsync("/api/v1/sheets/day-log.html?from=2026-05-04&by=me");
            Assert.Equal(HttpStatusCode.TooManyRequests, answer.StatusCode);
            Assert.Equal("paper.busy", (await answer.Content.ReadFromJsonAsync<Problem>(PlantJson.Options))!.Errors[0].Code);
        }

        Assert.Contains("Bramble Street Baths", await server.HtmlAsync("from=2026-05-04"), StringComparison.Ordinal);
        Assert.Contains("Bramble Street Baths", await server.HtmlAsync("from=2026-05-04"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_day_and_a_pool_that_nobody_ever_tested_are_said_and_not_left_out()
    {
        await using var server = await PaperPlant.AtAsync(Evening, out _);
        var spa = await server.HtmlAsync("from=2026-05-04&pool=spa");
        Assert.All(["Nobody tested this pool in this time, and no round was due.", "Neither a limit pack nor limits of the plant&#39;s own", "No dose by hand.", "No exception stands in the record of this time.", "Nothing was corrected."],
            said => Assert.Contains(said, spa, StringComparison.Ordinal));
        // The day before the plant was there: three rounds that nobody walked, whatever the reason.
        var before = await server.HtmlAsync("from=2026-05-03&pool=main");
        Assert.Equal(3, Count(before[..before.IndexOf("Probes at the times", StringComparison.Ordinal)], "Due and not tested"));
        Assert.All(PaperPlant.PagesOf(await server.PdfAsync("from=2026-05-03")), page => Assert.Contains("Bramble Street Baths", page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_day_of_25_hours_says_so_and_tells_the_two_halves_past_one_apart()
    {
        // The clock goes back at 01:00 UTC on 25 October 2026 in London (tz database, GB-Eire rules).
        await using var server = await PaperPlant.AtAsync(Instant.FromUtc(2026, 10, 25, 22), out _);
        await server.TestAsync(Instant.FromUtc(2026, 10, 25, 0, 30), 7.3);
        await server.TestAsync(Instant.FromUtc(2026, 10, 25, 1, 30), 7.4);
        await server.TestAsync(Instant.FromUtc(2026, 10, 24, 22, 59), 7.11);
        var html = await server.HtmlAsync("from=2026-10-25&pool=main");
        Assert.All(["Sunday, 2026-10-25: 25 hours", "<th scope=\"row\">01:30 +01:00</th>", "<th scope=\"row\">01:30 +00:00</th>"], part => Assert.Contains(part, html, StringComparison.Ordinal));
        // The breach of the evening before still stands; the test itself is on its own day.
        Assert.DoesNotContain("<strong>▼\u00a07.11", html, StringComparison.Ordinal);
        Assert.Contains("<strong>▼\u00a07.11", await server.HtmlAsync("from=2026-10-24&pool=main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pool_that_was_closed_owes_no_test_and_the_sheet_says_that()
    {
        await using var server = await PaperPlant.AtAsync(Instant.FromUtc(2026, 5, 4, 5), out var clock);
        var closed = await server.PutAsync($"/api/v1/pools/main/state/{Guid.CreateVersion7()}", new PoolStateRequest(OperatingState.Covered, "R. Castellan", "holiday", false, false));
        Assert.True(closed.IsSuccessStatusCode, await closed.Content.ReadAsStringAsync());
        clock.Forward(TimeSpan.FromHours(16));
        var html = await server.HtmlAsync("from=2026-05-04&pool=main");
        Assert.Contains("Not tested; the pool: Covered", html, StringComparison.Ordinal);
        Assert.Contains("Covered: holiday", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_round_that_is_still_to_come_is_not_missed()
    {
        await using var server = await PaperPlant.AtAsync(Instant.FromUtc(2026, 5, 4, 8), out _);
        var html = await server.HtmlAsync("from=2026-05-04&pool=main");
        Assert.Contains("07:30<small>due</small>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("12:00<small>due</small>", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_record_has_the_same_digest_and_a_new_row_another()
    {
        await using var server = await PaperPlant.AtAsync(Evening, out _);
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 30), 7.4);
        var (seq, first) = Digest(await server.HtmlAsync("from=2026-05-04"));
        Assert.Matches("^[0-9a-f]{64}$", first);
        // The clock stands: between the two nothing was written, and only who printed it and when is another.
        Assert.Equal((seq, first), Digest(await server.HtmlAsync("from=2026-05-04")));
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 7, 30), 7.4);
        var (later, second) = Digest(await server.HtmlAsync("from=2026-05-04"));
        Assert.NotEqual(first, second);
        Assert.True(later > seq);
    }

    [Fact]
    public async Task What_people_typed_is_text_on_the_page_and_nothing_else()
    {
        await using var server = await PaperPlant.AtAsync(Evening, out _);
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 30), 7.4, who: "<b>R</b>\"}</style>", note: "<script>alert(1)</script>");
        var answer = await server.Http.GetAsync("/api/v1/sheets/day-log.html?from=2026-05-04&by=" + Uri.EscapeDataString("\"}</style><img src=x>"));
        var html = await answer.Content.ReadAsStringAsync();
        Assert.All(["<script", "<b>R", "<img src=x"], bad => Assert.DoesNotContain(bad, html, StringComparison.Ordinal));
        Assert.All(["&lt;script&gt;alert(1)&lt;/script&gt;", "&lt;b&gt;R"], typed => Assert.Contains(typed, html, StringComparison.Ordinal));
        Assert.Equal(1, Count(html, "</style>"));
        var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.StartsWith("default-src 'none'; img-src data:; style-src 'sha256-", policy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("day-log.pdf?from=2026-05-04", "by")]
    [InlineData("day-log.pdf?from=2026-05-04&by=%20", "by")]
    [InlineData("day-log.doc?from=2026-05-04&by=me", "format")]
    [InlineData("night-log.pdf?from=2026-05-04&by=me", "kind")]
    [InlineData("day-log.pdf?by=me", "from")]
    [InlineData("day-log.pdf?from=04.05.2026&by=me", "from")]
    [InlineData("day-log.pdf?from=2026-05-04&to=2026-05-03&by=me", "to")]
    [InlineData("day-log.pdf?from=2026-05-04&to=2028-05-03&by=me", "to")]
    [InlineData("day-log.pdf?from=2026-01-01&to=2026-04-03&by=me", "to")]
    [InlineData("day-log.pdf?from=2026-05-04&pool=lido&by=me", "pool")]
    public async Task What_cannot_be_printed_is_said_beside_its_field(string path, string field)
    {
        await using var server = await PaperPlant.AtAsync(Evening, out _);
        var answer = await server.Http.GetAsync($"/api/v1/sheets/{path}");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(field, (await answer.Content.ReadFromJsonAsync<Problem>(PlantJson.Options))!.Errors[0].Field);
    }

    internal static int Count(string text, string part) => text.Split(part).Length - 1;

    private static (long Seq, string Hash) Digest(string html)
    {
        var match = System.Text.RegularExpressions.Regex.Match(html, "<dt>SHA-256 of its rows</dt><dd>([0-9a-f]+)</dd>\n<dt>Record of hall</dt><dd>up to batch ([0-9]+);");
        return (long.Parse(match.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture), match.Groups[1].Value);
    }
}
