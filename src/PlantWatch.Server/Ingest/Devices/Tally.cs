using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Ingest.Devices;

/// <summary>Counts of what was refused, by what it was: the newest two hundred kinds, in memory.</summary>
internal sealed class Tally(TimeSpan told)
{
    /// <summary>Most kinds that are counted apart; the one that was silent longest gives way.</summary>
    public const int Most = 200;

    private readonly Lock _gate = new();
    private readonly Dictionary<string, (long Count, Instant Last)> _counts = new(StringComparer.Ordinal);

    /// <summary>One more; true for the first of its kind.</summary>
    public bool Add(string what, Instant at)
    {
        lock (_gate)
        {
            var before = _counts.GetValueOrDefault(what);
            if (before.Count == 0 && _counts.Count >= Most) _counts.Remove(_counts.MinBy(c => c.Value.Last).Key);
            _counts[what] = (before.Count + 1, at);
            return before.Count == 0;
        }
    }

    /// <summary>What is still told, the newest first, each with its count.</summary>
    public IReadOnlyList<(string What, long Count, Instant Last)> At(Instant now)
    {
        lock (_gate) return [.. _counts.Where(c => now - c.Value.Last <= told).OrderByDescending(c => c.Value.Last).Select(c => (c.Key, c.Value.Count, c.Value.Last))];
    }
}
