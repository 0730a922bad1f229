using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Alarms.Telling;

/// <summary>The plan read on the site's clock: who is on call, and until when a message waits.</summary>
/// <exception cref="ArgumentException">There is no such time zone.</exception>
public sealed class Duty
{
    private readonly TellingPlan _plan;
    private readonly SiteClock _clock;

    /// <summary>Puts a plan on the clock of an IANA time zone.</summary>
    public Duty(TellingPlan plan, string timeZone)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (!SiteClock.TryOf(timeZone, out var clock)) throw new ArgumentException($"there is no time zone {timeZone}", nameof(timeZone));
        (_plan, _clock) = (plan, clock);
    }

    /// <summary>The persons on call, in the order of the roster, each once.</summary>
    public ImmutableArray<string> OnCall(Instant at) =>
        [.. _plan.Roster.Where(shift => shift.Hours.EndOf(_clock, at, day => shift.Days.Contains(day)).IsSet).Select(shift => shift.Person).Distinct()];

    /// <summary>When a message that is due may go: low and medium wait for the end of the quiet hours, high and critical never wait.</summary>
    public Instant MayGo(Priority priority, Instant due) =>
        priority < Priority.High && _plan.Quiet is { } quiet && quiet.EndOf(_clock, due, static _ => true) is { IsSet: true } end ? end : due;

    /// <summary>Who is told at a step: 0 is who is on call. With nobody on call the first of the escalation stands in, so that nothing is told to nobody.</summary>
    public ImmutableArray<string> At(int step, Instant now)
    {
        if (step > 0) return step <= _plan.Escalation.Length ? [_plan.Escalation[step - 1]] : [];
        return OnCall(now) is { IsEmpty: false } people ? people : [.. _plan.Escalation.Take(1)];
    }
}
