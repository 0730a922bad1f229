using System.Net;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Health;
using PlantWatch.Server.Metrics;

namespace PlantWatch.Server.Tests.Metrics;

/// <summary>What a machine may ask a running server: health, metrics, the description of the interface. Over real HTTP.</summary>
[Collection(Alone)]
public sealed class ObservabilityTests : IAsyncLifetime, IDisposable
{
    // The exporter listens to every meter of that name in the process: a server of another test would be counted here too.
    private const string Alone = "Alone in the process";

    [CollectionDefinition(Alone, DisableParallelization = true)]
    public sealed class AloneInTheProcess;

    private readonly WebApplication _app;
    private readonly HttpClient _http = new();

    public ObservabilityTests()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseKestrelCore().UseUrls("http://127.0.0.1:0");
        builder.Services.AddPlantWatchMetrics().AddPlantWatchHealth().AddPlantWatchOpenApi();
        _app = builder.Build();
        _app.MapMetrics().MapHealth().MapPlantWatchOpenApi();
        _app.MapGet("/api/v1/example", (Instant at) => new WithInstant(at, 7.2));
    }

    public sealed record WithInstant(Instant At, double Value);

    public async Task InitializeAsync()
    {
        await _app.StartAsync();
        _http.BaseAddress = new Uri(_app.Urls.First());
    }

    public async Task DisposeAsync() => await _app.DisposeAsync();

    public void Dispose() => _http.Dispose();

    [Fact]
    public async Task A_server_that_starts_is_alive_but_not_ready()
    {
        Assert.Equal(HttpStatusCode.OK, (await _http.GetAsync("/health/live")).StatusCode);
        var ready = await _http.GetAsync("/health/ready");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        Assert.Contains("\"part\":\"plant_file\",\"status\":\"unhealthy\",\"why\":\"starting\"", await ready.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task It_is_ready_when_every_part_stands_and_not_when_one_falls()
    {
        var readiness = _app.Services.GetRequiredService<Readiness>();
        foreach (var part in Enum.GetValues<Part>()) readiness.Works(part);
        Assert.Equal(HttpStatusCode.OK, (await _http.GetAsync("/health/ready")).StatusCode);

        readiness.Limps(Part.PlantFile, "line 3: a newer file was not taken");
        var limping = await _http.GetAsync("/health/ready");
        Assert.Equal(HttpStatusCode.OK, limping.StatusCode);
        Assert.Contains("a newer file was not taken", await limping.Content.ReadAsStringAsync());

        readiness.Fails(Part.Record, "disk full");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await _http.GetAsync("/health/ready")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await _http.GetAsync("/health/live")).StatusCode);
    }

    [Fact]
    public async Task The_metrics_close_as_the_ledger_does()
    {
        var meter = _app.Services.GetRequiredService<PlantWatchMeter>();
        meter.Watch(new(
            () => [("circuit-7", new LedgerView(Received: 100, Stored: 90, Duplicates: 6, Refused: 3, InFlight: 1, 90, 0, 0, Messages: 80))], () => [("circuit-7", 4)], () => 4096));
        meter.Committed(TimeSpan.FromMilliseconds(7), 30);
        meter.HubConnected();
        meter.HubConnected();
        meter.HubDisconnected();

        var text = await _http.GetStringAsync("/metrics");
        Assert.Equal(100, Value(text, "plantwatch_readings_received_total", "circuit=\"circuit-7\""));
        Assert.Equal(100, Value(text, "plantwatch_readings_stored_total", "circuit-7") + Value(text, "plantwatch_readings_duplicates_total", "circuit-7")
            + Value(text, "plantwatch_readings_refused_total", "circuit-7") + Value(text, "plantwatch_readings_in_flight", "circuit-7"));
        Assert.Equal(80, Value(text, "plantwatch_messages_received_total", "circuit-7"));
        Assert.Equal(4, Value(text, "plantwatch_inbox_depth", "circuit-7"));
        Assert.Equal(4096, Value(text, "plantwatch_wal_size_bytes", ""));
        Assert.Equal(1, Value(text, "plantwatch_hub_connections", ""));
        Assert.Equal(0, Value(text, "plantwatch_commit_duration_seconds_bucket", "le=\"0.005\""));
        Assert.Equal(1, Value(text, "plantwatch_commit_duration_seconds_bucket", "le=\"0.01\""));
    }

    [Fact]
    public async Task The_description_of_the_interface_lists_its_paths_and_knows_what_a_time_is()
    {
        using var document = JsonDocument.Parse(await _http.GetStringAsync("/openapi/v1.json"));
        Assert.StartsWith("3.", document.RootElement.GetProperty("openapi").GetString(), StringComparison.Ordinal);
        Assert.True(document.RootElement.GetProperty("paths").TryGetProperty("/api/v1/example", out _));
        var at = document.RootElement.GetProperty("components").GetProperty("schemas").GetProperty("Instant");
        Assert.Equal("string", at.GetProperty("type").GetString());
        Assert.Equal("date-time", at.GetProperty("format").GetString());
    }

    // The first sample of a metric whose labels hold a text. The exporter writes: name{labels} value [timestamp].
    private static double Value(string text, string name, string label)
    {
        var line = text.Split('\n').FirstOrDefault(l => (l.StartsWith(name + "{", StringComparison.Ordinal) || l.StartsWith(name + " ", StringComparison.Ordinal)) && l.Contains(label, StringComparison.Ordinal));
        Assert.True(line is not null, $"no {name} with {label} in:\n{text}");
        return double.Parse(line[(line.LastIndexOf('}') + 1)..].Trim().Split(' ')[0]);
    }
}
