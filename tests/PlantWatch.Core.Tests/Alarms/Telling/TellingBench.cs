using PlantWatch.Core.Alarms;
using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Alarms.Telling;

/// <summary>Alarms, a clock and what was told, in London: on Monday 3 August 2026 the clocks are an hour ahead of UTC.</summary>
internal sealed class TellingBench(TellingPlan plan)
{
    private readonly TellingPolicy _policy = new(plan, "Europe/London");
    private readonly Dictionary<string, AlarmRecord> _live = [];
    private long _order;

    public static TellingPlan Usual { get; } = new()
    {
        Channels = [new("topic", ChannelKind.Mqtt, Priority.Low), new("post", ChannelKind.Email, Priority.Low)],
        Roster = [new("ann", [.. Enum.GetValues<DayOfWeek>()], new(new(8, 0), new(20, 0))), new("ben", [.. Enum.GetValues<DayOfWeek>()], new(new(20, 0), new(8, 0)))],
        Quiet = new(new(22, 0), new(7, 0)),
        Escalation = ["cat", "dan"],
    };

    public Instant Now { get; set; } = Instant.FromUtc(2026, 8, 3, 10);

    public List<Notice> Told { get; } = [];

    public Instant LookAgain { get; private set; }

    public AlarmRecord this[string key] { get => _live[key]; set => _live[key] = value; }

    public AlarmRecord Raise(string key, Priority priority, string? consequenceOf = null) => _live[key] = new()
    {
        Id = TimeOrderedId.Derive(Now, key), Key = key, Rule = key.Split('/')[0], Subject = key.Split('/')[^1], Priority = priority, Cause = Reason.Of("limit.above", 7.9, 7.6),
        Active = true, IsAcknowledged = false, RaisedAt = Now, AnnunciatedAt = Now, Order = ++_order, ConsequenceOf = consequenceOf,
    };

    public void Acknowledge(string key) => _live[key] = _live[key] with { IsAcknowledged = true, AcknowledgedBy = "A. Sample", AcknowledgedAt = Now };

    public void Clear(string key)
    {
        var alarm = _live[key] with { Active = false, ClearedAt = Now };
        if (alarm.IsAcknowledged) _live.Remove(key);
        else _live[key] = alarm;
    }

    public void ReAlarm(string key) => _live[key] = _live[key] with { IsAcknowledged = false, AnnunciatedAt = Now, ReAlarms = _live[key].ReAlarms + 1 };

    public void Gone(string key) => _live.Remove(key);

    public bool Has(string key) => _live.ContainsKey(key);

    public IReadOnlyCollection<AlarmRecord> Live => _live.Values;

    /// <summary>What is owed now, as "kind key -> channel person"; it is told with that.</summary>
    public string[] Look()
    {
        var owed = _policy.Next(_live.Values, Told, Now);
        LookAgain = owed.LookAgain;
        Told.AddRange(owed.Notices);
        return [.. owed.Notices.Select(n => $"{n.Kind} {n.Key} -> {n.Channel} {n.Person}".TrimEnd())];
    }

    public string[] LookAfter(double minutes)
    {
        Now += TimeSpan.FromMinutes(minutes);
        return Look();
    }
}
