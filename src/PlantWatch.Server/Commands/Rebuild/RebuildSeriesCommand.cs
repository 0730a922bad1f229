using PlantWatch.Server.Hosting;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Commands.Rebuild;

/// <summary>Has every reading written to InfluxDB again. Where the server runs, it does that; where it does not, this does. Broken off, it goes on where it was, in either.</summary>
internal static class RebuildSeriesCommand
{
    /// <summary>0 when all is there, 1 when lines were refused for good, 2 when it could not be done.</summary>
    public static int Run(RebuildRequest asked, PlantWatchOptions options, TextWriter output, TextWriter complaints)
    {
        if (asked.Data is { } data) options.Data = data;
        try
        {
            if (options.Influx.Place is not { } place) throw new IOException("PlantWatch__Influx__Url names no server");
            if (!File.Exists(Path.Combine(options.Data, "record.db"))) throw new FileNotFoundException($"{Path.Combine(options.Data, "record.db")} is not there");
            return RunAsync(asked, options, place, output, complaints).GetAwaiter().GetResult();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or StorageException)
        {
            complaints.WriteLine(fault.Message);
            return 2;
        }
    }

    private static async Task<int> RunAsync(RebuildRequest asked, PlantWatchOptions options, InfluxPlace place, TextWriter output, TextWriter complaints)
    {
        // Null where the server runs: it holds the lock, and feeds.
        using var ours = TakeLock(options.Data);
        await using var store = SqliteStore.Open(Path.Combine(options.Data, "record.db"), SiteZone.Of(options));
        using var door = new InfluxDoor(place, TimeProvider.System);
        var run = new RebuildRun(store, door, output, complaints);
        // One that was broken off goes on only at the server that it was for.
        var isOther = ours is not null && await MarksOf.TakeAsync(store, place, default);
        await run.BeginAsync(asked.Anew || isOther);
        return ours is null ? await run.WatchAsync() : await run.WriteAsync();
    }

    private static RecordLock? TakeLock(string data)
    {
        try
        {
            return RecordLock.Take(data);
        }
        catch (RecordInUseException)
        {
            return null;
        }
    }
}
