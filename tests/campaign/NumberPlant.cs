using System.Text;

namespace PlantWatch.Campaign;

/// <summary>A plant of many probes in two circuits that carry numbers, not chemistry: the n-th message of each probe says n/2, so that every value comes twice in a row.</summary>
internal sealed record NumberPlant(int Devices)
{
    public static IReadOnlyList<string> Circuits { get; } = ["even", "odd"];

    /// <summary>The largest value a probe may say; twice as many numbers fit.</summary>
    public const int MostValue = 200_000;

    public static string Circuit(int device) => Circuits[device % 2];

    public static string Probe(int device) => $"p{device}";

    public static string Topic(int device) => $"numbers/{Circuit(device)}/{Probe(device)}";

    /// <summary>What the n-th message of a probe says.</summary>
    public static int Value(int n) => n / 2;

    public string Yaml()
    {
        var yaml = new StringBuilder("site:\n  name: Numbers\n  time_zone: UTC\ncircuits:\n");
        foreach (var circuit in Circuits)
        {
            yaml.Append($"  - id: {circuit}\n    name: {circuit}\n    pools:\n");
            yaml.Append($"      - id: pool-{circuit}\n        name: {circuit}\n        kind: swimming\n        setting: indoor\n        disinfectant: chlorine\n        volume_m3: 100\n    probes:\n");
            foreach (var device in Enumerable.Range(0, Devices).Where(d => Circuit(d) == circuit))
                yaml.Append($"      - id: {Probe(device)}\n        name: {Probe(device)}\n        pool: pool-{circuit}\n        measurand: conductivity\n        origin: raw\n        topic: {Topic(device)}\n        format: number\n        range: [0, {MostValue}]\n");
        }
        return yaml.ToString();
    }
}
