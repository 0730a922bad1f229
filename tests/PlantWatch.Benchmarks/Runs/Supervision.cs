using System.Globalization;
using System.Text;
using PlantWatch.Benchmarks.Kit;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>What the supervision of dosing pumps costs the fold and the snapshot.</summary>
internal sealed class Supervision : IBenchmark
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2);

    public string Name => "supervision";

    public string Title => "Supervision of dosing pumps, in the fold";

    public string Method =>
        "`Step.Run` over a pool with pH, ORP and circulation every ten seconds, two pumps that tell their strokes every minute and a tick a second, as the shell cuts it live: a batch a second. Ours: both pumps supervised. Baseline: the same plant without what a stroke delivers. "
        + "Rates are minutes of the plant a second of processor time, garbage collection included. Snapshot: bytes of the canonical state after a day.";

    public Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        var minutes = bench.Of(2880, 240);
        CircuitState ours = Empty(true), bare = Empty(false);
        var at = 0;
        var pairs = Rounds.InTurn(bench.Rounds, () => Rounds.CpuRate(minutes, () => ours = Live(ours, at, minutes)), () =>
        {
            var rate = Rounds.CpuRate(minutes, () => bare = Live(bare, at, minutes));
            at += minutes;
            return rate;
        });
        int with = PlantJson.Write(ours).Length, without = PlantJson.Write(bare).Length;
        return Task.FromResult<IReadOnlyList<Row>>(
        [
            pairs.Row("A supervised water, live: minutes/s", ">= 0.3 of the baseline"),
            new Row("Snapshot of the circuit, bytes", Say.Number(with), Say.Number(without), Say.Ratio((double)with / without)),
        ]);
    }

    private static CircuitState Empty(bool supervised) =>
        Step.Run(CircuitState.Of(new() { Id = "hall", Name = "Hall", TimeZone = "UTC" }), [new PlanLoaded(Start, Plan(supervised))]).Next;

    private static CircuitState Live(CircuitState state, int from, int minutes)
    {
        for (var second = from * 60; second < (from + minutes) * 60; second++) state = Step.Run(state, Second(second)).Next;
        return state;
    }

    private static List<PlantEvent> Second(int second)
    {
        var at = Start + TimeSpan.FromSeconds(second);
        List<PlantEvent> batch = [];
        if (second % 10 == 0)
        {
            batch.Add(Told(at, "ph", 7.3 + (0.02 * Math.Sin(second / 4000.0))));
            batch.Add(Told(at, "orp", 720 + (5 * Math.Sin(second / 3000.0))));
            batch.Add(Told(at, "flow", 33));
        }

        if (second % 60 == 0)
        {
            batch.Add(Told(at, "acid/strokes", Math.Round(6 + (3 * Math.Sin(second / 5000.0)))));
            batch.Add(Told(at, "hypo/strokes", Math.Round(8 + (4 * Math.Sin(second / 7000.0)))));
        }

        batch.Add(new ClockTicked(at + TimeSpan.FromMilliseconds(500)));
        return batch;
    }

    private static MessageArrived Told(Instant at, string topic, double value) => new(at, topic, Encoding.UTF8.GetBytes(value.ToString("0.###", CultureInfo.InvariantCulture)), false, null);

    private static CircuitPlan Plan(bool supervised) => new()
    {
        Id = "hall", Name = "Hall", TimeZone = "UTC", TurnoverHours = 3,
        Pools = [new() { Id = "pool", Name = "Pool", Kind = PoolKind.Swimming, Setting = Setting.Indoor, Disinfectant = Disinfectant.Chlorine, VolumeCubicMetres = 100 }],
        Probes = [Probe("ph", Measurand.Ph, 14), Probe("orp", Measurand.Orp, 1200) with { ReferenceElectrode = "Ag/AgCl 3 M" }, Probe("flow", Measurand.CirculationFlow, 300)],
        Pumps = [Pump("acid", ProductKind.HydrochloricAcid, supervised), Pump("hypo", ProductKind.SodiumHypochlorite, supervised)],
    };

    private static ProbePlan Probe(string id, Measurand measurand, double most) =>
        new() { Id = id, Name = id, PoolId = "pool", Measurand = measurand, Origin = SignalOrigin.PanelScaled, Topic = id, Range = new(0, most), Every = TimeSpan.FromSeconds(10) };

    private static PumpPlan Pump(string id, ProductKind kind, bool supervised) => new()
    {
        Id = id, Name = id, PoolId = "pool", ProductId = id, Doses = kind, Product = new(id, id, kind, 10), StateTopic = id + "/state", StrokesTopic = id + "/strokes", StrokesAre = StrokeCount.LastMinute,
        MillilitresPerStroke = supervised ? 0.4 : null,
    };
}
