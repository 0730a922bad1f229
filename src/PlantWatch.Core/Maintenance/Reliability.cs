using PlantWatch.Core.Quantities;
using PlantWatch.Core.Statistics;

namespace PlantWatch.Core.Maintenance;

/// <summary>A failure of a thing: when it was seen and when it was mended.</summary>
/// <param name="SeenAt">When somebody first wrote it down.</param>
/// <param name="MendedAt">When it was done; never while it is not.</param>
/// <param name="Effect">What the signals said of the repair.</param>
public readonly record struct Failure(Instant SeenAt, Instant MendedAt, JobEffect Effect);

/// <summary>How often a thing failed in a time, and how long it was down.</summary>
/// <param name="Failures">Failures seen within the time.</param>
/// <param name="InService">The time less what it was down.</param>
/// <param name="Down">Time down, overlapping failures counted once.</param>
/// <param name="MeanTimeBetween">Time in service by failures; null when there was none.</param>
/// <param name="AtLeast">Lower end of the mean time between failures at 90 %, both sides together.</param>
/// <param name="AtMost">Its upper end; null when there was none: then no time is too long.</param>
/// <param name="MeanTimeToRepair">Time down a failure; null when there was none.</param>
/// <param name="IsRepeatOffender">It fails so often, or its repairs hold so badly, that mending it once more is not the answer.</param>
public sealed record Reliability(
    int Failures, TimeSpan InService, TimeSpan Down, TimeSpan? MeanTimeBetween, TimeSpan AtLeast, TimeSpan? AtMost, TimeSpan? MeanTimeToRepair, bool IsRepeatOffender)
{
    /// <summary>Failures in <see cref="OffenderWithin"/> that make a repeat offender: three in 90 days (common practice).</summary>
    public const int OffenderFailures = 3;

    /// <summary>The time they are counted in.</summary>
    public static readonly TimeSpan OffenderWithin = TimeSpan.FromDays(90);

    /// <summary>
    /// The figures of one thing. A constant rate of failure is assumed: the mean is time by count, and its interval is that of a Poisson count
    /// (the usual estimate of a time-ended test; Garwood's interval).
    /// </summary>
    /// <param name="failures">Its failures, in any order; those seen outside the time are not counted.</param>
    /// <param name="from">Begin of the time, when the plant knew of the thing.</param>
    /// <param name="to">Its end: now.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is empty.</exception>
    public static Reliability Of(IEnumerable<Failure> failures, Instant from, Instant to)
    {
        ArgumentNullException.ThrowIfNull(failures);
        if (to <= from) throw new ArgumentOutOfRangeException(nameof(to), to, "the time is empty");
        var all = failures.Where(f => f.SeenAt < to).OrderBy(f => f.SeenAt).ToArray();
        var seen = all.Where(f => f.SeenAt >= from).ToArray();
        var down = DownTime(all, from, to);
        var service = to - from - down;
        var (low, high) = PoissonCount.Interval(seen.Length, 0.9);
        return new(
            seen.Length, service, down, seen.Length == 0 ? null : service / seen.Length, service / high, seen.Length == 0 ? null : service / low,
            seen.Length == 0 ? null : down / seen.Length, Offends(seen, to));
    }

    private static TimeSpan DownTime(Failure[] inOrder, Instant from, Instant to)
    {
        var (down, until) = (TimeSpan.Zero, from);
        foreach (var failure in inOrder)
        {
            var (begin, end) = (Instant.Later(failure.SeenAt, until), Instant.Earlier(failure.MendedAt.IsSet ? failure.MendedAt : to, to));
            if (end <= begin) continue;
            down += end - begin;
            until = end;
        }

        return down;
    }

    private static bool Offends(Failure[] seen, Instant to)
    {
        var late = seen.Where(f => f.SeenAt >= to - OffenderWithin).ToArray();
        return late.Length >= OffenderFailures || late.Count(f => f.Effect == JobEffect.DidNotHelp) >= 2;
    }
}
