using PlantWatch.Server.Backup;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Upkeep;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>What the record takes up, what it will take up in a year, and how long the disk lasts.</summary>
internal static class StorageApi
{
    public static void MapStorage(this RouteGroupBuilder api) => api.MapGet("/storage", ViewAsync).Produces<StorageView>();

    private static async Task<IResult> ViewAsync(
        SizeBook book, RetentionKeeper keeper, NightlyBackup backup, PlantHost host, ISeriesStore series, PlantWatchOptions options, CancellationToken cancellation)
    {
        var (at, size) = await book.NowAsync(cancellation);
        var (policy, free) = (keeper.Policy, new DriveInfo(Path.GetFullPath(options.Data)).AvailableFreeSpace);
        var forecast = SizeForecast.Of(size, policy, free);
        return Answers.Ok(new StorageView(
            at, size.Bytes, size.FreeBytes, [.. SizeForecast.Tables(size).Select(t => new StorageTable(t.Name, t.Bytes))], size.Readings, size.LetGo, size.ReadingsADay, forecast.BytesADay, forecast.BytesInAYear,
            free, forecast.DaysLeft, policy.Raw?.TotalDays, policy.Minutes?.TotalDays, await GoneAsync(host, series, cancellation), backup.Newest.IsSet ? backup.Newest : null));
    }

    private static async Task<IReadOnlyList<StorageGone>> GoneAsync(PlantHost host, ISeriesStore series, CancellationToken cancellation)
    {
        var gone = new List<StorageGone>();
        foreach (var worker in host.Circuits.ToArray())
            if (await series.RawFromAsync(worker.Partition, null, cancellation) is { IsSet: true } before) gone.Add(new StorageGone(worker.Partition.Value, before));
        return gone;
    }
}
