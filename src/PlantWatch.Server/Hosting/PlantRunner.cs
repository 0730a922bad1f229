using PlantWatch.Core.Plans;
using PlantWatch.Server.Loop;
using PlantWatch.Server.PlantFile;
using PlantWatch.Storage;

namespace PlantWatch.Server.Hosting;

/// <summary>Starts the plant before the first message can come in, and stops it after the last.</summary>
internal sealed class PlantRunner(
    PlantHost host, Committer committer, PlantFileWatcher file, IRecordStore store, PlantWatchOptions options, IHostApplicationLifetime lifetime) : IHostedService
{
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        committer.Fatal += _ => lifetime.StopApplication();
        committer.Start();
        // On a full disk the first commit, of the plant file, waits for room; a wish to end comes first.
        await using var end = cancellationToken.Register(committer.GiveUp);
        await file.StartAsync(cancellationToken);
        // With a plant file that was never good there is no circuit, but what arrives is still kept, and the page says what is wrong.
        if (host.Plan is null) await host.LoadAsync(LastGoodPlan.Find(options) ?? new PlantPlan(new SitePlan("", "UTC"), [], []), cancellationToken);
    }

    public async Task StopAsync(CancellationToken cancellationToken)
    {
        committer.GiveUp();
        // The web server is stopped before and may have used up all the time there was, for one browser that would not let go. What is
        // left to do here is short and must not be left out: the last batch and the snapshot.
        await file.StopAsync(CancellationToken.None);
        await host.DisposeAsync();
        await committer.DisposeAsync();
        await store.DisposeAsync();
    }
}
