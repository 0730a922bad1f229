using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Alarms.Health;

/// <summary>What stood when: followed through every change, also of what called nobody.</summary>
internal sealed class StandingCourse
{
    private readonly Dictionary<string, (AlarmHappening Raised, bool Touched)> _open = new(StringComparer.Ordinal);
    private readonly ImmutableArray<LongAlarm>.Builder _stale = ImmutableArray.CreateBuilder<LongAlarm>();
    private readonly Instant _from;

    private StandingCourse(Instant from) => _from = from;

    public int AtEnd { get; private set; }
    public int Most { get; private set; }
    public int Fleeting { get; private set; }
    public ImmutableArray<LongAlarm> Stale { get; private set; } = [];

    /// <param name="all">In the order of time.</param>
    /// <param name="from">Start, included.</param>
    /// <param name="to">End, excluded.</param>
    public static StandingCourse Of(IEnumerable<AlarmHappening> all, Instant from, Instant to)
    {
        var course = new StandingCourse(from);
        foreach (var change in all) course.Take(change);
        course.AtEnd = course._open.Count;
        course.Most = Math.Max(course.Most, course.AtEnd);
        foreach (var (raised, _) in course._open.Values.ToArray()) course.Note(raised, to);
        course.Stale = [.. course._stale.OrderByDescending(s => s.To - s.From).ThenBy(s => s.Key, StringComparer.Ordinal)];
        return course;
    }

    private void Take(AlarmHappening change)
    {
        // What stood up to this change stood at once; of what the last one left the end is asked.
        if (change.At >= _from) Most = Math.Max(Most, _open.Count);
        if (change.Stands == true && !_open.ContainsKey(change.Key)) _open[change.Key] = (change, false);
        else if (change.Stands == false && _open.Remove(change.Key, out var was)) End(was.Raised, was.Touched, change.At);
        else if (change.Change is AlarmChange.Acknowledged or AlarmChange.Shelved && _open.TryGetValue(change.Key, out var known)) _open[change.Key] = (known.Raised, true);
    }

    private void End(AlarmHappening raised, bool touched, Instant at)
    {
        if (at >= _from && raised.Annunciates && !touched && at - raised.At <= AlarmHealth.FleetingWithin) Fleeting++;
        Note(raised, at);
    }

    private void Note(AlarmHappening raised, Instant until)
    {
        if (until >= _from && until - raised.At > AlarmHealth.StaleAfter) _stale.Add(new(raised.Key, raised.Rule, raised.Subject, raised.At, until));
    }
}
