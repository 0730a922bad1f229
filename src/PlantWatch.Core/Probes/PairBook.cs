using System.Collections.Immutable;

namespace PlantWatch.Core.Probes;

/// <summary>The kept pairs of a probe: by sample time, each check once, the newest of them.</summary>
internal static class PairBook
{
    /// <summary>Puts a pair in its place; false when it is older than all that can be kept.</summary>
    public static bool TryAdd(ImmutableArray<PairedCheck> pairs, PairedCheck pair, out ImmutableArray<PairedCheck> added)
    {
        added = Without(pairs, pair.CheckId);
        var place = added.Length;
        while (place > 0 && IsBefore(pair, added[place - 1])) place--;
        if (place == 0 && added.Length >= ProbeTrust.Kept) return false;
        added = added.Insert(place, pair);
        if (added.Length > ProbeTrust.Kept) added = added.RemoveAt(0);
        return true;
    }

    /// <summary>Takes the pair of a check out, if it is there.</summary>
    public static ImmutableArray<PairedCheck> Without(ImmutableArray<PairedCheck> pairs, Guid? checkId)
    {
        for (var i = 0; i < pairs.Length; i++)
            if (pairs[i].CheckId == checkId) return pairs.RemoveAt(i);
        return pairs;
    }

    // Two samples of one moment go by id, so that their order does not hang on which arrived first.
    private static bool IsBefore(PairedCheck a, PairedCheck b) => (a.SampledAt, a.CheckId).CompareTo((b.SampledAt, b.CheckId)) < 0;
}
