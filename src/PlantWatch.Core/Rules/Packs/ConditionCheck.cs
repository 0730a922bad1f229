using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Rules.Packs;

/// <summary>Whether a row holds for a pool now. The default is no.</summary>
public enum Holds
{
    /// <summary>It does not.</summary>
    No = 0,
    /// <summary>It hangs on something that is not known.</summary>
    Unknown,
    /// <summary>It does.</summary>
    Yes,
}

/// <summary>Asks the conditions of a row. What is not known is no "no": a row that may hold is not waved through.</summary>
public static class ConditionCheck
{
    // No turbidity test by hand tells less from none (common practice), and a pool that is not stabilised picks up no more from elsewhere.
    private const double CyanurateTold = 10;

    /// <summary>Whether a condition holds.</summary>
    /// <param name="when">The condition.</param>
    /// <param name="pool">The pool.</param>
    /// <param name="water">What is known of its water.</param>
    public static Holds Of(PackCondition when, PoolPlan pool, WaterFacts water)
    {
        ArgumentNullException.ThrowIfNull(when);
        ArgumentNullException.ThrowIfNull(pool);
        return Least(
            In(when.Kinds, pool.Kind, PoolKind.Unknown),
            when.NotKinds.IsDefaultOrEmpty ? Holds.Yes : pool.Kind == PoolKind.Unknown ? Holds.Unknown : Of(!when.NotKinds.Contains(pool.Kind)),
            when.Setting is not { } setting ? Holds.Yes : pool.Setting == Setting.Unknown ? Holds.Unknown : Of(pool.Setting == setting),
            In(when.Disinfectants, pool.Disinfectant, Disinfectant.Unknown),
            when.Secondary is not { } secondary ? Holds.Yes : Of(!pool.Secondary.IsDefault && pool.Secondary.Contains(secondary)),
            when.CyanurateUsed is not { } used ? Holds.Yes : UsesCyanurate(pool, water) is var uses && used ? uses : Not(uses),
            Between(Cyanurate(pool, water), above: null, from: when.CyanurateFrom, upTo: null, below: when.CyanurateBelow),
            Between(water.Ph?.Value, when.PhAbove, from: null, when.PhUpTo, below: null),
            Between(water.Temperature?.Degrees, when.TemperatureAbove, from: null, when.TemperatureUpTo, below: null));
    }

    /// <summary>Whether the pool's water holds cyanurate: by a test, or by how it is disinfected.</summary>
    public static Holds UsesCyanurate(PoolPlan pool, WaterFacts water)
    {
        ArgumentNullException.ThrowIfNull(pool);
        if (pool.Disinfectant == Disinfectant.StabilisedChlorine || water.Cyanurate is { MilligramsPerLitre: >= CyanurateTold }) return Holds.Yes;
        return water.Cyanurate is not null || pool.Disinfectant is Disinfectant.Chlorine or Disinfectant.Bromine ? Holds.No : Holds.Unknown;
    }

    // Unstabilised chlorine that was never tested for cyanurate holds none; of every other pool nobody knows.
    private static double? Cyanurate(PoolPlan pool, WaterFacts water) =>
        water.Cyanurate?.MilligramsPerLitre ?? (pool.Disinfectant is Disinfectant.Chlorine or Disinfectant.Bromine ? 0 : null);

    private static Holds In<T>(ImmutableArray<T> those, T own, T unknown) where T : struct, Enum =>
        those.IsDefaultOrEmpty ? Holds.Yes : EqualityComparer<T>.Default.Equals(own, unknown) ? Holds.Unknown : Of(those.Contains(own));

    private static Holds Between(double? value, double? above, double? from, double? upTo, double? below) =>
        above is null && from is null && upTo is null && below is null ? Holds.Yes
        : value is not { } v ? Holds.Unknown
        : Of(!(v <= above) && !(v < from) && !(v > upTo) && !(v >= below));

    private static Holds Of(bool holds) => holds ? Holds.Yes : Holds.No;

    private static Holds Not(Holds holds) => (Holds)(Holds.Yes - holds);

    private static Holds Least(params ReadOnlySpan<Holds> all)
    {
        var least = Holds.Yes;
        foreach (var one in all)
            if (one < least) least = one;
        return least;
    }
}
