using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Telling;

/// <summary>A webhook's address that carries a token: it is used, and shown nowhere.</summary>
public sealed class AddressKeptApartTests
{
    private const string Token = "tok-7f3a9c-never-shown";
    private const string Channel = "{ id: house, name: House, kind: webhook, url_kept_apart: true }";

    [PeerFact("mosquitto_pub")]
    public async Task It_is_used_and_neither_the_interface_nor_metrics_nor_the_log_ever_show_it()
    {
        var port = Peer.FreePort();
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With(Channel), set: options =>
        {
            TellingPlant.Keys(options);
            options.Telling.Addresses["house"] = $"http://127.0.0.1:{port}/hooks/{Token}";
        });
        // First nobody is there, so that there is a trouble to tell; then somebody is.
        await TellingPlant.FaultAsync(server);
        await Peer.UntilAsync(() => server.GetAsync<TellingView>("/api/v1/telling").Result.Channels.Single().Trouble is not null, "it says why");
        var refused = await WholeServer.ReadAsync<TestMessageAnswer>(await server.PostAsync("/api/v1/telling/house/test", new TestMessage("B. Sample")));
        Assert.False(refused.Delivered);
        await ShowsNothingAsync(server, refused.Trouble);

        await using var receiver = await Receiver.StartAsync(port);
        await server.PostAsync("/api/v1/telling/house/test", new TestMessage("B. Sample"));
        await Peer.UntilAsync(() => receiver.Requests.Count >= 2, "the test message and the one that waited arrive");
        Assert.All(receiver.Requests, request => Assert.Equal($"/hooks/{Token}", request.Path));
        await ShowsNothingAsync(server, null);
        var log = await LogAsync(server);
        Assert.Contains("\"MessageId\":6010", log, StringComparison.Ordinal);
        Assert.DoesNotContain(Token, log, StringComparison.Ordinal);
        Assert.Equal("kept apart", (await server.GetAsync<TellingView>("/api/v1/telling")).Channels.Single().Where);
    }

    [Theory]
    [InlineData(null), InlineData("http://desk.example/hooks/" + Token), InlineData("https://ann:" + Token + "@desk.example/"), InlineData(Token)]
    public async Task One_that_is_missing_or_cannot_be_used_is_said_without_it(string? address)
    {
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With(Channel), set: options =>
        {
            TellingPlant.Keys(options);
            if (address is not null) options.Telling.Addresses["house"] = address;
        });
        var answer = await WholeServer.ReadAsync<TestMessageAnswer>(await server.PostAsync("/api/v1/telling/house/test", new TestMessage("B. Sample")));
        Assert.False(answer.Delivered);
        Assert.StartsWith("the address that is kept apart", answer.Trouble, StringComparison.Ordinal);
        Assert.DoesNotContain(Token, answer.Trouble, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_taken_from_a_file_beside_the_key_and_a_changed_file_needs_no_restart()
    {
        var (port, folder) = (Peer.FreePort(), Directory.CreateTempSubdirectory("secrets-"));
        await File.WriteAllTextAsync(Path.Combine(folder.FullName, "house"), TellingPlant.Key + "\n");
        await using var receiver = await Receiver.StartAsync(port);
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With(Channel), set: options => options.Telling.SecretsFolder = folder.FullName);
        Assert.False((await TestAsync(server)).Delivered);
        foreach (var path in (string[])["/hooks/one", "/hooks/two"])
        {
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "house.url"), $"http://127.0.0.1:{port}{path}\r\n");
            Assert.True((await TestAsync(server)).Delivered);
        }

        Assert.Equal(["/hooks/one", "/hooks/two"], receiver.Requests.Select(request => request.Path));
        folder.Delete(recursive: true);
    }

    private static async Task<TestMessageAnswer> TestAsync(WholeServer server) =>
        await WholeServer.ReadAsync<TestMessageAnswer>(await server.PostAsync("/api/v1/telling/house/test", new TestMessage("B. Sample")));

    private static async Task<string> LogAsync(WholeServer server)
    {
        await using var file = new FileStream(Assert.Single(Directory.GetFiles(Path.Combine(server.Folder, "data", "logs"))), FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var reader = new StreamReader(file);
        return await reader.ReadToEndAsync();
    }

    private static async Task ShowsNothingAsync(WholeServer server, string? said)
    {
        Assert.DoesNotContain(Token, said ?? "", StringComparison.Ordinal);
        foreach (var path in (string[])["/api/v1/telling", "/api/v1/site", "/api/v1/circuits", "/api/v1/circuits/hall", "/api/v1/alarms", "/api/v1/entries", "/api/v1/health-view", "/api/v1/refusals", "/metrics", "/health/ready"])
            Assert.DoesNotContain(Token, await (await server.Http.GetAsync(path)).Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }
}
