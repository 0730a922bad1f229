using PlantWatch.Server.Ingest;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Telling;

/// <summary>Puts telling people together.</summary>
internal static class TellingSetup
{
    public static IServiceCollection AddTelling(this IServiceCollection services, BrokerMode broker)
    {
        if (broker == BrokerMode.Embedded) services.AddSingleton<IAlarmTopic>(s => s.GetRequiredService<EmbeddedBroker>());
        else services.AddSingleton<IAlarmTopic, TopicPublisher>();
        services.AddSingleton<IOutbox>(s => s.GetRequiredService<SqliteStore>());
        services.AddSingleton<ChannelSecrets>().AddSingleton<Channels>().AddSingleton<OutboxBook>().AddSingleton<IStripPictures, StripPictures>();
        services.AddSingleton<Paper.PaperDesk>().AddSingleton<Paper.PaperTurn>().AddSingleton<IEnclosures, SheetPost>().AddSingleton<SheetPress>();
        return services.AddSingleton<Sender>().AddSingleton<Tester>().AddSingleton<StandingTopics>().AddSingleton<ChannelWatch>().AddHostedService<TellingLoop>();
    }
}
