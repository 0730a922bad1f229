namespace PlantWatch.Core.Plant;

/// <summary>What became of the subjects of alarms and notes: the pools, probes and pumps of a circuit, and the circuit itself.</summary>
internal sealed class PlanSubjects
{
    private readonly Dictionary<string, string?> named = new(StringComparer.Ordinal);
    private readonly HashSet<string> other = new(StringComparer.Ordinal);

    public PlanSubjects(PlanLineage lineage, string oldCircuit, string nextCircuit)
    {
        named[oldCircuit] = nextCircuit;
        foreach (var (old, next) in lineage.Pools)
            if (old is not null) named[old.Id] = next?.Id;
        foreach (var (old, next) in lineage.Pumps)
            if (old is not null) named[old.Id] = next?.Id;
        foreach (var (old, next) in lineage.Probes)
        {
            if (old is null) continue;
            named[old.Id] = next?.Id;
            if (next is not null && next.Measurand != old.Measurand) other.Add(old.Id);
        }
    }

    /// <summary>The id it has now; null when it is gone. What never was a thing of the plan stays as it is.</summary>
    /// <remarks>A test of a pool is a subject of the form pool/measurand and goes where its pool goes; no id has a slash.</remarks>
    public string? Named(string subject)
    {
        if (named.TryGetValue(subject, out var now)) return now;
        var slash = subject.IndexOf('/', StringComparison.Ordinal);
        if (slash < 0 || !named.TryGetValue(subject[..slash], out var pool)) return subject;
        return pool is null ? null : pool + subject[slash..];
    }

    /// <summary>Likewise, but null too when a probe measures something else now: an alarm on it has lost its meaning.</summary>
    public string? Now(string subject) => other.Contains(subject) ? null : Named(subject);
}
