using System.Collections.Immutable;

namespace PlantWatch.Core.Probes;

/// <summary>An account as it is kept between two checks: to the last bit, and without the many numbers that are 0 (no rate while stable, no lot while the tests are sound).</summary>
internal static class SavedAccount
{
    // What kind it is and which numbers follow share one number: 12 bits and 20, which a double holds exactly.
    private const int FirstOfMask = 12;

    public static void Add(in Hypothesis account, List<double> to)
    {
        var kind = (account.LotOff ? 1L : 0) + (account.LastWild ? 2 : 0) + (account.Fast ? 4 : 0) + (account.JustJumped ? 8 : 0) + (16L * account.Apart);
        for (var i = 0; i < Belief.Numbers; i++)
            if (account.Belief[i] != 0) kind |= 1L << (FirstOfMask + i);
        to.Add(account.Weight);
        to.Add(account.DriftDays);
        to.Add(kind);
        for (var i = 0; i < Belief.Numbers; i++)
            if (account.Belief[i] != 0) to.Add(account.Belief[i]);
    }

    public static Hypothesis Take(ImmutableArray<double> from, ref int next, ulong doubted)
    {
        var (weight, driftDays, kind) = (from[next], from[next + 1], (long)from[next + 2]);
        next += 3;
        var account = new Hypothesis
        {
            Weight = weight, DriftDays = driftDays, LotOff = (kind & 1) != 0, LastWild = (kind & 2) != 0, Fast = (kind & 4) != 0, JustJumped = (kind & 8) != 0, Apart = (byte)(kind >> 4), Doubted = doubted,
        };
        for (var i = 0; i < Belief.Numbers; i++)
            if ((kind >> (FirstOfMask + i) & 1) != 0) account.Belief[i] = from[next++];
        return account;
    }
}
