using Microsoft.AspNetCore.SignalR;
using PlantWatch.Server.Api;
using PlantWatch.Server.Boards;
using PlantWatch.Server.Loop;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Live;

/// <summary>Tells the browsers which boards there are, and whenever one of them or the plant under them changed; they ask for the one they show.</summary>
internal sealed class BoardTeller(IHubContext<LiveHub> hub, BoardWatcher boards, PlantFileWatcher plantFile, PlantHost host, ILogger<BoardTeller> log) : IHostedService
{
    /// <summary>The boards, in the order of their titles.</summary>
    public IReadOnlyList<BoardLine> Lines() => [.. boards.Shelf.InOrder.Select(b => BoardViews.Line(BoardViews.Of(b, host.Plan))).OrderBy(b => b.Title, StringComparer.Ordinal)];

    /// <summary>One board; null when there is none of that id.</summary>
    public BoardView? Find(string id) => boards.Shelf.Find(id) is { } board ? BoardViews.Of(board, host.Plan) : null;

    public Task StartAsync(CancellationToken cancellationToken)
    {
        boards.Changed += Tell;
        plantFile.Changed += Tell;
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        boards.Changed -= Tell;
        plantFile.Changed -= Tell;
        return Task.CompletedTask;
    }

    /// <summary>The list for a page that has just connected.</summary>
    public Task GreetAsync(IClientProxy caller, CancellationToken cancellation) => caller.SendAsync("boards", Lines(), cancellation);

    // Whoever made the change does not wait for the browsers; one that misses it asks on its next connection.
    private void Tell() => _ = TellAsync();

    private async Task TellAsync()
    {
        try
        {
            await hub.Clients.All.SendAsync("boards", Lines());
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            LiveLog.BoardsNotTold(log, fault);
        }
    }
}
