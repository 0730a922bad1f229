using System.Collections.Immutable;

namespace PlantWatch.Core.Stock;

/// <summary>What is usually used on a day, and how the days scatter about it.</summary>
/// <param name="Mean">Mean of the days; of the week where weekdays are told apart.</param>
/// <param name="OfWeekday">Mean of each weekday, Sunday first; the same figure seven times where they are not told apart.</param>
/// <param name="Counts">On how many days each of those rests.</param>
/// <param name="Variance">Variance of a day about its mean.</param>
/// <param name="Alike">By how much the variance of a sum of days is larger than that of as many days that know nothing of each other: (1 + r) / (1 - r).</param>
/// <param name="Freedom">Degrees of freedom of the scatter.</param>
/// <param name="ByWeekday">Weekdays are told apart.</param>
public sealed record UseHabit(double Mean, ImmutableArray<double> OfWeekday, ImmutableArray<int> Counts, double Variance, double Alike, double Freedom, bool ByWeekday)
{
    // Out of a few weeks a correlation is badly known: no more than three times the variance is made of it, and a negative one narrows nothing (our choice, to the careful side).
    private const double MostAlike = 0.5;

    /// <summary>What days tell. Weekdays are told apart where each was seen often enough and it takes away enough of the scatter.</summary>
    /// <param name="days">Whole days, oldest first.</param>
    /// <param name="leastOfAWeekday">How often each weekday has to be there.</param>
    /// <param name="worth">The part of the variance that may be left for it to be worth it.</param>
    public static UseHabit Of(DayUse[] days, int leastOfAWeekday, double worth)
    {
        ArgumentNullException.ThrowIfNull(days);
        var plain = From(days, d => true, false);
        if (Enum.GetValues<DayOfWeek>().Any(w => days.Count(d => d.Day.DayOfWeek == w) < leastOfAWeekday)) return plain;
        var weekly = From(days, null, true);
        return weekly.Variance < worth * plain.Variance ? weekly : plain;
    }

    private static UseHabit From(DayUse[] days, Func<DayUse, bool>? all, bool byWeekday)
    {
        var groups = Enum.GetValues<DayOfWeek>().Select(w => days.Where(all ?? (d => d.Day.DayOfWeek == w)).ToArray()).ToArray();
        ImmutableArray<double> means = [.. groups.Select(g => g.Average(d => d.Amount))];
        double[] left = [.. days.Select(d => d.Amount - means[(int)d.Day.DayOfWeek])];
        var freedom = days.Length - (byWeekday ? 7 : 1);
        var squares = left.Sum(x => x * x);
        return new(means.Average(), means, [.. groups.Select(g => g.Length)], squares / freedom, AlikeOf(days, left, squares), freedom, byWeekday);
    }

    private static double AlikeOf(DayUse[] days, double[] left, double squares)
    {
        if (squares <= 0) return 1;
        var products = 0.0;
        for (var i = 1; i < left.Length; i++)
            if (days[i].Day == days[i - 1].Day.AddDays(1)) products += left[i] * left[i - 1];
        var r = Math.Clamp(products / squares, 0, MostAlike);
        return (1 + r) / (1 - r);
    }
}

/// <summary>Days ahead, added up: what they will use, and how far that may be out.</summary>
internal readonly struct UseWalk(UseHabit habit)
{
    private readonly int[] _days = new int[7];

    private UseWalk(UseHabit habit, int[] days, double sum, int count) : this(habit) => (_days, Sum, Count) = (days, sum, count);

    /// <summary>Mean of the sum.</summary>
    public double Sum { get; }

    private int Count { get; }

    /// <summary>Scatter of the days, and that their means are known from few days only. A mean that all weekdays share is out by the same for each of them.</summary>
    public double Variance => habit.Variance * habit.Alike * (Count + OfMeans());

    public UseWalk With(DayOfWeek weekday)
    {
        int[] days = [.. _days];
        days[(int)weekday]++;
        return new(habit, days, Sum + habit.OfWeekday[(int)weekday], Count + 1);
    }

    private double OfMeans()
    {
        if (!habit.ByWeekday) return (double)Count * Count / habit.Counts[0];
        var sum = 0.0;
        for (var i = 0; i < 7; i++) sum += (double)_days[i] * _days[i] / habit.Counts[i];
        return sum;
    }
}
