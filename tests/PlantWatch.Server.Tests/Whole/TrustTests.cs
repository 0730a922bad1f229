using System.Net;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Which to believe, through the public interface.</summary>
public sealed class TrustTests
{
    [Fact]
    public async Task Without_a_check_nothing_can_be_told_and_a_test_is_what_would_tell()
    {
        await using var server = await WholeServer.StartAsync();
        var story = await server.GetAsync<TrustStoryView>("/api/v1/pools/main/trust");
        Assert.Equal((StoryAnswer.CannotTell, StoryWeight.None, (Guid?)null), (story.Answer, story.Weight, story.CheckId));
        Assert.Contains(story.Says, s => s.Code == "story.no_check");
        Assert.Equal(StoryAct.RepeatTest, story.Steps[0].Act);
        Assert.All(story.Steps.SelectMany(s => s.What).Concat(story.Says), s => Assert.NotEqual(s.Code, s.Text));
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync(new Uri("/api/v1/pools/nowhere/trust", UriKind.Relative))).StatusCode);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_first_test_that_stands_against_the_probe_leaves_it_open_and_both_ends_in_view()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.30", 20));
        var id = Guid.CreateVersion7();
        await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{id}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.85, TestMethod.Photometer))));
        var story = await server.GetAsync<TrustStoryView>("/api/v1/pools/main/trust");
        Assert.Equal(id, story.CheckId);
        Assert.NotEqual(StoryAnswer.AllAgree, story.Answer);
        Assert.Contains(story.Signs, s => s.What.Code == "story.ph_apart");
        Assert.Contains(story.Steps, s => s.Act == StoryAct.RepeatTest && s.What[1].Text.Contains("7.85", StringComparison.Ordinal));
        var ph = story.Plausible.Single(p => p.Measurand == Measurand.Ph);
        Assert.True(ph.Low < 7.45 && ph.High > 7.65, $"{ph}");
    }

    [PeerFact("mosquitto_pub")]
    public async Task Panel_received_test_and_believed_value_stand_side_by_side_and_a_panel_that_differs_is_said()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/panel", Enumerable.Repeat("7.40", 20));
        var check = WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.42, TestMethod.Photometer)) with { Panel = [new PanelReading("panel-ph", 7.60)] };
        await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check));
        var story = await server.GetAsync<TrustStoryView>("/api/v1/pools/main/trust");
        var side = story.Sides.Single(s => s.ProbeId == "panel-ph");
        Assert.True(side.PanelDiffers);
        Assert.Equal((7.60, 7.40, 7.42), (side.Panel, Math.Round(side.Received!.Value, 2), Math.Round(side.Test!.Value, 2)));
        Assert.Contains(story.Signs, s => s.What.Code == "story.sign_panel_differs");
        Assert.Contains(story.Steps, s => s.Act == StoryAct.CheckScaling);
    }
}
