namespace PlantWatch.Core.Chemistry;

/// <summary>One go of one means, with the water before and after it.</summary>
internal readonly record struct CutStep(Means Means, double Units, Speciation Before, Speciation After);

/// <summary>Cuts the amounts of a plan into goes and puts them in order, so that no water on the way passes a limit.</summary>
/// <remarks>
/// The order is that of common practice as long as it is safe: alkalinity, pH, calcium, stabiliser, disinfectant. Where the next in turn would pass a limit it waits, and what comes after it goes first.
/// What is poured into the pool itself must keep within them there as well, before it has mixed with the rest of the circuit.
/// Where that comes to a stand, all are given in rounds of equal parts, which keep to the straight way between start and end.
/// </remarks>
internal sealed class StepCutter(WaterModel model, StepLimits limits, double crowding)
{
    /// <summary>Beyond so many goes the water is tested and planned anew anyway.</summary>
    public const int MostSteps = 24;

    /// <summary>Units below which nothing is given.</summary>
    public const double Least = 1e-6;

    // A go smaller than a twelfth of the whole is given only where nothing else can be.
    private const int Coarse = 12, Fine = 64;

    private static readonly int[] Parts = [1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64];
    private static readonly int[] Rounds = [2, 3, 4, 6, 8, 12, 16, 24, 32];

    // A pH move below this is small enough for one go.
    private const double SmallPh = 0.1;

    /// <summary>The goes in order; null when no order keeps within the limits.</summary>
    public IReadOnlyList<CutStep>? Cut(Speciation start, Means[] means, double[] units)
    {
        (Means Means, double Units)[] needs = [.. means.Select((m, j) => (Means: m, Units: units[j])).Where(n => n.Units > Least).OrderBy(n => n.Means.Turn)];
        return InTurn(start, needs) ?? Rounds.Select(rounds => InRounds(start, needs, rounds)).FirstOrDefault(steps => steps is not null);
    }

    private List<CutStep>? InTurn(Speciation start, (Means Means, double Units)[] needs)
    {
        var (steps, left, water) = (new List<CutStep>(), needs.Select(n => n.Units).ToArray(), start);
        while (left.Any(l => l > 0))
        {
            if (steps.Count == MostSteps) return steps;
            if ((Next(water, needs, left, Coarse) ?? Next(water, needs, left, Fine)) is not { } next) return null;
            left[next.Index] = next.IsLast ? 0 : left[next.Index] - next.Step.Units;
            steps.Add(next.Step);
            water = next.Step.After;
        }

        return steps;
    }

    private (int Index, bool IsLast, CutStep Step)? Next(Speciation water, (Means Means, double Units)[] needs, double[] left, int finest)
    {
        for (var i = 0; i < needs.Length; i++)
        {
            if (left[i] <= 0) continue;
            foreach (var part in Parts)
            {
                var units = left[i] / part;
                if (part > 1 && units < needs[i].Units / finest) break;
                if (Allowed(water, needs[i].Means, units) is not { } after) continue;
                // Pools give off carbon dioxide: half first, then see.
                if (part == 1 && needs[i].Means.IsForPh && left[i] == needs[i].Units && Math.Abs(after.Ph - water.Ph) > SmallPh) continue;
                return (i, part == 1, new(needs[i].Means, units, water, after));
            }
        }

        return null;
    }

    // The water after a go; null where it would pass a limit, mixed or where it is poured.
    private Speciation? Allowed(Speciation water, Means means, double units)
    {
        if (model.At(water.Composition + (units * means.PerUnit)) is not { } after || !limits.Allow(water, after)) return null;
        if (crowding <= 1 || means.Product is not { GoesIntoThePool: true }) return after;
        return model.At(water.Composition + (crowding * units * means.PerUnit)) is { } poured && limits.Allow(water, poured) ? after : null;
    }

    private List<CutStep>? InRounds(Speciation start, (Means Means, double Units)[] needs, int rounds)
    {
        var (steps, water) = (new List<CutStep>(), start);
        for (var round = 0; round < rounds; round++)
            foreach (var (means, units) in needs)
            {
                if (Allowed(water, means, units / rounds) is not { } after) return null;
                steps.Add(new(means, units / rounds, water, after));
                if (steps.Count == MostSteps) return steps;
                water = after;
            }

        return steps;
    }
}
