using System.Collections.Immutable;

namespace PlantWatch.Core.Stock;

/// <summary>How it is known what was used.</summary>
public enum UseSource
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>By the fall of the level in the tank.</summary>
    Level,
    /// <summary>By how long the pump ran and what it delivers an hour.</summary>
    Running,
    /// <summary>By the doses that people gave and wrote down.</summary>
    Hand,
}

/// <summary>What was used on one day of the site.</summary>
/// <param name="Day">The day.</param>
/// <param name="Amount">How much, in the product's unit. A level that ripples may come out a little under nothing on a day without use: sums over days are right for it.</param>
/// <param name="Hours">For how many hours of the day it is known.</param>
public readonly record struct DayUse(DateOnly Day, double Amount, double Hours)
{
    /// <summary>Known for so much of the day that it stands for a day (20 of 24 hours: our choice, because what is missing then is no more than days differ by anyway).</summary>
    public bool IsWhole => Hours >= 20;
}

/// <summary>The days that are remembered, oldest first.</summary>
public static class DayUses
{
    /// <summary>How many: eight weeks show a pattern of weekdays and are forgotten before the season changes.</summary>
    public const int Remembered = 56;

    /// <summary>With one day more, or more on a day that is there.</summary>
    public static ImmutableArray<DayUse> With(this ImmutableArray<DayUse> days, DayUse use)
    {
        for (var i = 0; i < days.Length; i++)
            if (days[i].Day == use.Day) return days.SetItem(i, use with { Amount = days[i].Amount + use.Amount, Hours = Math.Max(days[i].Hours, use.Hours) });
        ImmutableArray<DayUse> all = [.. days.Where(d => d.Day < use.Day), use, .. days.Where(d => d.Day > use.Day)];
        return all.Length > Remembered ? all.RemoveAt(0) : all;
    }
}
