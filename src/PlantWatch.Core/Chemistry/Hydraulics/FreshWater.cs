using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>Fresh water that a pool takes in day by day: for its bathers, and for what backwashing drains. All of it is dilution, and is to be logged as that.</summary>
public static class FreshWater
{
    /// <summary>Litres for each bather (WHO 2006; published, second hand, edition not named there). Codes of practice name their own figure.</summary>
    public const double LitresPerBather = 30;

    /// <summary>Litres a bather uses a spa up by: 3 US gallons (Administrative Rules of Montana, spa chapter, published).</summary>
    public const double SpaLitresPerBather = 3 * 3.785411784;

    private static readonly ValueRange Bathers = new(0, 100_000);
    private static readonly ValueRange SomeBathers = new(1, 100_000);
    private static readonly ValueRange LitresEach = new(0, 500);
    private static readonly ValueRange Minutes = new(0, 120);
    private static readonly ValueRange Load = new(0, 1e7);
    private static readonly ValueRange Bleed = new(0.001, 10_000);

    /// <summary>m3 of fresh water for so many bathers.</summary>
    /// <param name="bathers">Bathers of the day.</param>
    /// <param name="litresEach">Litres for each.</param>
    public static Figure ForBathers(int bathers, double litresEach = LitresPerBather) => new InputCheck()
        .Within("bathers", bathers, Bathers, "").Within("litres_per_bather", litresEach, LitresEach, "L")
        .Then(() => bathers * litresEach / 1000);

    /// <summary>m3 drained by one backwash.</summary>
    /// <param name="cubicMetresPerHour">Backwash flow in m3/h.</param>
    /// <param name="minutes">Its length in minutes, rinse included.</param>
    public static Figure ByBackwash(double cubicMetresPerHour, double minutes) => new InputCheck()
        .Within("flow", cubicMetresPerHour, Turnover.ValidFlow, "m3/h").Within("duration", minutes, Minutes, "min")
        .Then(() => cubicMetresPerHour * minutes / 60);

    /// <summary>Level in mg/L after a volume of fresh water went through a pool, mixed all the while.</summary>
    /// <param name="now">Level before, mg/L.</param>
    /// <param name="fill">Level of the fresh water, mg/L.</param>
    /// <param name="freshCubicMetres">Fresh water in m3.</param>
    /// <param name="poolCubicMetres">Pool in m3.</param>
    public static Figure Dilutes(double now, double fill, double freshCubicMetres, double poolCubicMetres)
    {
        var inputs = new InputCheck().Within("volume", poolCubicMetres, Turnover.ValidCubicMetres, "m3").Within("fresh_water", freshCubicMetres, new(0, 100_000), "m3");
        return inputs.Why is { } why ? Figure.Not(why) : WaterReplacement.AfterOverflow(now, freshCubicMetres / poolCubicMetres, fill);
    }

    /// <summary>m3 a day to bleed so that a matter which comes in day by day stays at a limit: load/(limit - fill).</summary>
    /// <param name="gramsPerDay">What comes in, g/d.</param>
    /// <param name="limit">The level to hold, mg/L.</param>
    /// <param name="fill">Level of the fill water, mg/L, below the limit.</param>
    public static Figure BleedToHold(double gramsPerDay, double limit, double fill) => new InputCheck()
        .Within("load", gramsPerDay, Load, "g/d").Within("limit", limit, WaterReplacement.ValidLevel, "mg/L").Within("level_of_fill", fill, WaterReplacement.ValidLevel, "mg/L")
        .And(limit > fill, () => Reasons.Reason.Of("replacement.never_reached", limit, fill))
        .Then(() => gramsPerDay / (limit - fill));

    /// <summary>The level in mg/L that a bleed of so many m3 a day settles at: fill + load/bleed.</summary>
    public static Figure SettlesAt(double gramsPerDay, double bleedCubicMetresPerDay, double fill) => new InputCheck()
        .Within("load", gramsPerDay, Load, "g/d").Within("bleed", bleedCubicMetresPerDay, Bleed, "m3/d").Within("level_of_fill", fill, WaterReplacement.ValidLevel, "mg/L")
        .Then(() => fill + (gramsPerDay / bleedCubicMetresPerDay));

    /// <summary>Days between emptyings of a spa: litres over 3 US gallons for each bather of a day (Montana spa rule, published).</summary>
    public static Figure SpaDrainDays(double cubicMetres, int bathersPerDay) => new InputCheck()
        .Within("volume", cubicMetres, Turnover.ValidCubicMetres, "m3").Within("bathers", bathersPerDay, SomeBathers, "")
        .Then(() => cubicMetres * 1000 / (SpaLitresPerBather * bathersPerDay));
}
