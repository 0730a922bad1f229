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
        return services.AddSingleton<SeriesFeeder>().AddHostedService<SeriesWorker>();
    }
}
