using System.Collections.Immutable;

namespace PlantWatch.Core.Stock;

/// <summary>Days of several places where one product is used, added up.</summary>
public static class UseDays
{
    /// <summary>A day counts where every tank is known for the whole of it. What nobody gave by hand on a day was nothing.</summary>
    /// <param name="tanks">Days of each tank; one that knows none yet holds nothing up.</param>
    /// <param name="hands">Days on which people gave doses.</param>
    /// <param name="today">Today on the site's calendar.</param>
    public static ImmutableArray<DayUse> Together(ImmutableArray<ImmutableArray<DayUse>> tanks, ImmutableArray<ImmutableArray<DayUse>> hands, DateOnly today)
    {
        ImmutableArray<ImmutableArray<DayUse>> measured = [.. tanks.Where(t => !t.IsEmpty)];
        DayUse[] given = [.. hands.SelectMany(h => h)];
        var first = measured.SelectMany(t => t).Concat(given).Select(d => d.Day).DefaultIfEmpty(today).Min();
        if (first < today.AddDays(-DayUses.Remembered)) first = today.AddDays(-DayUses.Remembered);
        var days = ImmutableArray.CreateBuilder<DayUse>();
        for (var day = first; day < today; day = day.AddDays(1)) days.Add(One(day, measured, given));
        return days.ToImmutable();
    }

    private static DayUse One(DateOnly day, ImmutableArray<ImmutableArray<DayUse>> measured, DayUse[] given)
    {
        DayUse?[] found = [.. measured.Select(t => t.Where(d => d.Day == day).Cast<DayUse?>().FirstOrDefault())];
        var amount = found.Sum(d => d?.Amount ?? 0) + given.Where(d => d.Day == day).Sum(d => d.Amount);
        return new(day, amount, found.Length == 0 ? 24 : found.Min(d => d?.Hours ?? 0));
    }
}
