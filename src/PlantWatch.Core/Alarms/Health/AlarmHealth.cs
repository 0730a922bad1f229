using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Alarms.Health;

/// <summary>How much one alarm gave to do.</summary>
/// <param name="Key">Rule and subject.</param>
/// <param name="Rule">Number of the rule.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Count">How often it was told.</param>
/// <param name="Share">Its part of all that was told, 0 to 1.</param>
public sealed record BusyAlarm(string Key, string Rule, string Subject, int Count, double Share);

/// <summary>An alarm that stood a long time, or does.</summary>
/// <param name="Key">Rule and subject.</param>
/// <param name="Rule">Number of the rule.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="From">Since when.</param>
/// <param name="To">Until when; the end of the time looked at while it stands.</param>
public sealed record LongAlarm(string Key, string Rule, string Subject, Instant From, Instant To);

/// <summary>How well the alarms of a time could be answered by the people who were there.</summary>
public sealed record AlarmHealth
{
    /// <summary>Standing longer than this is stale (24 h: published secondhand, IEC 62682 and ISA-18.2).</summary>
    public static readonly TimeSpan StaleAfter = TimeSpan.FromHours(24);

    /// <summary>Cleared sooner than this, and not touched, is fleeting: "seconds" of the guidance read as half a minute, a choice of this project.</summary>
    public static readonly TimeSpan FleetingWithin = TimeSpan.FromSeconds(30);

    /// <summary>So many times within <see cref="ChatterWithin"/> is chattering.</summary>
    public const int ChatterCount = 3;

    /// <summary>The time in which an alarm chatters.</summary>
    public static readonly TimeSpan ChatterWithin = TimeSpan.FromMinutes(1);

    /// <summary>How many of the busiest are named.</summary>
    public const int Worst = 10;

    /// <summary>Start, included.</summary>
    public Instant From { get; init; }

    /// <summary>End, excluded.</summary>
    public Instant To { get; init; }

    /// <summary>People on duty at a time: the figures of the standards are a person's.</summary>
    public double People { get; init; } = 1;

    /// <summary>How often somebody was called.</summary>
    public int Told { get; init; }

    /// <summary>A person's mean in ten minutes.</summary>
    public double PerTenMinutes { get; init; }

    /// <summary>A person's most in any of the windows.</summary>
    public double MostInTenMinutes { get; init; }

    /// <summary>A person's mean in an hour.</summary>
    public double PerHour => PerTenMinutes * 6;

    /// <summary>Floods.</summary>
    public ImmutableArray<Flood> Floods { get; init; } = [];

    /// <summary>The part of the time that was flood, 0 to 1.</summary>
    public double FloodShare { get; init; }

    /// <summary>Standing at the end.</summary>
    public int Standing { get; init; }

    /// <summary>Most that stood at once.</summary>
    public int MostStanding { get; init; }

    /// <summary>Those that stood over a day, the longest first.</summary>
    public ImmutableArray<LongAlarm> Stale { get; init; } = [];

    /// <summary>Keys that chattered, and how often each was told in its worst minute.</summary>
    public ImmutableArray<BusyAlarm> Chattering { get; init; } = [];

    /// <summary>How often an alarm cleared at once, untouched.</summary>
    public int Fleeting { get; init; }

    /// <summary>The ten busiest.</summary>
    public ImmutableArray<BusyAlarm> Busiest { get; init; } = [];

    /// <summary>The part of all that the ten busiest make, 0 to 1.</summary>
    public double BusiestShare { get; init; }

    /// <summary>What was told by priority.</summary>
    public ImmutableSortedDictionary<Priority, int> ByPriority { get; init; } = ImmutableSortedDictionary<Priority, int>.Empty;

    /// <summary>Half were acknowledged within this; null when none was.</summary>
    public TimeSpan? AcknowledgedMedian { get; init; }

