using System.Net;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The handover through the public interface: shown, written, signed, kept.</summary>
public sealed class HandoverTests
{
    [Fact]
    public async Task It_is_written_signed_by_somebody_else_and_the_next_one_begins_with_what_is_new()
    {
        var server = await WholeServer.StartAsync();
        var asset = server.Host.Circuits.First().State.Plan.Pumps[0].Id;
        var first = await ViewAsync(server);
        Assert.Equal((null, null, 0), (first.Last, first.Waiting, first.Past.Count));
        Assert.All(first.Lines, l => Assert.Equal(HandoverMove.None, l.Move));

        var id = Guid.CreateVersion7();
        var written = await WholeServer.ReadAsync<HandoverView>(await server.PostAsync("/api/v1/handover/note", new HandoverNote(id, "R. Castellan", "The acid pump hums")));
        Assert.Equal(("R. Castellan", "The acid pump hums"), (written.Waiting!.From, written.Waiting.Note));
        // Who has seen less signs nothing.
        await JobAsync(server, Guid.CreateVersion7(), asset, "Leaks at the head", JobState.Open);
        Assert.Equal(HttpStatusCode.Conflict, (await SignAsync(server, id, "J. Sample", written.Shown)).StatusCode);
        var seen = await ViewAsync(server);
        Assert.Equal(HttpStatusCode.Conflict, (await SignAsync(server, id, "R. Castellan", seen.Shown)).StatusCode);
        var signed = await WholeServer.ReadAsync<HandoverView>(await SignAsync(server, id, "J. Sample", seen.Shown));
        await WholeServer.ReadAsync<HandoverView>(await SignAsync(server, id, "J. Sample", seen.Shown));
        Assert.Equal((null, "R. Castellan", "J. Sample"), (signed.Waiting, signed.Last!.From, signed.Last.To));
        Assert.All(signed.Lines, l => Assert.Equal(HandoverMove.Same, l.Move));

        await JobAsync(server, Guid.CreateVersion7(), asset, "Hums again", JobState.Open);
        server = await server.RestartAsync();
        await using (server)
        {
            var next = await ViewAsync(server);
            Assert.Equal(["Hums again"], next.Lines.Where(l => l.Move == HandoverMove.New).Select(l => l.Text));
            var past = Assert.Single(next.Past);
            Assert.Equal((id, true, "J. Sample"), (past.Said.Id, past.Intact, past.Said.To));
            Assert.Contains(past.Lines, l => l is { Part: HandoverPart.Job, Text: "Leaks at the head" });
            Assert.DoesNotContain(past.Lines, l => l.Text == "Hums again");
            var told = (await server.GetAsync<EntriesView>("/api/v1/entries?about=handovers")).Entries;
            Assert.Equal(["Handover signed: The acid pump hums", "Handover written: The acid pump hums"], told.Select(e => e.Text));
        }
    }

    [Fact]
    public async Task A_note_that_another_took_the_place_of_does_not_come_back_when_it_is_sent_again()
    {
        await using var server = await WholeServer.StartAsync();
        var (first, second) = (new HandoverNote(Guid.CreateVersion7(), "R. Castellan", "The acid pump hums"), new HandoverNote(Guid.CreateVersion7(), "T. Wren", "The acid pump is out"));
        foreach (var note in new[] { first, second, second }) await WholeServer.ReadAsync<HandoverView>(await server.PostAsync("/api/v1/handover/note", note));
        Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync("/api/v1/handover/note", first)).StatusCode);
        Assert.Equal("The acid pump is out", server.Host.Find("hall")!.State.Handover.Note);
    }

    [Theory]
    [InlineData("Castellan, R.")]
    [InlineData("R. C\u0430stellan")]
    public async Task Who_wrote_it_does_not_sign_it_in_another_spelling(string by)
    {
        await using var server = await WholeServer.StartAsync();
        var id = Guid.CreateVersion7();
        var written = await WholeServer.ReadAsync<HandoverView>(await server.PostAsync("/api/v1/handover/note", new HandoverNote(id, "R. Castellan", "The acid pump hums")));
        var answer = await SignAsync(server, id, by, written.Shown);
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("handover.same_person", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.NotNull((await ViewAsync(server)).Waiting);
    }

    [Fact]
    public async Task What_a_journal_of_before_holds_is_answered_as_the_first_time_when_it_is_sent_again()
    {
        await using var server = await WholeServer.StartAsync();
        var note = new HandoverNote(Guid.CreateVersion7(), "...", "The acid pump hums");
        Assert.IsType<Outcome.Done>(await server.Host.SendAsync("hall", at => new HandoverWritten(at, note.Id, note.By!, note.Note!), default));
        await WholeServer.ReadAsync<HandoverView>(await server.PostAsync("/api/v1/handover/note", note));
        var seen = await ViewAsync(server);
        Assert.IsType<Outcome.Done>(await server.Host.SendAsync("hall", at => new HandoverSigned(at, note.Id, ".", null, HandoverSheet.Of(server.Host.Find("hall")!.State, at).Hash()), default));
        await WholeServer.ReadAsync<HandoverView>(await SignAsync(server, note.Id, ".", seen.Shown));
        Assert.Equal(".", Assert.Single((await ViewAsync(server)).Past).Said.To);
    }

    [Theory]
    [InlineData("note", "", HttpStatusCode.BadRequest)]
    [InlineData("sign", "", HttpStatusCode.BadRequest)]
    [InlineData("note", "...", HttpStatusCode.BadRequest)]
    [InlineData("sign", "...", HttpStatusCode.BadRequest)]
    public async Task Nobody_hands_over_or_takes_over_without_a_name(string what, string by, HttpStatusCode expected)
    {
        await using var server = await WholeServer.StartAsync();
        var shown = (await ViewAsync(server)).Shown;
        object body = what == "note" ? new HandoverNote(Guid.CreateVersion7(), by, "A note") : new HandoverSignature(Guid.CreateVersion7(), by, null, shown);
        Assert.Equal(expected, (await server.PostAsync($"/api/v1/handover/{what}", body)).StatusCode);
        Assert.Empty((await ViewAsync(server)).Past);
    }

    private static Task<HandoverView> ViewAsync(WholeServer server) => server.GetAsync<HandoverView>("/api/v1/handover");

    private static Task<HttpResponseMessage> SignAsync(WholeServer server, Guid id, string by, string shown) => server.PostAsync("/api/v1/handover/sign", new HandoverSignature(id, by, null, shown));

    private static async Task JobAsync(WholeServer server, Guid id, string asset, string seen, JobState state) =>
        await WholeServer.ReadAsync<JobView>(await server.PutAsync($"/api/v1/jobs/{id}", new JobRequest(asset, seen, null, state, null, "R. Castellan")));
}
