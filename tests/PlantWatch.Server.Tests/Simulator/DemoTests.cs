using System.Diagnostics;
using System.Text.Json;
using System.Text.RegularExpressions;
using PlantWatch.Server.Tests.House;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Simulator;

/// <summary>The one command of the README, run as its user runs it: a process of its own, on whatever ports are free.</summary>
public sealed partial class DemoTests
{
    [Fact]
    public async Task A_day_of_history_enters_by_the_door_and_its_sums_close()
    {
        await using var demo = Peer.Start("dotnet", Program, "--days", "1");
        await Peer.UntilAsync(() => Address().IsMatch(demo.Output), "it prints its address at once");
        await UntilLongAsync(demo, "Live now");
        // A pack and four plain numbers every four minutes are 1800 a day; pumps come on top.
        var acknowledged = Acknowledged().Match(demo.Output);
        Assert.Equal(("0", true), (acknowledged.Groups["again"].Value, int.Parse(acknowledged.Groups["count"].Value) > 1800));

        using var http = new HttpClient { BaseAddress = new Uri(Address().Match(demo.Output).Groups["url"].Value + "/api/v1/") };
        var ledger = (await JsonAsync(http, "health-view")).GetProperty("ledger");
        long Sum(string name) => ledger.GetProperty(name).GetInt64();
        Assert.Equal(Sum("received"), Sum("stored") + Sum("duplicates") + Sum("refused") + Sum("inFlight"));
        Assert.Equal((0, 0), (Sum("refused"), Sum("duplicates")));
        Assert.True(Sum("stored") > 11_000, $"seven probes a minute and four every four minutes, not {Sum("stored")}");
        Assert.NotEqual(0, (await JsonAsync(http, "checks?pool=main-pool")).GetArrayLength());

        await demo.StopAsync();
        Assert.Equal(0, await demo.ExitAsync());
    }

    private static string Program => Repository.PathOf("simulators", "PlantWatch.Demo", "bin", Configuration, "net10.0", "PlantWatch.Demo.dll");

    private static string Configuration => new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    // A day of history is seconds of work, but a machine that builds and tests at the same time may take minutes.
    private static async Task UntilLongAsync(Peer demo, string words)
    {
        var deadline = Stopwatch.StartNew();
        while (!demo.Output.Contains(words, StringComparison.Ordinal))
        {
            Assert.False(demo.HasExited, demo.Output);
            Assert.True(deadline.Elapsed < TimeSpan.FromMinutes(4), $"it does not say '{words}' but: {demo.Output}");
            await Task.Delay(50);
        }
    }

    private static async Task<JsonElement> JsonAsync(HttpClient http, string path) =>
        JsonDocument.Parse(await http.GetStringAsync(new Uri(path, UriKind.Relative))).RootElement;

    [GeneratedRegex(@"PlantWatch is at (?<url>http://127\.0\.0\.1:\d+)")]
    private static partial Regex Address();

    [GeneratedRegex(@"(?<count>\d+) messages acknowledged over \d+ connections, (?<again>\d+) sent again")]
    private static partial Regex Acknowledged();
}
