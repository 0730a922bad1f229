namespace PlantWatch.Core.Probes;

/// <summary>How lively a signal usually is, window after window, and how calm it has ever been: what is far calmer than both is no calm water. The default knows nothing.</summary>
/// <param name="Usual">Usual liveliness: a running mean in which no window counts for more than eight times what it was.</param>
/// <param name="Lowest">The least from which it came back by itself; meaningful when <paramref name="Windows"/> is above 0.</param>
/// <param name="Trough">The least since it last was as lively as usual.</param>
/// <param name="Windows">Windows it rests on, counted up to what is enough.</param>
/// <param name="IsStill">True from the first window that was far calmer than ever, until it is lively again.</param>
public readonly record struct SignalCalm(double Usual, double Lowest, double Trough, int Windows, bool IsStill)
{
    /// <summary>Takes a window in.</summary>
    /// <param name="lively">Its liveliness; noise can make it slightly negative.</param>
    /// <param name="limits">What is far calmer.</param>
    /// <param name="whole">True when no block of it was in the window before: only those are learned from, though each is judged.</param>
    internal SignalCalm Next(double lively, in CalmLimits limits, bool whole)
    {
        var now = Judged(lively, limits);
        if (now.IsStill) return now;
        now = now.Recovered(lively, limits);
        if (!whole) return now;
        var weight = 1.0 / Math.Min(Windows + 1, limits.Most);
        var counted = Math.Max(0, Windows < 4 ? lively : Math.Min(lively, SignalLimits.MostOfUsual * Usual));
        return now with { Usual = Usual + (weight * (counted - Usual)), Windows = Math.Min(Windows + 1, limits.Most) };
    }

    private SignalCalm Judged(double lively, in CalmLimits limits)
    {
        // As lively as it ever was in its calmest hours is enough to be believed again.
        if (IsStill) return lively > Usual * limits.Again || (lively > Lowest && lively > Usual * limits.OfUsual) ? this with { IsStill = false, Trough = Usual } : this;
        return Windows >= limits.Enough && lively < Usual * limits.OfUsual && lively < Lowest * limits.OfLowest ? this with { IsStill = true } : this;
    }

    // A trough counts once it is over: one that leads into a standstill must not hide it.
    private SignalCalm Recovered(double lively, in CalmLimits limits)
    {
        if (Windows == 0) return this with { Lowest = Math.Max(0, lively), Trough = Math.Max(0, lively) };
        var trough = Math.Max(0, Math.Min(Trough, lively));
        return lively < Usual * limits.Again ? this with { Trough = trough } : this with { Lowest = Math.Min(Lowest, trough), Trough = lively };
    }
}

/// <summary>What is far calmer than usual and than ever.</summary>
/// <param name="OfUsual">Less than this share of the usual.</param>
/// <param name="OfLowest">And less than this share of the least.</param>
/// <param name="Enough">Windows to have seen before anything is said.</param>
/// <param name="Most">Windows over which the usual is remembered.</param>
/// <param name="Again">Lively again from this share of the usual.</param>
internal readonly record struct CalmLimits(double OfUsual, double OfLowest, int Enough, int Most, double Again);
