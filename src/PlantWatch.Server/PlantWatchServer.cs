using System.Text.Json.Serialization;
using Microsoft.Extensions.Options;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Server.Backup;
using PlantWatch.Server.Boards;
using PlantWatch.Server.Health;
using PlantWatch.Server.Hosting;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Ingest.Links;
using PlantWatch.Server.Live;
using PlantWatch.Server.Logging;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Metrics;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.PlantFile.Editing;
using PlantWatch.Server.Series;
using PlantWatch.Server.Telling;
using PlantWatch.Server.Upkeep;
using PlantWatch.Server.WhatIf;
using PlantWatch.Server.Words;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server;

/// <summary>Puts the server together: one place that shows what there is and in which order it starts.</summary>
internal static class PlantWatchServer
{
    private const long LargestRequest = 256 * 1024;

    public static WebApplication Build(PlantWatchOptions options, TimeProvider clock, string urls, Action<WebApplicationBuilder>? more = null)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseUrls(urls).ConfigureKestrel(k => k.Limits.MaxRequestBodySize = LargestRequest);
        AddPlant(builder.Services, options, clock);
        AddWeb(builder.Services);
        builder.AddPlantWatchLogging(options.Data);
        more?.Invoke(builder);
        var app = builder.Build();
        MapWeb(app);
        return app;
    }

    private static void AddPlant(IServiceCollection services, PlantWatchOptions options, TimeProvider clock)
    {
        services.AddSingleton(options).AddSingleton(Options.Create(options)).AddSingleton(clock);
        services.AddSingleton(_ => RecordLock.Take(options.Data));
        services.AddSingleton(s => OpenRecord(s.GetRequiredService<RecordLock>(), options));
        services.AddSingleton<IRecordStore>(s => s.GetRequiredService<SqliteStore>());
        services.AddSingleton<IPictureStore>(s => s.GetRequiredService<SqliteStore>());
        services.AddSingleton<ISeriesStore>(s => s.GetRequiredService<SqliteStore>());
        services.AddSingleton<Committer>().AddSingleton<Snapshots>().AddSingleton<PlantHost>().AddSingleton<IDoor>(s => s.GetRequiredService<PlantHost>());
        services.AddSingleton(s => new PlantFileWatcher(
            options.PlantFile, (plan, cancellation) => BringIntoForceAsync(s.GetRequiredService<PlantHost>(), plan, options, s.GetRequiredService<PlantFileWatcher>().Signed, cancellation), clock,
            s.GetRequiredService<ILogger<PlantFileWatcher>>()));
        services.AddSingleton<PlantFileDesk>();
        // Started in this order, stopped in the reverse: the plant stands before a message can come, and stays until the last is committed.
        services.AddHostedService<PlantRunner>();
        AddBroker(services, options.Broker.Mode);
        services.AddTelling(options.Broker.Mode);
        services.AddSingleton<Api.ExportTurn>();
        services.AddSeriesFeed(options.Influx);
        services.AddSingleton<LivePublisher>().AddHostedService(s => s.GetRequiredService<LivePublisher>());
        services.AddSingleton(s => new BoardWatcher(BoardWatcher.ShippedFolder, BoardWatcher.OwnFolder(options), clock, s.GetRequiredService<ILogger<BoardWatcher>>()));
        services.AddHostedService(s => s.GetRequiredService<BoardWatcher>());
        services.AddSingleton<BoardTeller>().AddHostedService(s => s.GetRequiredService<BoardTeller>());
        services.AddSingleton(s => new NightlyBackup(options, () => ZoneOf(s.GetRequiredService<PlantHost>()), clock, s.GetRequiredService<ILogger<NightlyBackup>>()));
        services.AddHostedService(s => s.GetRequiredService<NightlyBackup>());
        services.AddSingleton<IRetention>(s => s.GetRequiredService<SqliteStore>()).AddSingleton<SizeBook>();
        services.AddSingleton<RetentionKeeper>().AddHostedService(s => s.GetRequiredService<RetentionKeeper>());
        services.AddHostedService<SelfWatch>();
        services.AddHostedService<StockWatch>();
        services.AddSingleton<LimitRuns>().AddHostedService(s => s.GetRequiredService<LimitRuns>());
    }

    private static void AddBroker(IServiceCollection services, BrokerMode mode)
    {
        services.AddSingleton<TopicEar>();
        services.AddSingleton<TopicSilence>().AddHostedService(s => s.GetRequiredService<TopicSilence>());
        if (mode == BrokerMode.Embedded)
            services.AddHostedService<DoorEar>();
        else
            services.AddHostedService<ExternalEar>();
        if (mode == BrokerMode.Embedded)
            services.AddSingleton<EmbeddedBroker>().AddSingleton<IBrokerStatus>(s => s.GetRequiredService<EmbeddedBroker>())
                .AddHostedService(s => s.GetRequiredService<EmbeddedBroker>());
        else
            services.AddSingleton<ExternalBroker>().AddSingleton<IBrokerStatus>(s => s.GetRequiredService<ExternalBroker>())
                .AddHostedService(s => s.GetRequiredService<ExternalBroker>());
    }

    private static void AddWeb(IServiceCollection services)
    {
        services.AddRouting().AddCompression();
        services.AddPlantWatchHealth().AddPlantWatchMetrics().AddPlantWatchOpenApi();
        services.Configure<RouteHandlerOptions>(o => o.ThrowOnBadRequest = true);
        services.ConfigureHttpJsonOptions(o =>
        {
            o.SerializerOptions.Converters.Add(new WordEnums());
            o.SerializerOptions.NumberHandling = JsonNumberHandling.Strict;
            o.SerializerOptions.RespectNullableAnnotations = true;
        });
        services.AddSignalR(o => o.MaximumReceiveMessageSize = 4096).AddJsonProtocol(o => o.PayloadSerializerOptions = PlantJson.Options);
    }

    private static void MapWeb(WebApplication app)
    {
        app.UseSecurityHeaders();
        app.UseClearErrors();
        Reader.UseReader(app);
        app.UseForeignOrigins();
        app.UseResponseCompression();
        app.UsePageFiles();
        app.UseRouting();
        var api = app.MapGroup("/api/v1");
        api.MapSite();
        api.MapBoards();
        api.MapSeries();
        api.MapChecks();
        api.MapProbes();
        api.MapPumps();
        api.MapCalibrations();
        api.MapBench();
        api.MapAlarms();
        api.MapAlarmStory();
        api.MapRules();
        api.MapLimits();
        api.MapPlantFile();
        api.MapTopics();
        api.MapBroker();
        api.MapJobs();
        api.MapPictures();
        api.MapFilters();
        api.MapReagents();
        api.MapInstruments();
        api.MapPlantRounds();
        api.MapStock();
        api.MapHandover();
        api.MapPoolStates();
        api.MapIncidents();
        api.MapLaboratory();
        api.MapTelling();
        api.MapAlarmHealth();
        api.MapExceptions();
        api.MapRecord();
        api.MapStorage();
        api.MapEntries();
        api.MapNotes();
        api.MapMarks();
        api.MapExports();
        api.MapSheets();
        api.MapCharts();
        api.MapPairCharts();
        api.MapCorrections();
        api.MapProbeRecord();
        api.MapOrp();
        api.MapCirculation();
        api.MapTrust();
        api.MapBalance();
        api.MapWhatIf();
        api.MapWhatIfLimits();
        api.MapDoses();
        api.MapDosingPlan();
        app.MapHealth();
        app.MapMetrics();
        app.MapPlantWatchOpenApi();
        app.MapHub<LiveHub>("/live");
        app.MapPage();
    }

    private static async Task BringIntoForceAsync(PlantHost host, PlantPlan plan, PlantWatchOptions options, PlanSigned? signed, CancellationToken cancellation)
    {
        // A file that changed while the server was off is compared with the one that was in force before.
        await host.LoadAsync(plan, cancellation, host.Plan is null ? LastGoodPlan.Find(options) : null, signed);
        LastGoodPlan.Keep(options);
    }

    private static TimeZoneInfo ZoneOf(PlantHost host) => host.Plan is { } plan && TimeZoneInfo.TryFindSystemTimeZoneById(plan.Site.TimeZone, out var zone) ? zone : TimeZoneInfo.Utc;

    // The lock is taken first and, being older, given back after the record is closed.
    private static SqliteStore OpenRecord(RecordLock _, PlantWatchOptions options) => SqliteStore.Open(Path.Combine(options.Data, "record.db"), SiteZone.Of(options));
}
