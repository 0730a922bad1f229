using System.Text.Json;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace PlantWatch.Server.Health;

/// <summary>Two questions of whoever runs the server: is it alive (restart it if not), is it ready (send no traffic if not).</summary>
internal static class HealthSetup
{
    /// <summary>Adds <see cref="Readiness"/>, which the parts of the server report to.</summary>
    public static IServiceCollection AddPlantWatchHealth(this IServiceCollection services)
    {
        services.AddSingleton<Readiness>();
        services.AddHealthChecks().AddCheck<Readiness>("ready");
        return services;
    }

    /// <summary>Answers at /health/live (200 while the process answers at all) and /health/ready (200 when every part stands, else 503).</summary>
    public static WebApplication MapHealth(this WebApplication app)
    {
        var readiness = app.Services.GetRequiredService<Readiness>();
        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false });
        app.MapHealthChecks("/health/ready", new HealthCheckOptions { ResponseWriter = (context, report) => WriteAsync(context, report.Status, readiness) });
        return app;
    }

    private static Task WriteAsync(HttpContext context, HealthStatus status, Readiness readiness)
    {
        context.Response.ContentType = "application/json";
        var parts = readiness.All.Select(p => new { part = Snake(p.Part.ToString()), status = Snake(p.Status.ToString()), why = p.Why });
        return JsonSerializer.SerializeAsync(context.Response.Body, new { status = Snake(status.ToString()), parts }, cancellationToken: context.RequestAborted);
    }

    private static string Snake(string name) => JsonNamingPolicy.SnakeCaseLower.ConvertName(name);
}
