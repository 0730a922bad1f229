using System.Collections.Immutable;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Statistics;

namespace PlantWatch.Core.Stock;

/// <summary>For how long a stock lasts, as an interval: four times in five it runs out between its ends.</summary>
/// <param name="Earliest">Days until it may be used up: once in ten it is sooner.</param>
/// <param name="Middle">Days until it is used up by the usual use.</param>
/// <param name="Latest">Days until it will be used up: once in ten it is later. Null beyond a year.</param>
/// <param name="PerDay">Usual use a day, in the product's unit.</param>
/// <param name="ByWeekday">The weekdays differ, and were told apart.</param>
/// <param name="Days">On how many days it rests.</param>
public sealed record Outlook(double? Earliest, double? Middle, double? Latest, double PerDay, bool ByWeekday, int Days)
{
    /// <summary>Beyond so many days nobody can say (our choice: a year has every season once).</summary>
    public const int Farthest = 365;

    /// <summary>So many whole days are needed (our choice: with fewer Student's factor makes the interval useless).</summary>
    public const int LeastDays = 5;

    /// <summary>Share of the cases that the interval holds (our choice: once in ten sooner than it says, since an order can be hurried).</summary>
    public const double Confidence = 0.8;

    // A pattern of weekdays is told apart when each was seen three times and it takes away a fifth of the scatter (our choice, because six more means cost about as much on few weeks).
    private const int LeastOfAWeekday = 3;
    private const double Worth = 0.8;

    /// <summary>Looks ahead. Null, with the reason, when too little is known.</summary>
    /// <remarks>
    /// Use of days ahead is the mean (of its weekday) with the day-to-day scatter about it, and the mean itself is known only as well as so few days tell: after d days M(d) is used, with the
    /// variance d s2 + the square of what M(d) is uncertain by. The ends are where M(d) + t sqrt(V(d)) and M(d) - t sqrt(V(d)) reach the stock, t of Student's distribution. Days that follow on
    /// each other are alike (a warm week): by their correlation r from day to day the scatter of the sum is widened by (1 + r) / (1 - r).
    /// </remarks>
    /// <param name="stock">What there is, in the product's unit.</param>
    /// <param name="days">What was used on days before; only whole ones count.</param>
    /// <param name="today">Today on the site's calendar: it begins to count now.</param>
    public static (Outlook? Found, Reason? Why) Of(double stock, ImmutableArray<DayUse> days, DateOnly today)
    {
        DayUse[] whole = [.. days.Where(d => d.IsWhole && d.Day < today)];
        if (whole.Length < LeastDays) return (null, Reason.Of("stock.too_few_days", whole.Length, LeastDays));
        var habit = UseHabit.Of(whole, LeastOfAWeekday, Worth);
        if (!(habit.Mean > 0)) return (new(null, null, null, 0, habit.ByWeekday, whole.Length), Reason.Of("stock.not_used", whole.Length));
        var t = StudentT.TwoSided(Confidence, habit.Freedom);
        return (new(Reach(stock, habit, today, t), Reach(stock, habit, today, 0), Reach(stock, habit, today, -t), habit.Mean, habit.ByWeekday, whole.Length), null);
    }

    // Day by day; within the day a straight line.
    private static double? Reach(double stock, UseHabit habit, DateOnly today, double t)
    {
        if (stock <= 0) return 0;
        var (used, walk) = (0.0, new UseWalk(habit));
        for (var day = 0; day < Farthest; day++)
        {
            walk = walk.With(today.AddDays(day).DayOfWeek);
            var next = Math.Max(used, walk.Sum + (t * Math.Sqrt(walk.Variance)));
            if (next >= stock) return day + ((stock - used) / (next - used));
            used = next;
        }

        return null;
    }
}
