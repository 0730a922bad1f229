using PlantWatch.Server.Backup;
using PlantWatch.Server.Health;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Metrics;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Series;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Hosting;

/// <summary>The server looks at itself: which parts stand, and the figures of its work.</summary>
internal sealed class SelfWatch(
    PlantHost host, Committer committer, PlantFileWatcher file, IBrokerStatus broker, Readiness readiness, PlantWatchMeter meter, FeedBook feed, NightlyBackup backup, PlantWatchOptions options)
    : BackgroundService
{
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        committer.Took += meter.Committed;
        meter.Watch(new MeterSources(
            () => host.Everything.Select(w => (w.Partition.Value, CircuitViews.Ledger(w))),
            () => host.Everything.Select(w => (w.Partition.Value, w.Depth)),
            WalBytes,
            () => feed.Now) { BackupAge = () => backup.Age });
        using var timer = new PeriodicTimer(Beat);
        do Look();
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    private void Look()
    {
        if (committer.Trouble is { } trouble) readiness.Fails(Part.Record, trouble);
        else if (backup.Trouble is { } failed) readiness.Limps(Part.Record, $"no backup could be made: {failed}");
        else readiness.Works(Part.Record);

        if (file.Errors.Count == 0) readiness.Works(Part.PlantFile);
        else if (host.Plan is { Circuits.IsEmpty: false } || file.IsMissing) readiness.Limps(Part.PlantFile, file.Errors[0].ToString());
        else readiness.Fails(Part.PlantFile, file.Errors[0].ToString());

        var words = BrokerWords.Say(broker.State, Wording.English);
        if (broker.State.Word is BrokerWord.Listening or BrokerWord.Connected) readiness.Works(Part.Broker, words);
        else if (broker.State.Word is BrokerWord.PartlySubscribed) readiness.Limps(Part.Broker, words);
        else readiness.Fails(Part.Broker, words);

        // The record has everything: readings go on being taken whatever becomes of their copy.
        if (FeedWords.WhatIsWrong(feed.Now) is { } wrong) readiness.Limps(Part.Series, wrong);
        else readiness.Works(Part.Series, FeedWords.HowFar(feed.Now));
    }

    private long WalBytes()
    {
        var wal = new FileInfo(Path.Combine(options.Data, "record.db-wal"));
        return wal.Exists ? wal.Length : 0;
    }
}
