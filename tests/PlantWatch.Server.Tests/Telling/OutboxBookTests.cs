using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Telling;
using PlantWatch.Server.Tests.PlantFile;
using PlantWatch.Server.Tests.Storage;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Telling;

/// <summary>A server that runs for months does not hold every message it ever sent.</summary>
public sealed class OutboxBookTests
{
    private static readonly PartitionKey Hall = new("hall");
    private readonly HandClock _clock = new();

    [Fact]
    public async Task What_is_long_over_is_let_go_while_the_server_runs_and_what_waits_is_kept()
    {
        using var book = new OutboxBook(new InMemoryStore(TimeZoneInfo.Utc), _clock);
        await book.OpenAsync(Hall, [], CancellationToken.None);
        var (sent, waiting) = (Notice("R-010/ph"), Notice("R-030/pump"));
        await book.QueueAsync(Hall, [new(sent, "{}"), new(waiting, "{}")], CancellationToken.None);
        await book.NoteAsync(Hall, sent.Id, new(Instant.From(_clock.GetUtcNow()), Fate.Sent, ""));
        _clock.Advance(TimeSpan.FromDays(30));
        await book.OpenAsync(Hall, [], CancellationToken.None);
        Assert.Equal(2, book.Of(Hall).Count);
        _clock.Advance(TimeSpan.FromDays(10));
        await book.OpenAsync(Hall, [], CancellationToken.None);
        Assert.Equal(waiting.Id, Assert.Single(book.Of(Hall)).Notice.Id);
    }

    private Notice Notice(string key)
    {
        var at = Instant.From(_clock.GetUtcNow());
        return new() { Alarm = TimeOrderedId.Derive(at, key), Key = key, Kind = NoticeKind.Raised, Priority = Priority.High, AnnunciatedAt = at, Step = 0, Channel = "house", Person = null, Consequences = [] };
    }
}
