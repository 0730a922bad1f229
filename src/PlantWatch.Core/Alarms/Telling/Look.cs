using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Alarms.Telling;

/// <summary>One look at the alarms: what stands, what was told, and what is found to be owed.</summary>
internal sealed class Look(IReadOnlyCollection<AlarmRecord> live, IReadOnlyCollection<Notice> told, Instant now)
{
    private readonly Dictionary<string, AlarmRecord> _live = live.ToDictionary(alarm => alarm.Key, StringComparer.Ordinal);
    private readonly HashSet<Guid> _known = [.. told.Select(notice => notice.Id)];
    private readonly HashSet<(Guid, Instant, int, string)> _raised = [.. told.Where(n => n.Kind == NoticeKind.Raised).Select(n => (n.Alarm, n.AnnunciatedAt, n.Step, n.Channel))];
    private readonly List<Notice> _owed = [];
    private Instant _again;

    public Instant Now => now;

    public Owed Owed => new([.. _owed.OrderByDescending(n => n.Priority).ThenBy(n => _live.GetValueOrDefault(n.Key)?.Order ?? 0).ThenBy(n => n.Step).ThenBy(n => n.Channel, StringComparer.Ordinal)], _again);

    public AlarmRecord? Find(string key) => _live.GetValueOrDefault(key);

    /// <summary>By its occurrence: the key of an alarm changes when its probe is renamed, and nothing is over with that.</summary>
    public AlarmRecord? Find(Guid occurrence) => live.FirstOrDefault(alarm => alarm.Id == occurrence);

    public ImmutableArray<string> ConsequencesOf(string key) => [.. _live.Values.Where(a => a.Active && a.ConsequenceOf == key).OrderBy(a => a.Order).Select(a => a.Key)];

    /// <summary>A step is told to all of it at once; whoever comes on call later is not told the same step again.</summary>
    public bool WasRaised(AlarmRecord alarm, int step, string channel) => _raised.Contains((alarm.Id, alarm.AnnunciatedAt, step, channel));

    public bool Knows(Notice notice) => _known.Contains(notice.Id);

    /// <summary>The first annunciation of an occurrence that was told: its end is told once, however often it spoke up.</summary>
    public Instant FirstOf(Notice raised) => told.Where(n => n.Kind == NoticeKind.Raised && n.Alarm == raised.Alarm).Min(n => n.AnnunciatedAt);

    /// <summary>True when the time has come; when it has not, it is noted as a time to look again.</summary>
    public bool IsTime(Instant due)
    {
        if (due <= now) return true;
        _again = _again.IsSet ? Instant.Earlier(_again, due) : due;
        return false;
    }

    public void Add(Notice notice)
    {
        if (_known.Add(notice.Id)) _owed.Add(notice);
    }
}
