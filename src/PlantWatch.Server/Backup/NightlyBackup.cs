using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Backup;

/// <summary>A backup each night while the server runs, where a folder for it is configured. What was missed, or failed, is made up for.</summary>
/// <param name="options">Where to and how many.</param>
/// <param name="zone">The site's clock now.</param>
/// <param name="clock">Clock of the server.</param>
/// <param name="log">Where it says what it did.</param>
internal sealed class NightlyBackup(PlantWatchOptions options, Func<TimeZoneInfo> zone, TimeProvider clock, ILogger<NightlyBackup> log) : BackgroundService
{
    /// <summary>How often it looks whether one is due.</summary>
    public static readonly TimeSpan Beat = TimeSpan.FromMinutes(1);

    /// <summary>How long it waits after one that failed.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromMinutes(10);

    private Instant _notBefore;

    /// <summary>Why the last one failed; null when it did not, or none is configured.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Begin of the newest whole one; never when there is none.</summary>
    public Instant Newest { get; private set; }

    /// <summary>Age of the newest; null when there is none.</summary>
    public TimeSpan? Age => Newest.IsSet ? Now - Newest : null;

    private BackupOptions Wanted => options.Backup;

    private Instant Now => Instant.From(clock.GetUtcNow());

    /// <summary>Makes one if it is due. True when one was made.</summary>
    public bool Look(CancellationToken cancellation)
    {
        if (Wanted.Folder is not { Length: > 0 } folder || Now < _notBefore) return false;
        try
        {
            Newest = BackupFolder.In(folder) is [var first, ..] ? first.At : Instant.Never;
            if (Newest >= BackupSchedule.LastDue(Now, zone(), Math.Clamp(Wanted.Hour, 0, 23)))
            {
                // Made meanwhile, by hand or by the one before: what kept it from being made is over.
                Trouble = null;
                return false;
            }

            Make(folder, cancellation);
            return true;
        }
        // Whatever it was: a copy that is not made ends no server.
        catch (Exception fault) when (fault is not OutOfMemoryException && !cancellation.IsCancellationRequested)
        {
            Trouble = fault.Message;
            _notBefore = Now + Pause;
            BackupLog.Failed(log, fault.Message, Pause.TotalMinutes);
            return false;
        }
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (string.IsNullOrEmpty(Wanted.Folder)) return;
        while (true)
        {
            // It may take minutes: a thread of its own, not one that answers requests.
            await Task.Factory.StartNew(() => Look(stoppingToken), stoppingToken, TaskCreationOptions.LongRunning, TaskScheduler.Default);
            await Task.Delay(Beat, clock, stoppingToken);
        }
    }

    private void Make(string folder, CancellationToken cancellation)
    {
        var began = clock.GetTimestamp();
        foreach (var leftover in BackupFolder.Leftovers(folder).ToArray()) Directory.Delete(leftover, recursive: true);
        var at = Now;
        var (path, manifest) = BackupMaker.Make(options.Data, folder, at, null, cancellation);
        (Newest, Trouble) = (at, null);
        BackupLog.Made(log, path, manifest.Bytes, manifest.Readings, clock.GetElapsedTime(began).TotalSeconds, RemoveOld(folder));
    }

    // Only after a new one is whole.
    private int RemoveOld(string folder)
    {
        var old = BackupFolder.In(folder).Skip(Math.Max(1, Wanted.Keep)).ToArray();
        try
        {
            foreach (var (_, path) in old) Directory.Delete(path, recursive: true);
            return old.Length;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            BackupLog.NotRemoved(log, folder, fault.Message);
            return 0;
        }
    }
}
