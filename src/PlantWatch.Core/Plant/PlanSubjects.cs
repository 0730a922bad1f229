namespace PlantWatch.Core.Plant;

/// <summary>What became of the subjects of alarms and notes: the pools, probes and pumps of a circuit, and the circuit itself.</summary>
internal sealed class PlanSubjects
{
    private readonly Dictionary<string, string?> _named = new(StringComparer.Ordinal);
    private readonly HashSet<string> _other = new(StringComparer.Ordinal);

    public PlanSubjects(PlanLineage lineage, string oldCircuit, string nextCircuit)
    {
        _named[oldCircuit] = nextCircuit;
        foreach (var (old, next) in lineage.Pools)
            if (old is not null) _named[old.Id] = next?.Id;
        foreach (var (old, next) in lineage.Pumps)
            if (old is not null) _named[old.Id] = next?.Id;
        foreach (var (old, next) in lineage.Probes)
        {
            if (old is null) continue;
            _named[old.Id] = next?.Id;
            if (next is not null && next.Measurand != old.Measurand) _other.Add(old.Id);
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

    /// <summary>Likewise, but null too when a probe measures something else now: an alarm on it has lost its meaning.</summary>
    public string? Now(string subject) => _other.Contains(subject) ? null : Named(subject);
}
