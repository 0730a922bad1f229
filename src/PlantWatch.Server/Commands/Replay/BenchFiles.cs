using System.Globalization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>The tables of a recorded plant: plain comma-separated values without quotes, times in ISO 8601 UTC, a pool after the other.</summary>
internal static class BenchFiles
{
    /// <summary>One probe of a recorded plant.</summary>
    public sealed record Probe(string Pool, string Id, string Kind);

    /// <summary>A change of the sample-cell flow.</summary>
    public sealed record Flow(Instant At, string Pool, bool Runs);

    /// <summary>A service: the probe was cleaned and calibrated.</summary>
    public sealed record Service(Instant At, string Probe);

    /// <summary>One tested quantity.</summary>
    public sealed record Test(Instant SampledAt, Instant EnteredAt, string Pool, string Quantity, double Value, string Method);

    public static IEnumerable<Probe> Probes(string folder) => Rows(folder, "plant.csv").Select(f => new Probe(f[0], f[1], f[2]));

    public static IEnumerable<Flow> Flows(string folder) => Rows(folder, "flow.csv").Select(f => new Flow(Time(f[0]), f[1], f[2] == "1"));

    public static IEnumerable<Service> Services(string folder) => Rows(folder, "services.csv").Select(f => new Service(Time(f[0]), f[1]));

    public static IEnumerable<Test> Tests(string folder) =>
        Rows(folder, "checks.csv").Select(f => new Test(Time(f[0]), Time(f[1]), f[2], f[3], double.Parse(f[4], CultureInfo.InvariantCulture), f[6]));

    /// <summary>A time such as 2025-03-01T07:20:00Z.</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public static Instant Time(string text) => Instant.TryParse(text, out var at) ? at : throw new FormatException($"\"{text}\" is no time");

    private static IEnumerable<string[]> Rows(string folder, string file) => File.ReadLines(Path.Combine(folder, file)).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','));
}
