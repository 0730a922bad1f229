using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Rules;

/// <summary>A time at which a pool was to be tested, and what came of it.</summary>
/// <param name="Duty">Index of the duty in the pool's plan.</param>
/// <param name="What">What was to be tested.</param>
/// <param name="DueAt">When.</param>
/// <param name="Check">The first test that covered it, before or after its time; null while there is none.</param>
/// <param name="SampledAt">When that was sampled; never while there is none.</param>
public sealed record DutyRound(int Duty, ImmutableArray<Measurand> What, Instant DueAt, Guid? Check, Instant SampledAt)
{
    /// <summary>Nobody tested, and the allowance is over.</summary>
    public bool IsMissed(Instant now) => Check is null && now > DueAt + DueChecks.Allowance;
}

/// <summary>The rounds of a span looked back on: <see cref="DueChecks"/> tells which is open now, this which were walked.</summary>
public static class DutyRounds
{
    /// <summary>The times of a pool's duties from the start (included) to the end (excluded), oldest first. A test counts for the one whose window it falls into, up to where the window of the next one opens.</summary>
    /// <param name="timeZone">IANA zone of the site; without one there are none.</param>
    /// <param name="pool">The pool.</param>
    /// <param name="checks">Its tests as they stand: what was corrected is not among them.</param>
    /// <param name="from">Start.</param>
    /// <param name="to">End.</param>
    public static ImmutableArray<DutyRound> Between(string timeZone, PoolPlan pool, IReadOnlyCollection<ManualCheck> checks, Instant from, Instant to)
    {
        ArgumentNullException.ThrowIfNull(pool);
        if (!SiteClock.TryOf(timeZone, out var clock)) return [];
        var rounds = Enumerable.Range(0, pool.Duties.Length).SelectMany(duty => OfDuty(clock, pool.Duties[duty], duty, checks, from, to));
        return [.. rounds.OrderBy(r => r.DueAt).ThenBy(r => r.Duty)];
    }

    private static List<DutyRound> OfDuty(SiteClock clock, CheckDuty duty, int index, IReadOnlyCollection<ManualCheck> checks, Instant from, Instant to)
    {
        var (times, rounds) = (Times(clock, duty, from, to), new List<DutyRound>());
        for (var i = 1; i < times.Count - 1; i++)
        {
            if (times[i] < from || times[i] >= to) continue;
            var (opens, closes) = (Opens(times, i), Opens(times, i + 1));
            var done = checks.Where(c => c.SampledAt >= opens && c.SampledAt < closes && DueChecks.Covers(duty, c)).MinBy(c => c.SampledAt);
            rounds.Add(new(index, duty.What, times[i], done?.Id, done?.SampledAt ?? Instant.Never));
        }

        return rounds;
    }

    // With a day to either side, so that the first has one before it and the last one after.
    private static List<Instant> Times(SiteClock clock, CheckDuty duty, Instant from, Instant to)
    {
        var times = new List<Instant>();
        var end = clock.DayOf(to).AddDays(1);
        for (var day = clock.DayOf(from).AddDays(-1); day <= end; day = day.AddDays(1))
            foreach (var time in duty.At) times.Add(clock.At(day, time));
        return times;
    }

    private static Instant Opens(List<Instant> times, int i) => Instant.Later(times[i] - DueChecks.Allowance, times[i - 1]);
}
