using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Stock;

/// <summary>How the level of a tank goes, out of readings with noise. The default was never heard.</summary>
/// <remarks>
/// Readings are taken together by the quarter of an hour and their mean is the level: its falls are use, with their sign, so that the ripple of a sensor cancels and does not add up
/// (what was used between two times without a fill is the first level less the second). A mean that moves by more than a few per cent at once is looked at once more: if the next one is
/// back it was a bad reading, if it stays above it was a fill, if it stays below the tank was emptied.
/// </remarks>
/// <param name="From">Begin of the quarter that is gathered; never before the first reading.</param>
/// <param name="Sum">Sum of its readings, per cent.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Level">Level of the last quarter that was believed, per cent.</param>
/// <param name="LevelAt">End of it; never before the first.</param>
/// <param name="Moved">Level of a quarter that moved far and waits for another to bear it out; null while none does.</param>
/// <param name="MovedAt">Begin of that quarter.</param>
public readonly record struct TankTrail(Instant From, double Sum, int Count, double Level, Instant LevelAt, double? Moved, Instant MovedAt)
{
    /// <summary>Readings of so long are one level.</summary>
    public static TimeSpan Quarter { get; } = TimeSpan.FromMinutes(15);

    /// <summary>A mean that moves by more is no use and no ripple: 3 per cent of the tank (common practice).</summary>
    public const double Far = 3;

    /// <summary>True once there is a level.</summary>
    public bool IsKnown => LevelAt.IsSet;

    /// <summary>A reading comes in.</summary>
    /// <param name="at">When.</param>
    /// <param name="percent">Level in per cent.</param>
    /// <returns>The trail after it, and what a quarter that ended told; nothing while it is gathered.</returns>
    public (TankTrail Next, TankStep? Step) Hear(Instant at, double percent)
    {
        if (!From.IsSet) return (this with { From = at, Sum = percent, Count = 1 }, null);
        if (at - From < Quarter) return (this with { Sum = Sum + percent, Count = Count + 1 }, null);
        var (next, step) = Close(Sum / Count, at);
        return (next with { From = at, Sum = percent, Count = 1 }, step);
    }

    private (TankTrail, TankStep?) Close(double mean, Instant at)
    {
        if (!IsKnown) return (this with { Level = mean, LevelAt = at }, null);
        if (Moved is { } moved) return Settle(moved, mean, at);
        if (Math.Abs(mean - Level) > Far) return (this with { Moved = mean, MovedAt = From }, null);
        return (this with { Level = mean, LevelAt = at }, new TankStep(LevelAt, at, Level - mean, 0));
    }

    // A fill takes a while: as long as it goes on it is not over.
    private (TankTrail, TankStep?) Settle(double moved, double mean, Instant at)
    {
        if (Math.Abs(mean - moved) > Far && Math.Abs(mean - Level) > Far) return (this with { Moved = mean }, null);
        var rose = mean - Level;
        var settled = this with { Level = mean, LevelAt = at, Moved = null };
        return (settled, rose > Far ? new TankStep(MovedAt, at, 0, rose) : new TankStep(LevelAt, at, -rose, 0));
    }
}

/// <summary>What a tank did between two times.</summary>
/// <param name="From">Since when.</param>
/// <param name="To">Until when.</param>
/// <param name="Used">By how much its level fell, in per cent of the tank; a ripple upward is a little under nothing.</param>
/// <param name="Filled">By how much it rose at once: somebody filled it. 0 when nobody did.</param>
public readonly record struct TankStep(Instant From, Instant To, double Used, double Filled);
