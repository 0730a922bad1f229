using System.Globalization;
using System.Text;
using PlantWatch.Core.Plans;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>Plant files of any size: one pool, so many probes of the usual four kinds, with limits on two of them. Nothing in them is real.</summary>
internal static class Plants
{
    public const string Circuit = "hall";

    private const int ProbesOfAFile = 1000;

    private static readonly (string Measurand, string Range, double Value)[] Kinds =
        [("ph", "[0, 14]", 7.3), ("orp", "[0, 1000]", 740), ("temperature", "[0, 60]", 28), ("conductivity", "[0, 200000]", 1500)];

    public static string Topic(int probe) => $"hall/probe/{probe}";

    public static string Probe(int probe) => $"probe-{probe}";

    /// <summary>A number such as a healthy probe of that kind sends: it wanders a little and leaps nowhere.</summary>
    public static string Value(int probe, long turn) =>
        (Kinds[probe % Kinds.Length].Value * (1 + ((turn * 7 % 41) / 4100.0))).ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>All probes of one kind or mixed; plain numbers on a topic each, or packs of ten in SenML.</summary>
    public static string File(int probes, PayloadFormat format = PayloadFormat.Number, string? only = null)
    {
        var text = new StringBuilder(Head);
        for (var i = 0; i < probes; i++) text.Append(ProbeText(i, format, only));
        return text.ToString();
    }

    public static CircuitPlan Plan(int probes, PayloadFormat format = PayloadFormat.Number)
    {
        var read = PlantFileReader.Read(File(Math.Min(probes, ProbesOfAFile), format));
        var plan = read.Plan?.Circuits[0] ?? throw new InvalidOperationException($"the plant file of the benchmark is broken: {read.Errors[0]}");
        // A plant file is at most 1 MiB; a larger circuit than that repeats its probes under further names.
        return plan with { Probes = [.. Enumerable.Range(0, probes).Select(i => plan.Probes[i % plan.Probes.Length] with { Id = Probe(i), Topic = format != PayloadFormat.Number ? $"hall/pack/{i / 10}" : Topic(i), RecordName = format != PayloadFormat.Number ? $"urn:dev:ops:hall:{i}" : null })] };
    }

    private static string ProbeText(int i, PayloadFormat format, string? only)
    {
        var (measurand, range, _) = only is null ? Kinds[i % Kinds.Length] : Kinds.Single(k => k.Measurand == only);
        var where = format != PayloadFormat.Number ? $"topic: hall/pack/{i / 10}\n        format: {(format == PayloadFormat.SenmlCbor ? "senml_cbor" : "senml_json")}\n        record: \"urn:dev:ops:hall:{i}\"" : $"topic: {Topic(i)}\n        format: number";
        var electrode = measurand == "orp" ? "\n        reference_electrode: Ag/AgCl 3 M" : "";
        return $"""
                  - id: {Probe(i)}
                    name: Probe {i}
                    pool: main
                    measurand: {measurand}
                    origin: raw
                    {where}
                    range: {range}
                    every_seconds: 1{electrode}

            """;
    }

    private const string Head = """
        site:
          name: Plant of the benchmark
          time_zone: Europe/London
        products:
          - id: acid
            name: Hydrochloric acid
            kind: hydrochloric_acid
            strength_percent: 10
        circuits:
          - id: hall
            name: Hall
            pools:
              - id: main
                name: Main pool
                kind: swimming
                setting: indoor
                disinfectant: chlorine
                volume_m3: 400
                limits:
                  - measurand: ph
                    low: 7.0
                    high: 7.8
                    source: benchmark
                  - measurand: temperature
                    low: 26
                    high: 30
                    source: benchmark
            probes:

        """;
}
