using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>Replacing pool water by fill water: what it does to a matter that nothing else takes away (cyanurate, dissolved solids, hardness).</summary>
/// <remarks>
/// Mass balance. A batch is drained first and filled up after; an overflow runs in while mixed water runs out, and takes more for the same. Levels in mg/L, all on one basis.
/// </remarks>
public static class WaterReplacement
{
    /// <summary>Levels the formulas are used for, in mg/L.</summary>
    public static ValueRange ValidLevel { get; } = new(0, 100_000);

    /// <summary>Parts of the pool, and volumes of it, that can be replaced.</summary>
    private static readonly ValueRange Part = new(0, 1);

    private static readonly ValueRange Volumes = new(0, 100);

    /// <summary>The part of the water, 0 to 1, to drain and refill in one go: (now - target)/(now - fill).</summary>
    public static Figure BatchPart(double now, double target, double fill) =>
        Levels(now, target, fill).Then(() => now == target ? 0 : (now - target) / (now - fill));

    /// <summary>Pool volumes of fill water to run in while mixed water overflows: ln((now - fill)/(target - fill)).</summary>
    public static Figure OverflowVolumes(double now, double target, double fill) =>
        Levels(now, target, fill).And(now == target || target != fill, () => NeverReached(target, fill))
            .Then(() => now == target ? 0 : Math.Log((now - fill) / (target - fill)));

    /// <summary>The level in mg/L after a part of the water was drained and refilled.</summary>
    public static Figure AfterBatch(double now, double part, double fill) => new InputCheck()
        .Within("level", now, ValidLevel, "mg/L").Within("level_of_fill", fill, ValidLevel, "mg/L").Within("part", part, Part, "")
        .Then(() => now + (part * (fill - now)));

    /// <summary>The level in mg/L after so many pool volumes of fill water ran in and mixed water over.</summary>
    public static Figure AfterOverflow(double now, double volumes, double fill) => new InputCheck()
        .Within("level", now, ValidLevel, "mg/L").Within("level_of_fill", fill, ValidLevel, "mg/L").Within("pool_volumes", volumes, Volumes, "")
        .Then(() => fill + ((now - fill) * Math.Exp(-volumes)));

    /// <summary>How many batches of one part each reach a target; a large pool is not emptied at once.</summary>
    /// <param name="now">Level now, mg/L.</param>
    /// <param name="target">Level wanted, mg/L.</param>
    /// <param name="fill">Level of the fill water, mg/L.</param>
    /// <param name="partEach">The part drained each time, above 0 and below 1.</param>
    public static Figure Batches(double now, double target, double fill, double partEach) =>
        Levels(now, target, fill).And(now == target || target != fill, () => NeverReached(target, fill)).Within("part", partEach, new(0.01, 0.99), "")
            .Then(() => now == target ? 0 : Math.Ceiling((Math.Log((target - fill) / (now - fill)) / Math.Log(1 - partEach)) - 1e-9));

    // Replacement moves a level towards that of the fill water and no further.
    private static InputCheck Levels(double now, double target, double fill) => new InputCheck()
        .Within("level", now, ValidLevel, "mg/L").Within("target", target, ValidLevel, "mg/L").Within("level_of_fill", fill, ValidLevel, "mg/L")
        .And(now == target || (now - target) / (now - fill) is >= 0 and <= 1, () => NeverReached(target, fill));

    private static Reason NeverReached(double target, double fill) => Reason.Of("replacement.never_reached", target, fill);
}
