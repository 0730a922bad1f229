using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Charts;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>A probe beside its tests as a picture: agreement and regression, for the probe's page and for reports.</summary>
internal static class PairChartApi
{
    // More pairs than these no picture shows apart.
    private const int MostPairs = 500;

    private const int MostChecks = 5000;

    public static void MapPairCharts(this RouteGroupBuilder api) =>
        api.MapGet("/charts/probes/{id}/{file}", async (
            string id, string file, string? from, string? to, int? width, int? height, string? theme, PlantHost host, IRecordStore record, CancellationToken cancellation) =>
        {
            var (name, kind) = (Path.GetFileNameWithoutExtension(file), Path.GetExtension(file));
            if (name is not ("agreement" or "regression") || kind is not (".png" or ".svg"))
                return Answers.NotFound($"chart {file}; ask for agreement or regression, as .png or .svg");
            if (host.WithProbe(id) is not { } worker || worker.State.Plan.Probes.FirstOrDefault(p => p.Id == id) is not { } probe) return Answers.NotFound($"probe {id}");
            if (Times.Open(from, to, out var start, out var end) is { } no) return no;
            var input = new PairChartInput
            {
                Title = probe.Name,
                Measurand = probe.Measurand,
                TimeZone = worker.State.Plan.TimeZone,
                Pairs = await PairsAsync(worker, probe, start, end, record, cancellation),
                Width = width ?? 800,
                Height = height ?? 0,
                Theme = theme == "dark" ? ChartTheme.Dark : ChartTheme.Light,
            };
            var chart = name == "agreement" ? PairChart.Agreement(input) : PairChart.Regression(input);
            return kind == ".png" ? Results.Bytes(chart.Png(), "image/png") : Results.Text(chart.Svg(), "image/svg+xml");
        });

    /// <summary>The newest tests that the probe could be compared with, as they were judged; what was doubted then and confirmed since counts.</summary>
    internal static async Task<IReadOnlyList<ComparedPair>> PairsAsync(
        CircuitWorker worker, ProbePlan probe, Instant from, Instant to, IRecordStore record, CancellationToken cancellation)
    {
        var rows = await record.EntriesAsync(worker.Partition, new EntryQuery(["judgement"], probe.Id, from, to, MostPairs), cancellation);
        var withdrawn = await CorrectedAsync(worker, probe, record, cancellation);
        var index = worker.State.Plan.Probes.Select(p => p.Id).ToList().IndexOf(probe.Id);
        var doubted = (index < 0 ? [] : worker.State.Probes[index].Trust.Pairs).ToDictionary(p => p.CheckId, p => p.Doubted);
        var pairs = new List<ComparedPair>();
        foreach (var row in rows)
        {
            if (row.Body is not JudgementEntry { Judgement: { Probe.IsKnown: true, Test.IsKnown: true } judged }) continue;
            if (withdrawn.Contains(judged.CheckId)) continue;
            pairs.Add(new(row.HappenedAt, judged.Probe, judged.Test, doubted.TryGetValue(judged.CheckId, out var stands) ? stands : judged.Verdict == Verdict.CheckSuspect));
        }

        return pairs;
    }

    // A check that another corrects stays in the record and says nothing any more.
    private static async Task<HashSet<Guid>> CorrectedAsync(CircuitWorker worker, ProbePlan probe, IRecordStore record, CancellationToken cancellation)
    {
        var checks = await record.EntriesAsync(worker.Partition, new EntryQuery(["check"], probe.PoolId, Limit: MostChecks), cancellation);
        return [.. checks.Select(c => c.Body).OfType<CheckEntry>().Select(c => c.Check.Corrects).OfType<Guid>()];
    }
}
