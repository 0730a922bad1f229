using System.Globalization;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.People;

/// <summary>A round that somebody will make.</summary>
/// <param name="At">When the sample is taken.</param>
/// <param name="Pool">Where.</param>
/// <param name="Tests">What is tested.</param>
/// <param name="Note">A remark on the sheet.</param>
internal sealed record Errand(DateTimeOffset At, string Pool, IReadOnlyList<string> Tests, string? Note = null);

/// <summary>The rounds of each day, a day at a time, with the scatter of people.</summary>
internal sealed class Rota(PeopleSetup people, TimeZoneInfo zone, Chance chance)
{
    private DateOnly _next = DateOnly.MinValue;

    /// <summary>Rounds of the days that have begun since the last call, from <paramref name="now"/> on.</summary>
    public IReadOnlyList<Errand> Due(DateTimeOffset now)
    {
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, zone).DateTime);
        if (_next == DateOnly.MinValue) _next = today;
        List<Errand> errands = [];
        // A day ahead, since an early round may fall before midnight.
        for (; _next <= today.AddDays(1); _next = _next.AddDays(1)) errands.AddRange(Day(_next));
        return [.. errands.Where(e => e.At >= now)];
    }

    private IEnumerable<Errand> Day(DateOnly day)
    {
        var rounds = people.Rounds.Where(r => r.Days.Count == 0 || r.Days.Contains(day.DayOfWeek))
            .SelectMany(r => r.At.Select(at => (r.Pool, At: at, r.Tests)))
            .GroupBy(r => (r.Pool, r.At));
        foreach (var round in rounds)
        {
            var early = Math.Clamp(chance.Normal(), -2, 2.5) * people.ScatterMinutes;
            if (chance.Happens(people.MissedShare)) continue;
            var local = day.ToDateTime(TimeOnly.ParseExact(round.Key.At, "HH:mm", CultureInfo.InvariantCulture)).AddMinutes(early);
            // The hour that a clock change leaves out has no instant: the round is made an hour later.
            if (zone.IsInvalidTime(local)) local = local.AddHours(1);
            yield return new Errand(new DateTimeOffset(local, zone.GetUtcOffset(local)).ToUniversalTime(), round.Key.Pool,
                [.. round.SelectMany(r => r.Tests).Distinct()]);
        }
    }
}
