using System.Collections.Immutable;

namespace PlantWatch.Core.Stock;

/// <summary>What a water used of a product in a time, what it cost, and what that comes to for a bather and for a cubic metre.</summary>
/// <param name="Amount">How much, in the product's unit.</param>
/// <param name="Cost">What it cost; what had no price is not in it.</param>
/// <param name="Unpriced">How much had no price.</param>
/// <param name="Days">How many days it covers: from the first use in the time on.</param>
/// <param name="OnCountedDays">How much of it was used on days on which the bathers of every pool were counted.</param>
/// <param name="CostOnCountedDays">What that cost.</param>
/// <param name="Bathers">The bathers of those days.</param>
/// <param name="CubicMetreDays">Volume of the water times those days.</param>
public readonly record struct UseSums(double Amount, double Cost, double Unpriced, int Days, double OnCountedDays, double CostOnCountedDays, int Bathers, double CubicMetreDays)
{
    /// <summary>How much a bather; null while none was counted.</summary>
    public double? PerBather => Bathers > 0 ? OnCountedDays / Bathers : null;

    /// <summary>Cost a bather; null while none was counted.</summary>
    public double? CostPerBather => Bathers > 0 ? CostOnCountedDays / Bathers : null;

    /// <summary>How much a cubic metre of water and day; null where the volume is not known.</summary>
    public double? PerCubicMetreDay => CubicMetreDays > 0 ? Amount / CubicMetreDays : null;

    /// <summary>Cost of a cubic metre of water and day; null where the volume is not known.</summary>
    public double? CostPerCubicMetreDay => CubicMetreDays > 0 ? Cost / CubicMetreDays : null;

    /// <summary>The sums of two waters.</summary>
    public static UseSums operator +(UseSums a, UseSums b) => new(
        a.Amount + b.Amount, a.Cost + b.Cost, a.Unpriced + b.Unpriced, Math.Max(a.Days, b.Days), a.OnCountedDays + b.OnCountedDays, a.CostOnCountedDays + b.CostOnCountedDays,
        a.Bathers + b.Bathers, a.CubicMetreDays + b.CubicMetreDays);

    /// <summary>Adds up one product in one water.</summary>
    /// <param name="rows">What was used of the product there.</param>
    /// <param name="bathers">Bathers of the water on days on which each of its pools was counted.</param>
    /// <param name="cubicMetres">Volume of its pools.</param>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day, counted too.</param>
    public static UseSums Of(IEnumerable<UseRow> rows, ImmutableDictionary<DateOnly, int> bathers, double cubicMetres, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(bathers);
        UseRow[] within = [.. rows.Where(r => r.Day >= from && r.Day <= to)];
        if (within.Length == 0) return default;
        UseRow[] counted = [.. within.Where(r => bathers.ContainsKey(r.Day))];
        var first = within.Min(r => r.Day);
        var days = to.DayNumber - first.DayNumber + 1;
        return new(
            within.Sum(r => r.Amount), within.Sum(r => r.Cost ?? 0), within.Where(r => r.Cost is null).Sum(r => r.Amount), days, counted.Sum(r => r.Amount), counted.Sum(r => r.Cost ?? 0),
            bathers.Where(b => b.Key >= first && b.Key <= to).Sum(b => b.Value), cubicMetres * days);
    }

    /// <summary>The bathers of a water by day, of days on which each of its pools was counted. Of several counts of a pool and day the newest holds.</summary>
    public static ImmutableDictionary<DateOnly, int> BathersOf(IEnumerable<BatherCount> counts, IReadOnlyCollection<string> pools)
    {
        ArgumentNullException.ThrowIfNull(pools);
        var newest = counts.Where(c => pools.Contains(c.PoolId)).GroupBy(c => (c.Day, c.PoolId)).Select(g => g.MaxBy(c => (c.SaidAt, c.Id))!);
        return newest.GroupBy(c => c.Day).Where(g => g.Count() == pools.Count).ToImmutableDictionary(g => g.Key, g => g.Sum(c => c.Number));
    }
}
