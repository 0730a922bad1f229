using PlantWatch.Server.Hosting;
using Serilog;
using Serilog.Core;
using Serilog.Debugging;
using Serilog.Events;
using Serilog.Formatting.Compact;

namespace PlantWatch.Server.Logging;

/// <summary>Where log lines go: to the console for whoever stands before it, and as one JSON object a line into a file for the day after.</summary>
/// <remarks>What every message means stands in docs/log-messages.md, by its number. Levels can be changed in the section "Serilog" of the configuration.</remarks>
internal static class LoggingSetup
{
    private const string Console = "{Timestamp:yyyy-MM-dd HH:mm:ss} {Level:u3} {MessageId} {Message:lj}{NewLine}{Exception}";
    private const int Days = 31;
    private const long FileBytes = 50L << 20;

    /// <summary>Sets up logging for a server that keeps its data in a folder; the files lie in its subfolder logs.</summary>
    public static WebApplicationBuilder AddPlantWatchLogging(this WebApplicationBuilder builder, string dataFolder)
    {
        // The logger's own troubles (a full disk, a file that cannot be opened) have nowhere else to go.
        SelfLog.Enable(System.Console.Error);
        // The logger belongs to this server alone: several may run in one process.
        builder.Services.AddSerilog((_, logger) => Configure(logger, builder.Configuration, dataFolder), preserveStaticLogger: true);
        return builder;
    }

    private static void Configure(LoggerConfiguration logger, IConfiguration configuration, string dataFolder) => logger
        .MinimumLevel.Information()
        .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
        .MinimumLevel.Override("Microsoft.Hosting.Lifetime", LogEventLevel.Information)
        // Every question of a supervisor would be a line without a reason; the answer itself carries the reasons, and the parts log them once.
        .MinimumLevel.Override("Microsoft.Extensions.Diagnostics.HealthChecks", LogEventLevel.Fatal)
        // Why a server does not start is one sentence on the console where a person can mend it, without the trace of the code.
        .Filter.ByExcluding(line => line.Exception is { } fault && StartFailure.Explain(fault) is not null
            && line.Properties.GetValueOrDefault(Constants.SourceContextPropertyName) is ScalarValue { Value: "Microsoft.Extensions.Hosting.Internal.Host" })
        .ReadFrom.Configuration(configuration)
        .Enrich.FromLogContext()
        .Enrich.With<MessageNumber>()
        .WriteTo.Console(outputTemplate: Console, formatProvider: System.Globalization.CultureInfo.InvariantCulture)
        .WriteTo.File(
            new CompactJsonFormatter(), Path.Combine(dataFolder, "logs", "plantwatch-.jsonl"),
            rollingInterval: RollingInterval.Day, rollOnFileSizeLimit: true, fileSizeLimitBytes: FileBytes, retainedFileCountLimit: Days);

    // The number of the catalogue as a plain property; lines of other people's code often have none.
    private sealed class MessageNumber : ILogEventEnricher
    {
        public void Enrich(LogEvent logEvent, ILogEventPropertyFactory propertyFactory)
        {
            if (logEvent.Properties.GetValueOrDefault("EventId") is not StructureValue { Properties: var parts }) return;
            if (parts.FirstOrDefault(p => p.Name == "Id") is { Value: ScalarValue { Value: int number } }) logEvent.AddOrUpdateProperty(propertyFactory.CreateProperty("MessageId", number));
        }
    }
}
