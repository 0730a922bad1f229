using System.Net;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The story of one alarm through the public interface: what it is, its limit, and who did what with it.</summary>
public sealed class AlarmStoryTests
{
    private static Task<AlarmStory> StoryAsync(WholeServer server, Guid id) => server.GetAsync<AlarmStory>($"/api/v1/alarms/{id}");

    private static async Task<AlarmView> StandingAsync(WholeServer server, string rule) =>
        (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms.Single(a => a.Rule == rule);

    [Fact]
    public async Task An_alarm_is_told_from_raised_to_over_with_names_and_words_and_is_still_found_when_it_is_over()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishAsync("hall/acid/state", "fault");
        var id = (await StandingAsync(server, "R-030")).Id;
        await server.PostAsync($"/api/v1/alarms/{id}/acknowledge", new Acknowledge("T. Wren", "on my way"));
        var story = await StoryAsync(server, id);
        Assert.Equal((true, AlarmState.Acknowledged, "Main pool, Acid pump"), (story.Live, story.Alarm.State, story.SubjectName));
        Assert.Contains("says that it has a fault", story.Sentence, StringComparison.Ordinal);
        Assert.Null(story.Strip);

        await server.PublishAsync("hall/acid/state", "running");
        await server.PublishAsync("hall/acid/state", "fault");
        var over = await StoryAsync(server, id);
        Assert.Equal([AlarmChange.Raised, AlarmChange.Acknowledged, AlarmChange.Cleared], over.Changes.Select(c => c.Change));
        Assert.Equal(("T. Wren", "on my way"), (over.Changes[1].By, over.Changes[1].Comment));
        Assert.Equal((false, false), (over.Live, over.Alarm.Active));
        var newer = await StandingAsync(server, "R-030");
        Assert.Equal(newer.Id, over.NewerId);
        Assert.NotNull(newer.AnnunciatedAt);
        Assert.Equal(id, Assert.Single((await StoryAsync(server, newer.Id)).Earlier).Id);
    }

    [Fact]
    public async Task A_limit_that_a_test_went_over_is_given_to_draw_beside_the_probe_of_the_same_value()
    {
        await using var server = await WholeServer.StartAsync();
        var check = WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 8.0, TestMethod.Photometer));
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check)).IsSuccessStatusCode);
        var story = await StoryAsync(server, (await StandingAsync(server, "R-012")).Id);
        Assert.Equal(new AlarmStrip("ph", "main", Measurand.Ph, null, 7.6), story.Strip);
        Assert.Equal("Main pool, pH", story.SubjectName);
    }

    [Fact]
    public async Task What_follows_from_a_stop_is_told_with_it_and_it_with_what_follows()
    {
        await using var server = await WholeServer.StartAsync();
        var check = WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 8.4, TestMethod.Photometer));
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check)).IsSuccessStatusCode);
        var (stop, limit) = ((await StandingAsync(server, "R-013")).Id, (await StandingAsync(server, "R-012")).Id);
        Assert.Equal(limit, Assert.Single((await StoryAsync(server, stop)).Consequences).Id);
        var follows = await StoryAsync(server, limit);
        Assert.Equal(stop, follows.Cause!.Id);
        Assert.False(follows.Alarm.Annunciates);
    }

    [Theory]
    [InlineData("0197a000-0000-7000-8000-000000000001")]
    [InlineData("3f2504e0-4f89-41d3-9a0c-0305e82c3301")]
    [InlineData("ffffffff-ffff-7fff-bfff-ffffffffffff")]
    public async Task An_alarm_that_never_was_is_not_found(string id)
    {
        await using var server = await WholeServer.StartAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync($"/api/v1/alarms/{id}")).StatusCode);
    }
}
