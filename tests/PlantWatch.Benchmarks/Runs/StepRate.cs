using PlantWatch.Benchmarks.Kit;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>The pure fold alone, on one core.</summary>
internal sealed class StepRate : IBenchmark
{
    public string Name => "step";

    public string Title => "Step, the fold alone";

    public string Method =>
        "`Step.Run` over ready-made events with packet identities: no inbox, no journal, no disk. Rates are per second of processor time, garbage collection included, so that neighbours do not count, and after the code has run warm. Baseline: the payloads decoded and thrown away. "
        + "Probes speak at 1 Hz and are healthy; a tick a second is among the events. Batch: messages a call. SenML: packs of ten records with device time, counted in readings.";

    public Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        // What the compiler does to code that has just begun to run is no property of the fold: a round of everything before anything counts.
        foreach (var format in Enum.GetValues<PayloadFormat>())
            for (var i = 0; i < 3; i++) Measure(bench, 30, 100, format, fractions: i == 1);
        var rows = new List<Row>();
        foreach (var batch in new[] { 1, 10, 100, 1000 }) rows.Add(Measure(bench, 30, batch, PayloadFormat.Number, toReach: batch >= 10 ? ">= 1,000,000" : ""));
        foreach (var probes in new[] { 10, 100, 1000, 10_000 }) rows.Add(Measure(bench, probes, 1000, PayloadFormat.Number));
        foreach (var batch in new[] { 1, 100 })
        {
            rows.Add(Measure(bench, 30, batch, PayloadFormat.SenmlJson));
            rows.Add(Measure(bench, 30, batch, PayloadFormat.SenmlCbor));
            rows.Add(Measure(bench, 30, batch, PayloadFormat.SenmlCbor, fractions: true));
        }

        return Task.FromResult<IReadOnlyList<Row>>(rows);
    }

    private static Row Measure(Bench bench, int probes, int batch, PayloadFormat format, bool fractions = false, string toReach = "")
    {
        var feed = new Feed(probes, format, fractions);
        var state = Step.Run(CircuitState.Of(new CircuitPlan { Id = Plants.Circuit, Name = "Hall", TimeZone = "Europe/London" }), [new PlanLoaded(Feed.Start, Plants.Plan(probes, format))]).Next;
        var messages = Math.Max(bench.Of(100_000, 20_000) / (format != PayloadFormat.Number ? 10 : 1), probes * (format != PayloadFormat.Number ? 1 : 3));
        List<List<PlantEvent>> batches = [];
        var pairs = Rounds.InTurn(
            bench.Rounds,
            () =>
            {
                batches = [.. Enumerable.Range(0, messages / batch).Select(_ => feed.Next(batch))];
                var stored = state.Ledger.Stored;
                var rate = Rounds.CpuRate(1, () =>
                {
                    foreach (var events in batches) state = Step.Run(state, events).Next;
                });
                if (state.Ledger.Stored - stored < messages / batch * batch) throw new InvalidOperationException("the fold did not take every reading");
                return rate * (state.Ledger.Stored - stored);
            },
            () => Decode(batches, format));
        return pairs.Row($"{probes:#,0} probes, batch {batch}, {Called(format, fractions)}: readings/s", toReach);
    }

    private static string Called(PayloadFormat format, bool fractions) => format switch
    {
        PayloadFormat.SenmlJson => "SenML",
        PayloadFormat.SenmlCbor => fractions ? "SenML CBOR of decimal fractions" : "SenML CBOR of doubles",
        _ => "plain numbers",
    };

    private static double Decode(List<List<PlantEvent>> batches, PayloadFormat format)
    {
        var items = new List<DecodedItem>();
        var count = 0L;
        return Rounds.CpuRate(1, () =>
        {
            foreach (var events in batches)
                foreach (var happening in events)
                {
                    if (happening is not MessageArrived message) continue;
                    items.Clear();
                    if (format == PayloadFormat.SenmlJson) SenmlJson.Decode(message.Payload.Span, message.At, items);
                    else if (format == PayloadFormat.SenmlCbor) SenmlCbor.Decode(message.Payload.Span, message.At, items);
                    else items.Add(PlainNumber.Decode(message.Payload.Span));
                    count += items.Count;
                }
        }) * count;
    }
}
