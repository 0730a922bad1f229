using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Plant;

/// <summary>What became of the subjects of alarms and notes: the pools, probes and pumps of a circuit, the circuit itself, and the ways by which people are told.</summary>
internal sealed class PlanSubjects
{
    private readonly Dictionary<string, string?> _named = new(StringComparer.Ordinal);
    private readonly HashSet<string> _other = new(StringComparer.Ordinal);

    public PlanSubjects(PlanLineage lineage, CircuitPlan old, CircuitPlan next)
    {
        _named[old.Id] = next.Id;
        foreach (var channel in old.Telling.Channels) _named[channel.Id] = next.Telling.Channels.Any(c => c.Id == channel.Id) ? channel.Id : null;
        foreach (var (before, now) in lineage.Pools)
            if (before is not null) _named[before.Id] = now?.Id;
        foreach (var (before, now) in lineage.Pumps)
            if (before is not null) _named[before.Id] = now?.Id;
        foreach (var (before, now) in lineage.Probes)
        {
            if (before is null) continue;
            _named[before.Id] = now?.Id;
            if (now is not null && now.Measurand != before.Measurand) _other.Add(before.Id);
        }
    }

    /// <summary>The id it has now; null when it is gone. What never was a thing of the plan stays as it is.</summary>
    /// <remarks>A test of a pool is a subject of the form pool/measurand and goes where its pool goes; no id has a slash.</remarks>
    public string? Named(string subject)
    {
        if (_named.TryGetValue(subject, out var now)) return now;
        var slash = subject.IndexOf('/', StringComparison.Ordinal);
        if (slash < 0 || !_named.TryGetValue(subject[..slash], out var pool)) return subject;
        return pool is null ? null : pool + subject[slash..];
    }

    /// <summary>It was a thing of the old plan, or a test of one.</summary>
    public bool IsOf(string subject) => _named.ContainsKey(subject) || (subject.IndexOf('/', StringComparison.Ordinal) is >= 0 and var slash && _named.ContainsKey(subject[..slash]));

    /// <summary>Likewise, but null too when a probe measures something else now: an alarm on it has lost its meaning.</summary>
    public string? Now(string subject) => _other.Contains(subject) ? null : Named(subject);
}