    /// <summary>Nine in ten were acknowledged within this; null when none was.</summary>
    public TimeSpan? AcknowledgedNinetieth { get; init; }

    /// <summary>Told and not acknowledged before they came again or the time ended.</summary>
    public int NotAcknowledged { get; init; }

    /// <summary>How often one was shelved.</summary>
    public int Shelved { get; init; }

    /// <summary>How often one was taken out of service.</summary>
    public int OutOfService { get; init; }

    /// <summary>What was told on each day, by the days given.</summary>
    public ImmutableArray<int> ByDay { get; init; } = [];

    /// <summary>Works it out.</summary>
    /// <param name="changes">Changes of alarms in any order, also from before the time: what stands at its start follows from them.</param>
    /// <param name="from">Start, included.</param>
    /// <param name="to">End, excluded.</param>
    /// <param name="people">People on duty at a time, above 0.</param>
    /// <param name="days">Starts of the days within the time; empty when none are asked for.</param>
    public static AlarmHealth Of(IEnumerable<AlarmHappening> changes, Instant from, Instant to, double people, ImmutableArray<Instant> days = default)
    {
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(people);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(to, from);
        AlarmHappening[] all = [.. changes.Where(c => c.At < to).OrderBy(c => c.At)];
        AlarmHappening[] told = [.. all.Where(c => c.At >= from && c.Annunciates)];
        var counts = FloodClock.Counts(told.Select(t => t.At), from, to);
        var floods = FloodClock.Floods(counts, from, to, people);
        var busiest = Busy(told, told.Length);
        var course = StandingCourse.Of(all, from, to);
        var answers = AnswerTimes.Of(all, from, to);
        return new()
        {
            From = from, To = to, People = people, Told = told.Length,
            PerTenMinutes = told.Length / ((to - from) / FloodClock.Window) / people,
            MostInTenMinutes = counts.DefaultIfEmpty().Max() / people,
            Floods = floods, FloodShare = floods.Sum(f => (f.To - f.From) / (to - from)),
            Standing = course.AtEnd, MostStanding = course.Most, Stale = course.Stale, Fleeting = course.Fleeting,
            Chattering = Chatter(told), Busiest = busiest, BusiestShare = busiest.Sum(b => b.Share),
            ByPriority = told.GroupBy(t => t.Priority).ToImmutableSortedDictionary(g => g.Key, g => g.Count()),
            AcknowledgedMedian = answers.Quantile(0.5), AcknowledgedNinetieth = answers.Quantile(0.9), NotAcknowledged = answers.Unanswered,
            Shelved = all.Count(c => c.At >= from && c.Change == AlarmChange.Shelved), OutOfService = all.Count(c => c.At >= from && c.Change == AlarmChange.TakenOutOfService),
            ByDay = days.IsDefaultOrEmpty ? [] : [.. days.Select((day, i) => told.Count(t => t.At >= day && t.At < (i + 1 < days.Length ? days[i + 1] : to)))],
        };
    }

    private static ImmutableArray<BusyAlarm> Busy(AlarmHappening[] told, int all) =>
        [.. told.GroupBy(t => t.Key).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Take(Worst)
            .Select(g => new BusyAlarm(g.Key, g.First().Rule, g.First().Subject, g.Count(), (double)g.Count() / all))];

    private static ImmutableArray<BusyAlarm> Chatter(AlarmHappening[] told)
    {
        var found = ImmutableArray.CreateBuilder<BusyAlarm>();
        foreach (var one in told.Where(t => t.Change == AlarmChange.Raised).GroupBy(t => t.Key).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Instant[] at = [.. one.Select(t => t.At)];
            var most = at.Max(start => at.Count(t => t >= start && t - start <= ChatterWithin));
            if (most >= ChatterCount) found.Add(new(one.Key, one.First().Rule, one.First().Subject, most, (double)at.Length / told.Length));
        }

        return found.ToImmutable();
    }
}
