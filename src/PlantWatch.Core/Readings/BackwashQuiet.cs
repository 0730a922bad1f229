using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>A time in which a backwash silenced. The default is none.</summary>
/// <param name="From">From when.</param>
/// <param name="To">Until when, not included.</param>
public readonly record struct QuietSpan(Instant From, Instant To);

/// <summary>How much quiet backwashes give. A bed is washed every few days, at times twice on end after a mishap with coagulant; whoever begins one wash after the other has no flow alarm else. All figures are common practice.</summary>
public static class BackwashQuiet
{
    /// <summary>The time that is looked back over.</summary>
    public static readonly TimeSpan Within = TimeSpan.FromHours(12);

    /// <summary>The most quiet that one filter gives within that: two washes of the longest. What goes beyond is written down and silences nothing.</summary>
    public static readonly TimeSpan Most = 2 * BackwashWindow.Longest;

    /// <summary>A wash that begins sooner after the last one than this says why, unless the filter's own pressure asks for it.</summary>
    public static readonly TimeSpan Apart = TimeSpan.FromHours(2);

    /// <summary>How much quiet is left to a backwash that begins at a time.</summary>
    public static TimeSpan Left(FilterState filter, Instant at)
    {
        ArgumentNullException.ThrowIfNull(filter);
        var (from, used) = (at - Within, TimeSpan.Zero);
        foreach (var span in filter.Quiet)
            if (span.To > from) used += span.To - Instant.Later(span.From, from);
        return used < Most ? Most - used : TimeSpan.Zero;
    }

    /// <summary>A backwash that begins at a time has to say why.</summary>
    /// <param name="filter">The filter.</param>
    /// <param name="isDirty">The alarm of its pressure stands.</param>
    /// <param name="at">When it begins.</param>
    public static bool NeedsWhy(FilterState filter, bool isDirty, Instant at)
    {
        ArgumentNullException.ThrowIfNull(filter);
        return !isDirty && filter.Backwash.Since.IsSet && at - filter.Backwash.Until < Apart;
    }

    /// <summary>The spans after a backwash is over; those that lie too far back are forgotten.</summary>
    public static ImmutableArray<QuietSpan> With(FilterState filter, BackwashWindow over)
    {
        ArgumentNullException.ThrowIfNull(filter);
        var kept = filter.Quiet.RemoveAll(span => span.To <= over.Since - Within);
        return over.QuietUntil > over.Since ? kept.Add(new(over.Since, over.QuietUntil)) : kept;
    }
}
