using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>From a device's message to a point in InfluxDB, through the whole server.</summary>
public sealed class WholeFeedTests
{
    [PeerFact("influxd", "mosquitto_pub")]
    public async Task What_a_device_says_is_in_InfluxDB_a_moment_later_and_the_server_says_how_it_stands()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var server = await WholeServer.StartAsync(set: options => options.Influx.Url = influxd.Url.ToString());

        await server.PublishLinesAsync("hall/ph", Enumerable.Range(0, 20).Select(i => (7 + (i / 100.0)).ToString()));

        var answer = "";
        await Peer.UntilAsync(() => (answer = influxd.AskAsync("SELECT count(value), max(value) FROM reading WHERE circuit = 'hall' AND probe = 'ph'").GetAwaiter().GetResult()).Contains(",20,7.19]", StringComparison.Ordinal), "20 points");
        Assert.Contains("\"part\":\"series\",\"status\":\"healthy\"", await server.Http.GetStringAsync("/health/ready"), StringComparison.Ordinal);
        var metrics = await server.Http.GetStringAsync("/metrics");
        Assert.Contains("plantwatch_series_feed_behind", metrics, StringComparison.Ordinal);
        Assert.Contains("plantwatch_series_feed_written", metrics, StringComparison.Ordinal);

        await influxd.KillAsync();
        await server.PublishLinesAsync("hall/ph", ["7.5"]);
        await Peer.UntilAsync(() => Ready(server).Contains("\"part\":\"series\",\"status\":\"degraded\",\"why\":\"InfluxDB cannot be written", StringComparison.Ordinal), Ready(server));
    }

    [Fact]
    public async Task A_server_that_nobody_asked_to_feed_says_that_it_is_not_set_up()
    {
        await using var server = await WholeServer.StartAsync();
        await Peer.UntilAsync(() => Ready(server).Contains("\"part\":\"series\",\"status\":\"healthy\",\"why\":\"not set up\"", StringComparison.Ordinal), "not set up");
    }

    private static string Ready(WholeServer server)
    {
        using var answer = server.Http.Send(new HttpRequestMessage(HttpMethod.Get, "/health/ready"));
        using var reader = new StreamReader(answer.Content.ReadAsStream());
        return reader.ReadToEnd();
    }
}
