using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using System.Collections.Immutable;

namespace PlantWatch.Core.Alarms.Compared;

/// <summary>A time in which an alarm stood, from being raised to being cleared.</summary>
/// <param name="Key">Rule and subject.</param>
/// <param name="Rule">Number of the rule.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Priority">Its priority.</param>
/// <param name="Cause">Why it was raised, with its figures.</param>
/// <param name="From">When it was raised.</param>
/// <param name="To">When it ended; never while it stands.</param>
/// <param name="Called">Somebody was called at least once: it was not shelved, suppressed or the consequence of another alarm all the time.</param>
public sealed record AlarmEpisode(string Key, string Rule, string Subject, Priority Priority, Reason Cause, Instant From, Instant To, bool Called)
{
    /// <summary>Both stand at some time, and watch the same.</summary>
    public bool Meets(AlarmEpisode other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Key == other.Key && (!other.To.IsSet || From < other.To) && (!To.IsSet || other.From < To);
    }

    /// <summary>The part of it within a time; null when none is. What stood before the start begins with it; never stays the end of one that stands.</summary>
    public AlarmEpisode? Within(Instant from, Instant to) =>
        From >= to || (To.IsSet && To <= from) ? null : this with { From = Instant.Later(From, from), To = To.IsSet && To < to ? To : Instant.Never };
}

/// <summary>Follows the changes of alarms, in the order of time, and keeps the times in which they stood.</summary>
public sealed class EpisodeBook
{
    private readonly List<AlarmEpisode> _all;
    private readonly Dictionary<string, int> _open;

    /// <summary>An empty one.</summary>
    public EpisodeBook()
        : this([], new(StringComparer.Ordinal))
    {
    }

    private EpisodeBook(List<AlarmEpisode> all, Dictionary<string, int> open) => (_all, _open) = (all, open);

    /// <summary>All of them, by when they were raised.</summary>
    public IReadOnlyList<AlarmEpisode> All => _all;

    /// <summary>The part of each within a time.</summary>
    public ImmutableArray<AlarmEpisode> Within(Instant from, Instant to) => [.. _all.Select(e => e.Within(from, to)).OfType<AlarmEpisode>()];

    /// <summary>The same up to here, to go on otherwise.</summary>
    public EpisodeBook Copy() => new([.. _all], new(_open, StringComparer.Ordinal));

    /// <summary>A change.</summary>
    public void Take(Instant at, AlarmRecord alarm, AlarmChange change)
    {
        ArgumentNullException.ThrowIfNull(alarm);
        if (change is AlarmChange.Raised or AlarmChange.Cleared or AlarmChange.Retired && _open.Remove(alarm.Key, out var ended)) _all[ended] = _all[ended] with { To = at };
        if (change == AlarmChange.Raised)
        {
            _open[alarm.Key] = _all.Count;
            _all.Add(new(alarm.Key, alarm.Rule, alarm.Subject, alarm.Priority, alarm.Cause, at, Instant.Never, Called: false));
        }

        if (_open.TryGetValue(alarm.Key, out var open) && !_all[open].Called && Calls(at, alarm, change)) _all[open] = _all[open] with { Called = true };
    }

    private static bool Calls(Instant at, AlarmRecord alarm, AlarmChange change) => Health.AlarmHappening.Of(at, alarm, change).Annunciates;
}
