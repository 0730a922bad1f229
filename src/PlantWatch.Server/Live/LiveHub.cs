using Microsoft.AspNetCore.SignalR;

namespace PlantWatch.Server.Live;

/// <summary>The live connection. It only speaks: everything a person does goes through the interface under /api/v1.</summary>
internal sealed class LiveHub(LivePublisher publisher, PlantWatch.Server.Metrics.PlantWatchMeter meter, IHostApplicationLifetime lifetime) : Hub
{
    public override async Task OnConnectedAsync()
    {
        publisher.Connected(1);
        meter.HubConnected();
        // A page that comes back in the very moment of a stop would otherwise keep the server up until its patience ends.
        if (lifetime.ApplicationStopping.IsCancellationRequested)
        {
            Context.Abort();
            return;
        }

        await publisher.GreetAsync(Clients.Caller, Context.ConnectionAborted);
        await base.OnConnectedAsync();
    }

    public override Task OnDisconnectedAsync(Exception? exception)
    {
        publisher.Connected(-1);
        meter.HubDisconnected();
        return base.OnDisconnectedAsync(exception);
    }
}
