using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Rules;

/// <summary>How the round of a day stands. The default is that it is to be walked.</summary>
public enum RoundWord
{
    /// <summary>To be walked today.</summary>
    Due = 0,
    /// <summary>Walked today.</summary>
    Walked,
    /// <summary>It should have been walked by now.</summary>
    Overdue,
}

/// <summary>Whether the plant round is due: once on each day of the site.</summary>
public static class RoundDue
{
    /// <summary>A round counts as late so long after its time (our choice: nobody is called back from a pool for a gauge).</summary>
    public static TimeSpan Allowance { get; } = TimeSpan.FromHours(2);

    /// <summary>When today's is due, and how it stands.</summary>
    public static (RoundWord Word, Instant DueAt) At(RoundPlan plan, RoundStanding standing, string timeZone, Instant now)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(standing);
        if (!SiteClock.TryOf(timeZone, out var clock)) return (RoundWord.Due, now);
        var dueAt = clock.At(clock.DayOf(now), plan.At);
        if (standing.WalkedAt.IsSet && clock.DayOf(standing.WalkedAt) >= clock.DayOf(now)) return (RoundWord.Walked, dueAt);
        return (now > dueAt + Allowance ? RoundWord.Overdue : RoundWord.Due, dueAt);
    }

    /// <summary>Whether an item belongs to a round at that time: each time, or when its own interval will have passed before tomorrow's.</summary>
    public static bool Wants(RoundItemPlan item, RoundStanding standing, Instant now)
    {
        ArgumentNullException.ThrowIfNull(item);
        ArgumentNullException.ThrowIfNull(standing);
        return item.Every is not { } every || standing.LastOf(item.Id) is not { } last || now + TimeSpan.FromDays(1) > last.At + every;
    }
}
