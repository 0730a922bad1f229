using System.Net;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Notes about a span of time and the marks over the strips, through the public interface.</summary>
public sealed class NoteTests
{
    private static readonly string TwoPools = WholeServer.Plant + """

          - id: spa
            name: Spa
            pools:
              - { id: spa-pool, name: Spa, kind: spa, setting: indoor, disinfectant: chlorine, volume_m3: 5 }

        """;

    private static NoteRequest Note(double hoursAgo, double hours, string text = "School party") =>
        new("main", WholeServer.Now - TimeSpan.FromHours(hoursAgo), WholeServer.Now - TimeSpan.FromHours(hoursAgo - hours), text, "R. Castellan");

    private static async Task<NoteView> PutAsync(WholeServer server, Guid id, NoteRequest note) => await WholeServer.ReadAsync<NoteView>(await server.PutAsync($"/api/v1/notes/{id}", note));

    private static Task<List<NoteView>> NotesAsync(WholeServer server, Instant? from = null, Instant? to = null) =>
        server.GetAsync<List<NoteView>>($"/api/v1/notes?pool=main&from={from}&to={to}");

    [Fact]
    public async Task A_note_sent_twice_stands_once_and_is_there_after_a_restart_in_its_newest_version()
    {
        var server = await WholeServer.StartAsync(plant: TwoPools);
        var (id, note) = (Guid.CreateVersion7(), Note(hoursAgo: 3, hours: 1));
        var first = await PutAsync(server, id, note);
        Assert.Equal(first, await PutAsync(server, id, note) with { Before = first.Before });
        Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/notes/{id}", note with { Text = "something else" })).StatusCode);
        var mended = await PutAsync(server, Guid.CreateVersion7(), note with { Text = "Swimming lessons", Corrects = id, Why = "misread the plan" });
        Assert.Equal("School party", Assert.Single(mended.Before).Text);
        server = await server.RestartAsync();
        await using (server)
        {
            var only = Assert.Single(await NotesAsync(server));
            Assert.Equal(("Swimming lessons", "misread the plan", false, "School party"), (only.Text, only.Why, only.Retracted, only.Before.Single().Text));
            var gone = await PutAsync(server, Guid.CreateVersion7(), note with { Text = "Swimming lessons", Corrects = only.Id, Why = "another pool", Retracted = true });
            Assert.Equal((true, 2), (gone.Retracted, gone.Before.Count));
            Assert.True(Assert.Single(await NotesAsync(server)).Retracted);
            var told = (await server.GetAsync<EntriesView>("/api/v1/entries?about=notes")).Entries;
            Assert.Equal(["Note: School party", "A note was corrected: Swimming lessons: misread the plan", "A note was taken back: Swimming lessons: another pool"], told.OrderBy(e => e.At).Select(e => e.Text));
        }
    }

