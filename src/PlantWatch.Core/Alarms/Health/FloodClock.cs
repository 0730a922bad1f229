using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Alarms.Health;

/// <summary>A time in which more was told than one person can take in.</summary>
/// <param name="From">Start of the ten minutes that began it.</param>
/// <param name="To">End of the ten minutes before the first calm one.</param>
/// <param name="Count">What was told in it.</param>
public readonly record struct Flood(Instant From, Instant To, int Count);

/// <summary>Counts in windows of ten minutes that follow one another from the start of the time looked at.</summary>
/// <remarks>A flood begins with a window of more than ten a person and ends with one of fewer than five (EEMUA 191 and ISA-18.2, from memory).</remarks>
public static class FloodClock
{
    /// <summary>The window.</summary>
    public static readonly TimeSpan Window = TimeSpan.FromMinutes(10);

    /// <summary>More than so many a person in a window begin a flood.</summary>
    public const double Begins = 10;

    /// <summary>Fewer than so many a person in a window end it.</summary>
    public const double Ends = 5;

    /// <summary>Counts by window; the last may be shorter.</summary>
    public static ImmutableArray<int> Counts(IEnumerable<Instant> told, Instant from, Instant to)
    {
        ArgumentNullException.ThrowIfNull(told);
        if (to <= from) return [];
        var counts = new int[(int)Math.Ceiling((to - from) / Window)];
        foreach (var at in told)
            if (at >= from && at < to) counts[(int)((at - from) / Window)]++;
        return [.. counts];
    }

    /// <summary>The floods among the windows.</summary>
    public static ImmutableArray<Flood> Floods(ImmutableArray<int> counts, Instant from, Instant to, double people)
    {
        var floods = ImmutableArray.CreateBuilder<Flood>();
        var (since, sum) = (-1, 0);
        for (var i = 0; i < counts.Length; i++)
        {
            if (since >= 0 && counts[i] < Ends * people)
            {
                floods.Add(new(from + (since * Window), from + (i * Window), sum));
                (since, sum) = (-1, 0);
            }

            if (since < 0 && counts[i] > Begins * people) since = i;
            if (since >= 0) sum += counts[i];
        }

        if (since >= 0) floods.Add(new(from + (since * Window), to, sum));
        return floods.ToImmutable();
    }
}
