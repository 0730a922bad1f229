using PlantWatch.Server.Api;
using PlantWatch.Server.Ingest.Links;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>What the page is told of the broker.</summary>
public sealed class BrokerViewTests
{
    [PeerFact("mosquitto_pub")]
    public async Task Topics_that_never_spoke_are_told_once_their_time_has_passed_and_no_longer_when_they_speak()
    {
        var clock = new Shifted();
        await using var server = await WholeServer.StartAsync(clock: clock);
        var fresh = await ViewAsync(server);
        Assert.True(fresh.Well);
        Assert.Empty(fresh.Silent);

        await server.PublishAsync("hall/ph", "7.2");
        clock.Shift = TimeSpan.FromMinutes(2);
        var later = await ViewAsync(server);
        Assert.Equal([("hall/pack", "Temperature"), ("hall/panel", "pH on the panel")], later.Silent.Select(s => (s.Topic, s.Of)));

        await server.PublishAsync("hall/panel", "7.3");
        clock.Shift = TimeSpan.FromMinutes(11);
        Assert.Equal(["hall/acid/state", "hall/acid/tank", "hall/pack"], (await ViewAsync(server)).Silent.Select(s => s.Topic));
    }

    [Fact]
    public async Task A_broker_that_is_not_there_is_told_with_what_to_do_in_the_language_that_is_asked_for()
    {
        var port = Peer.FreePort();
        await using var server = await WholeServer.StartAsync(set: o => (o.Broker.Mode, o.Broker.Port) = (BrokerMode.External, port));
        BrokerView view;
        while ((view = await ViewAsync(server)).Troubles.Count == 0) await Task.Delay(20);
        var trouble = Assert.Single(view.Troubles);
        Assert.Equal((BrokerFailure.NothingListens, true, $"Nobody listens at 127.0.0.1:{port}"), (trouble.What, trouble.Now, trouble.Text));
        Assert.Contains("start it", trouble.Todo, StringComparison.Ordinal);
        Assert.Equal((false, trouble.Text), (view.Well, view.Text));
        Assert.Equal($"127.0.0.1:{port}", (await server.GetAsync<HeardView>("/api/v1/topics/heard")).Address);
        server.Http.DefaultRequestHeaders.AcceptLanguage.ParseAdd("de");
        Assert.StartsWith("An 127.0.0.1", (await ViewAsync(server)).Text, StringComparison.Ordinal);
    }

    private static Task<BrokerView> ViewAsync(WholeServer server) => server.GetAsync<BrokerView>("/api/v1/broker");

    private sealed class Shifted : TimeProvider
    {
        public TimeSpan Shift { get; set; }

        public override DateTimeOffset GetUtcNow() => System.GetUtcNow() + Shift;
    }
}
