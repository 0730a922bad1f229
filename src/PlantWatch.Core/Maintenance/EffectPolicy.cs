using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Maintenance;

/// <summary>Whether a job helped, from what the plant's signals do after it. A repair is confirmed by its effect and by nobody's word.</summary>
/// <remarks>The times are common practice: a pool goes through its whole round of sun, bathers and night in a day, and what was mended shows in that round or not at all.</remarks>
public static class EffectPolicy
{
    /// <summary>Quiet that proves a repair, and the time in which a sign must have become quiet at all.</summary>
    public static readonly TimeSpan Proof = TimeSpan.FromHours(24);

    /// <summary>Quiet after which a sign that speaks again has come back, and did not merely flicker.</summary>
    public static readonly TimeSpan Settled = TimeSpan.FromHours(1);

    /// <summary>Time after which nothing is waited for any longer.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromDays(7);

    /// <summary>The watch as it goes on, and what it says.</summary>
    /// <param name="watch">A job; one that is not done says nothing.</param>
    /// <param name="hearing">What its signs say now.</param>
    /// <param name="now">Now.</param>
    public static (JobWatch Watch, JobEffect Effect) Look(JobWatch watch, Hearing hearing, Instant now)
    {
        ArgumentNullException.ThrowIfNull(watch);
        if (!watch.DoneAt.IsSet) return (watch, JobEffect.Unknown);
        return hearing switch
        {
            Hearing.Speaks => (watch with { QuietSince = Instant.Never }, CameBack(watch, now) || now - watch.DoneAt >= Proof ? JobEffect.DidNotHelp : JobEffect.Unknown),
            Hearing.Quiet => Quiet(watch with { QuietSince = watch.QuietSince.IsSet ? watch.QuietSince : now }, now),
            _ => (watch with { QuietSince = Instant.Never }, now - watch.DoneAt >= Longest ? JobEffect.CannotTell : JobEffect.Unknown),
        };
    }

    private static bool CameBack(JobWatch watch, Instant now) => watch.QuietSince.IsSet && now - watch.QuietSince >= Settled;

    // Quiet of what never spoke proves nothing.
    private static (JobWatch, JobEffect) Quiet(JobWatch watch, Instant now) =>
        (watch, now - watch.QuietSince < Proof ? JobEffect.Unknown : watch.Signs.IsEmpty ? JobEffect.CannotTell : JobEffect.Helped);
}
