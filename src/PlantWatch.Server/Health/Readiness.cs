using System.Collections.Concurrent;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace PlantWatch.Server.Health;

/// <summary>Parts that must stand before the server is ready.</summary>
internal enum Part
{
    /// <summary>The record can be written.</summary>
    Record = 0,
    /// <summary>A plant file is in force.</summary>
    PlantFile,
    /// <summary>The embedded broker listens, or the external one is connected.</summary>
    Broker,
    /// <summary>The series reach InfluxDB, or nobody asked for that. It never keeps the server from being ready.</summary>
    Series,
}

/// <summary>What the parts of the server last said of themselves. Silence is not readiness: every part starts as "starting".</summary>
internal sealed class Readiness : IHealthCheck
{
    private readonly ConcurrentDictionary<Part, (HealthStatus Status, string Why)> _said = new(Enum.GetValues<Part>().ToDictionary(p => p, _ => (HealthStatus.Unhealthy, "starting")));

    /// <summary>The part works.</summary>
    public void Works(Part part, string how = "") => _said[part] = (HealthStatus.Healthy, how);

    /// <summary>The part works, but something about it wants attention, such as a newer plant file that was not taken.</summary>
    public void Limps(Part part, string why) => _said[part] = (HealthStatus.Degraded, why);

    /// <summary>The part does not work.</summary>
    public void Fails(Part part, string why) => _said[part] = (HealthStatus.Unhealthy, why);

    /// <summary>Every part with its state, in a fixed order.</summary>
    public IReadOnlyList<(Part Part, HealthStatus Status, string Why)> All => [.. _said.OrderBy(s => s.Key).Select(s => (s.Key, s.Value.Status, s.Value.Why))];

    /// <inheritdoc/>
    public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        Task.FromResult(new HealthCheckResult(All.Min(p => p.Status)));
}
