using OpenTelemetry.Metrics;

namespace PlantWatch.Server.Metrics;

/// <summary>Metrics in the Prometheus text format at /metrics.</summary>
internal static class MetricsSetup
{
    /// <summary>Adds the meter and its exporter, with those of the runtime and of the web server beside them.</summary>
    public static IServiceCollection AddPlantWatchMetrics(this IServiceCollection services)
    {
        services.AddSingleton<PlantWatchMeter>();
        services.AddOpenTelemetry().WithMetrics(metrics => metrics
            .AddMeter(PlantWatchMeter.Name, "System.Runtime", "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel")
            .AddPrometheusExporter());
        return services;
    }

    /// <summary>Answers at /metrics.</summary>
    public static WebApplication MapMetrics(this WebApplication app)
    {
        app.Services.GetRequiredService<PlantWatchMeter>();
        app.MapPrometheusScrapingEndpoint("/metrics");
        return app;
    }
}
