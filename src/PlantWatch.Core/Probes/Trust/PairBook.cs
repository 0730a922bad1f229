using System.Collections.Immutable;

namespace PlantWatch.Core.Probes;

/// <summary>The kept pairs of a probe: by sample time, each check once, the newest of them.</summary>
internal static class PairBook
{
    // When there are too many, this many of the oldest are folded into the base at once, so that it is not done anew with every check.
    private const int SettledAtOnce = 8;

    /// <summary>How many of the oldest pairs are folded into the base and let go.</summary>
    public static int ToSettle(int pairs) => pairs > ProbeTrust.Kept ? pairs - ProbeTrust.Kept + SettledAtOnce : 0;

    /// <summary>Puts a pair in its place; false when it is older than all that are kept one by one.</summary>
    public static bool TryAdd(ProbeTrust trust, PairedCheck pair, out ProbeTrust added)
    {
        added = trust with { Pairs = Without(trust.Pairs, pair.CheckId) };
        if (trust.Base is { } settled && pair.SampledAt <= settled.At) return false;
        var place = added.Pairs.Length;
        while (place > 0 && IsBefore(pair, added.Pairs[place - 1])) place--;
        added = added with { Pairs = added.Pairs.Insert(place, pair) };
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
