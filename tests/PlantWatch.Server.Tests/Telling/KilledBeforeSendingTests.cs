using PlantWatch.Campaign;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Telling;

/// <summary>SIGKILL after a message was written down and before it was taken: the real process, the real record, a real mail server.</summary>
public sealed class KilledBeforeSendingTests
{
    [PeerFact("mosquitto_pub")]
    public async Task A_message_survives_and_arrives_after_the_next_start_under_its_own_id()
    {
        var folder = Directory.CreateTempSubdirectory("plantwatch-killed-");
        var broker = Peer.FreePort();
        await using var box = new LetterBox();
        await File.WriteAllTextAsync(Path.Combine(folder.FullName, "plant.yaml"), TellingPlant.With(TellingPlant.Post(box.Port)));
        await using var server = new ServerProcess(folder.FullName, BrokerMode.Embedded, broker);
        server.Start();
        Assert.True(await Programs.ComesAboutAsync(server.IsReadyAsync, TimeSpan.FromSeconds(90)), string.Join("\n", server.Said));
        await using (var pump = Peer.Start("mosquitto_pub", "-h", "127.0.0.1", "-p", $"{broker}", "-q", "1", "-t", "hall/acid/state", "-m", "fault")) await pump.ExitAsync();
        await Peer.UntilAsync(() => server.Said.Any(line => line.Contains(" 6000 ", StringComparison.Ordinal)), "the message is written down");
        await server.KillAsync();

        var written = await OutboxAsync(server);
        Assert.Equal(Fate.Waiting, written.Fate);

        box.Start();
        server.Start();
        Assert.True(await Programs.ComesAboutAsync(() => Task.FromResult(box.Letters.Count == 1), TimeSpan.FromSeconds(90)), "the letter arrives");
        Assert.Equal($"{written.Notice.Id:N}@baths.example", box.Letters[0].MessageId);
        await server.KillAsync();
        folder.Delete(recursive: true);
    }

    private static async Task<OutboxItem> OutboxAsync(ServerProcess server)
    {
        await using var store = SqliteStore.Open(Path.Combine(server.Data, "record.db"), TimeZoneInfo.FindSystemTimeZoneById("Europe/London"));
        return Assert.Single(await store.OutboxAsync(new("hall"), CancellationToken.None));
    }
}
