using PlantWatch.Server.Hosting;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Series;

/// <summary>Adds the feed of InfluxDB where one is asked for.</summary>
internal static class SeriesSetup
{
    public static IServiceCollection AddSeriesFeed(this IServiceCollection services, InfluxOptions options)
    {
        services.AddSingleton<FeedBook>();
        if (options.Place is not { } place) return services;
        services.AddSingleton<IFeedSource>(s => s.GetRequiredService<SqliteStore>());
        services.AddSingleton(s => new InfluxDoor(place, s.GetRequiredService<TimeProvider>()));
        services.AddSingleton<CopyCheck>();
        services.AddSingleton(s => new NightlyCheck(
            s.GetRequiredService<IFeedSource>(), s.GetRequiredService<CopyCheck>(), SiteZone.Of(s.GetRequiredService<PlantWatchOptions>()), s.GetRequiredService<TimeProvider>(), s.GetRequiredService<ILogger<NightlyCheck>>()));
        return services.AddSingleton<SeriesFeeder>().AddHostedService<SeriesWorker>();
    }
}
