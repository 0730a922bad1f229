using Microsoft.AspNetCore.SignalR;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>The live connection. It only speaks: everything a person does goes through the interface under /api/v1.</summary>
internal sealed class LiveHub(LivePublisher publisher, BoardTeller boards, PlantWatch.Server.Metrics.PlantWatchMeter meter, IHostApplicationLifetime lifetime) : Hub
{
    private Language Spoken => Language.Find(Context.GetHttpContext()?.Request.Query["language"]) ?? Language.English;

    public override async Task OnConnectedAsync()
    {
        publisher.Connected(Spoken, 1);
        meter.HubConnected();
        // A page that comes back in the very moment of a stop would otherwise keep the server up until its patience ends.
        if (lifetime.ApplicationStopping.IsCancellationRequested)
        {
            Context.Abort();
            return;
        }

        await Groups.AddToGroupAsync(Context.ConnectionId, LivePublisher.GroupOf(Spoken), Context.ConnectionAborted);
        await publisher.GreetAsync(Clients.Caller, Wording.Of(Spoken), Context.ConnectionAborted);
        await boards.GreetAsync(Clients.Caller, Context.ConnectionAborted);
        await base.OnConnectedAsync();
    }

    public override Task OnDisconnectedAsync(Exception? exception)
    {
        publisher.Connected(Spoken, -1);
        meter.HubDisconnected();
        return base.OnDisconnectedAsync(exception);
    }
}
