using PlantWatch.Benchmarks.Kit;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>The chemistry of one water: the whole balance, and one answer to a dose.</summary>
internal sealed class WaterBalance : IBenchmark
{
    private const string Target = "balance <= 50 us";

    public string Name => "water";

    public string Title => "Water: the whole balance and one dose";

    public string Method =>
        "Microseconds of processor time each, garbage collection included, over waters that differ in pH, so that nothing is found twice. The whole balance: four indices with uncertainty, saturation pH, precipitation potential, the indices of "
        + "other waters. Baseline: the closed form of four logarithms alone, what a hand calculation does; the ratio is how many times as long ours takes.";

    public Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        var plain = new BalanceInputs { Ph = new(7.5, 0.1), Temperature = new(27, 0.3), Alkalinity = new(100, 10), Calcium = new(250, 20), Solids = new(1000, 50) };
        var stabilised = plain with { Cyanurate = new(50, 10), FreeChlorine = new(3, 0.15) };
        var count = bench.Of(50_000, 5_000);
        return Task.FromResult<IReadOnlyList<Row>>(
        [
            Measure(bench, "whole balance: us", count, i => Balance.Of(plain with { Ph = Moved(i) }).Speciated.Value, Target),
            Measure(bench, "whole balance with cyanurate and chlorine: us", count, i => Balance.Of(stabilised with { Ph = Moved(i) }).Speciated.Value, Target),
            Dose(bench, "pH after one dose of acid: us", count, plain.Water!),
            Dose(bench, "the same with cyanurate and chlorine: us", count, stabilised.Water!),
        ]);
    }

    private static Row Dose(Bench bench, string what, int count, Water water)
    {
        var before = Equilibrium.Speciate(water).Value;
        return Measure(bench, what, count, i => Equilibrium.After(before, before.Composition + new Composition(Chloride: 1e-5 * (1 + (i % 40)))).Value.Ph, "");
    }

    private static Row Measure(Bench bench, string what, int count, Func<int, double> ours, string target)
    {
        var water = Of(0);
        return Rounds.InTurn(bench.Rounds, () => Microseconds(count, ours), () => Microseconds(count, i => ClosedFormIndex.Of(water with { Ph = Ph.From(Moved(i).Value) }).Value)).Row(what, target);
    }

    private static double Microseconds(int count, Func<int, double> work)
    {
        var sum = 0.0;
        var rate = Rounds.CpuRate(count, () =>
        {
            for (var i = 0; i < count; i++) sum += work(i);
        });
        return double.IsFinite(sum) ? 1e6 / rate : throw new InvalidOperationException("a water could not be worked out");
    }

    private static Estimate Moved(int i) => new(6.8 + (i % 140 / 100.0), 0.1);

    private static Water Of(int i) => new(Ph.From(Moved(i).Value), Celsius.From(27), Alkalinity.From(100), CalciumHardness.From(250), DissolvedSolids.From(1000));
}