    [Fact]
    public async Task Notes_of_a_time_are_those_that_touch_it_wherever_they_begin()
    {
        await using var server = await WholeServer.StartAsync();
        await PutAsync(server, Guid.CreateVersion7(), Note(hoursAgo: 30, hours: 29, text: "long"));
        await PutAsync(server, Guid.CreateVersion7(), Note(hoursAgo: 30, hours: 1, text: "before"));
        var moved = Guid.CreateVersion7();
        await PutAsync(server, moved, Note(hoursAgo: 2, hours: 1, text: "moved"));
        await PutAsync(server, Guid.CreateVersion7(), Note(hoursAgo: 28, hours: 1, text: "moved") with { Corrects = moved, Why = "the day before" });
        Assert.Equal(["long"], (await NotesAsync(server, WholeServer.Now - TimeSpan.FromHours(3))).Select(n => n.Text));
        Assert.Equal(["before", "long", "moved"], (await NotesAsync(server, to: WholeServer.Now - TimeSpan.FromHours(20))).Select(n => n.Text).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task What_is_wrong_with_a_note_stands_beside_its_field()
    {
        await using var server = await WholeServer.StartAsync(plant: TwoPools);
        var (id, good) = (Guid.CreateVersion7(), Note(hoursAgo: 3, hours: 1));
        await PutAsync(server, id, good);
        foreach (var (field, wrong) in new (string, NoteRequest)[]
        {
            ("text", good with { Text = "  " }), ("by", good with { By = null }), ("poolId", good with { PoolId = "nowhere" }), ("from", good with { From = default }),
            ("to", good with { To = good.From - TimeSpan.FromHours(1) }), ("to", good with { To = WholeServer.Now + TimeSpan.FromHours(2) }), ("text", good with { Text = new string('x', 4001) }),
            ("corrects", good with { Corrects = Guid.CreateVersion7(), Why = "?" }), ("why", good with { Corrects = id }), ("corrects", good with { PoolId = "spa-pool", Corrects = id, Why = "?" }),
        })
        {
            var answer = await server.PutAsync($"/api/v1/notes/{Guid.CreateVersion7()}", wrong);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            Assert.Contains($"\"field\":\"{field}\"", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.BadRequest, (await server.PutAsync($"/api/v1/notes/{Guid.NewGuid()}", good)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync(new Uri("/api/v1/notes?pool=nowhere", UriKind.Relative))).StatusCode);
        Assert.Single(await NotesAsync(server));
    }

    [Fact]
    public async Task Two_people_who_correct_one_note_at_once_leave_one_correction()
    {
        await using var server = await WholeServer.StartAsync();
        var (id, note) = (Guid.CreateVersion7(), Note(hoursAgo: 3, hours: 1));
        await PutAsync(server, id, note);
        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(i => server.PutAsync($"/api/v1/notes/{Guid.CreateVersion7()}", note with { Text = $"version {i}", Corrects = id, Why = "misread" })));
        Assert.Equal([HttpStatusCode.OK, HttpStatusCode.Conflict, HttpStatusCode.Conflict, HttpStatusCode.Conflict], answers.Select(a => a.StatusCode).Order());
        Assert.Single(await NotesAsync(server));
    }

    [Fact]
    public async Task Marks_tell_what_happened_in_the_pool_and_in_what_it_shares_and_nothing_of_another()
    {
        await using var server = await WholeServer.StartAsync(plant: TwoPools);
        var from = WholeServer.Now - TimeSpan.FromHours(1);
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now - TimeSpan.FromMinutes(5), new TestResult(Measurand.Ph, 8.0, TestMethod.Photometer)));
        await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", new JobRequest("acid-pump", "hose leaks", null, Core.Maintenance.JobState.Open, null, "T. Wren"));
        var marks = await MarksAsync(server, "main", from);
        Assert.False(marks.More);
        Assert.Equal([MarkKind.Test, MarkKind.Alarm, MarkKind.Job], marks.Marks.Where(m => m.Kind != MarkKind.Plan).Select(m => m.Kind));
        var alarm = marks.Marks.Single(m => m.Kind == MarkKind.Alarm);
        Assert.Equal((await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms.Single(a => a.Rule == "R-012").Id, alarm.Id);
        Assert.Null(alarm.Until);
        Assert.Equal(("T. Wren", "acid-pump"), marks.Marks.Where(m => m.Kind == MarkKind.Job).Select(m => (m.By, m.Subject)).Single());

        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.4, TestMethod.Photometer)));
        Assert.NotNull((await MarksAsync(server, "main", from)).Marks.Single(m => m.Id == alarm.Id).Until);
        Assert.DoesNotContain((await MarksAsync(server, "spa-pool", from)).Marks, m => m.Kind is MarkKind.Test or MarkKind.Job or MarkKind.Alarm);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync(new Uri("/api/v1/pools/nowhere/marks?from=2026-01-01T00:00:00Z&to=2026-01-02T00:00:00Z", UriKind.Relative))).StatusCode);
    }

    private static Task<MarksView> MarksAsync(WholeServer server, string pool, Instant from) =>
        server.GetAsync<MarksView>($"/api/v1/pools/{pool}/marks?from={from}&to={WholeServer.Now + TimeSpan.FromMinutes(1)}");
}
