using System.Collections.Immutable;
using PlantWatch.Benchmarks.Kit;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>A whole dosing plan, search and steps, beside one equilibrium.</summary>
internal sealed class DosingPlans : IBenchmark
{
    private static readonly DateOnly Today = new(2026, 3, 1);

    private static readonly ImmutableArray<ProductAtHand> Store =
    [
        .. new (ProductKind Kind, double Price)[]
            { (ProductKind.SodiumBicarbonate, 0.9), (ProductKind.SodiumCarbonate, 0.8), (ProductKind.HydrochloricAcid, 0.6), (ProductKind.SodiumBisulfate, 1.6), (ProductKind.CarbonDioxide, 1.1),
             (ProductKind.CalciumChlorideDihydrate, 0.7), (ProductKind.SodiumHypochlorite, 0.7), (ProductKind.CalciumHypochlorite, 4.5) }
            .Select(p => ProductAtHand.Of(new(p.Kind.ToString(), p.Kind.ToString(), p.Kind, null) { PricePerKilogram = p.Price }, Today)),
    ];

    private static readonly ImmutableArray<Band> Bands = UsualBands.Of(new() { Id = "p", Name = "P", Kind = PoolKind.Swimming, Disinfectant = Disinfectant.Chlorine });

    public string Name => "plan";

    public string Title => "Water: a whole dosing plan";

    public string Method => "Microseconds of processor time for a plan with eight products at hand, over waters that differ. Baseline: one equilibrium of the same water; the ratio is about how many of them a plan takes.";

    public Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        var count = bench.Of(300, 40);
        return Task.FromResult<IReadOnlyList<Row>>(
        [
            Rounds.InTurn(bench.Rounds, () => Microseconds(count, i => DosingPlanner.Of(Question(i)).SolverCalls), () => Microseconds(20 * count, i => Question(i).Water.Speciate()!.Value.Value.Ph))
                .Row("dosing plan: us", "plan <= 20,000 us"),
        ]);
    }

    private static PlanQuestion Question(int i) => new()
    {
        Water = new()
        {
            Ph = new(6.9 + (i % 14 / 10.0), 0.12), Celsius = 28, Alkalinity = new(50 + (i % 11 * 10), 14), Calcium = new(120 + (i % 7 * 30), 28), Solids = new(800, 100), FreeChlorine = new(i % 5 * 0.5, 0.1),
        },
        CubicMetres = 400, Bands = Bands, Products = Store, TurnoverHours = 4,
    };

    private static double Microseconds(int count, Func<int, double> work)
    {
        var sum = 0.0;
        var rate = Rounds.CpuRate(count, () =>
        {
            for (var i = 0; i < count; i++) sum += work(i);
        });
        return double.IsFinite(sum) ? 1e6 / rate : throw new InvalidOperationException("a plan could not be worked out");
    }
}
