using System.Net;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The record in words, through the public interface.</summary>
public sealed class EntryTests
{
    // Two circuits share the kit; one of them has a filter.
    private static readonly string Plant = WholeServer.Plant
        .Replace("products:\n", "reagents:\n  - { id: red, name: Phenol red, tests: [ph] }\nproducts:\n", StringComparison.Ordinal)
        .Replace("    name: Hall\n", "    name: Hall\n    filters:\n      - { id: f1, name: Filter 1, clean_kpa: 30 }\n", StringComparison.Ordinal) + """

          - id: spa
            name: Spa
            pools:
              - { id: spa-pool, name: Spa, kind: spa, setting: indoor, disinfectant: chlorine, volume_m3: 5 }

        """;

    [Fact]
    public async Task Exceptions_reagent_lots_washes_and_jobs_stand_there_in_words_with_who_and_when()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await TestAsync(server, 7.9, minutesAgo: 20);
        var line = Assert.Single((await server.GetAsync<ExceptionsView>("/api/v1/exceptions")).Open);
        await server.PostAsync($"/api/v1/exceptions/{line.Id}/notes", new ExceptionNote(Guid.CreateVersion7(), "J. Sample", "acid pump primed", WholeServer.Now - TimeSpan.FromMinutes(10)));
        await TestAsync(server, 7.4, minutesAgo: 0);
        await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", new JobRequest("acid-pump", "no stroke, relay clicks", "diaphragm replaced", JobState.Done, null, "T. Wren"));
        await server.PostAsync("/api/v1/filters/f1/backwash", new WashRequest(Guid.CreateVersion7(), "R. Castellan"));
        await server.PostAsync("/api/v1/filters/f1/washed", new WashRequest(Guid.CreateVersion7(), "R. Castellan"));
        await server.PostAsync("/api/v1/reagents/red/opened", new LotRequest(Guid.CreateVersion7(), "27-03", new DateOnly(2031, 3, 31), WholeServer.Now, "A. Sample"));

        Assert.All(await TellAsync(server, "exceptions"), e => Assert.Equal("Main pool", e.SubjectName));
        Assert.Equal(
            [
                "R. Castellan: pH, the breach is closed: by a retest inside",
                "J. Sample: pH, about the breach: said: acid pump primed",
                "R. Castellan: pH, a breach begins: ",
            ],
            (await TellAsync(server, "exceptions")).OrderByDescending(e => e.At).Select((e, i) => $"{e.By}: {(i == 2 ? e.Text[..21] : e.Text)}"));
        Assert.Equal([("Main pool, Acid pump", "Job done: diaphragm replaced", "T. Wren")], Told(await TellAsync(server, "jobs")));
        Assert.Equal([("Filter 1", "Backwash begun", "R. Castellan"), ("Filter 1", "Backwash over, washed", "R. Castellan"), ("Filter 1", "Washed", "R. Castellan")], Told(await TellAsync(server, "filters")).Order());
        Assert.Equal([("Phenol red", "Lot 27-03 opened, to be used up by 2031-03-31", "A. Sample")], Told(await TellAsync(server, "reagents")));
        Assert.Equal(["Tested: pH 7.40", "Tested: pH 7.90"], (await TellAsync(server, "tests")).Select(e => e.Text));

        var all = await TellAsync(server, "all");
        Assert.Equal(all.OrderByDescending(e => e.HappenedAt).Select(e => e.Id), all.Select(e => e.Id));
        Assert.All(Enum.GetValues<RecordGroup>().Where(g => g is RecordGroup.Exceptions or RecordGroup.Jobs or RecordGroup.Filters or RecordGroup.Reagents or RecordGroup.Tests), g => Assert.Contains(all, e => e.About == g));
        Assert.Empty((await server.GetAsync<EntriesView>($"/api/v1/entries?from={WholeServer.Now + TimeSpan.FromMinutes(1)}")).Entries);
    }

    [Theory, InlineData("about=weather"), InlineData("from=soon"), InlineData("about=1")]
    public async Task What_cannot_be_understood_is_refused(string query)
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        Assert.Equal(HttpStatusCode.BadRequest, (await server.Http.GetAsync($"/api/v1/entries?{query}")).StatusCode);
    }

    [Fact]
    public void Every_word_that_a_row_can_hold_has_a_sentence()
    {
        Assert.All(
            Of<JobState>("job").Concat(Of<BackwashChange>("backwash", 1)).Concat(Of<CalibrationStatus>("calibration")).Concat(Of<WorkChange>("work", 1)).Concat(Of<OperatingState>("pool"))
                .Concat(Of<ExceptionChange>("exception", 1)).Concat(Of<StepKind>("step", 1)).Concat(Of<RetestWord>("retest", 1)).Concat(Of<Closing>("closing", 1)),
            code => Assert.NotEqual(code, Wording.English.Find(code)));
    }

    // The first of some enums is "not stated", which nobody writes down.
    private static IEnumerable<string> Of<T>(string part, int from = 0) where T : struct, Enum => Enum.GetValues<T>().Skip(from).Select(value => $"entry.{part}_{Wording.Key(value)}");

    private static IEnumerable<(string, string, string?)> Told(IEnumerable<EntryView> entries) => entries.Select(e => (e.SubjectName, e.Text, e.By));

    private static async Task<IReadOnlyList<EntryView>> TellAsync(WholeServer server, string about) => (await server.GetAsync<EntriesView>($"/api/v1/entries?about={about}")).Entries;

    private static async Task TestAsync(WholeServer server, double ph, int minutesAgo) =>
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now - TimeSpan.FromMinutes(minutesAgo), new TestResult(Measurand.Ph, ph, TestMethod.Photometer)))).IsSuccessStatusCode);
}
