using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Dosing.Supervision.Live;

/// <summary>A pump began to do something else.</summary>
/// <param name="At">When.</param>
/// <param name="Activity">What it does from then on.</param>
public readonly record struct PumpTurn(Instant At, PumpActivity Activity);

/// <summary>Strokes a minute of a pump that tells them by a running counter, or does not tell them at all and only says that it runs.</summary>
/// <remarks>
/// A controller that doses in pulses does not leap with every pulse: what counts is the mean over whole cycles. How long a cycle is, the pump shows by its starts.
/// What a counter rose by is spread over the minutes that follow, as many as it took; nothing is lost, and nothing counted twice.
/// </remarks>
public sealed record StrokeBook
{
    // No pulse controller has a longer cycle (common practice: one to four minutes).
    private const int LongestCycle = 10;

    // Part of a minute by which a cycle of whole minutes may be heard longer than it is, six seconds of messages on their way; and by how much a cycle is forgotten with each start, so that one
    // that is a fifth longer is believed after some ten (our choice, because starts come in seconds late and never early).
    private const double Jitter = 0.1, Forgets = 1.02;

    // A counter that was not heard for longer tells nothing of single minutes.
    private static readonly TimeSpan LongestSilence = TimeSpan.FromHours(1);

    /// <summary>What it did of late, oldest first.</summary>
    public ImmutableArray<PumpTurn> Turns { get; init; } = [];

    /// <summary>Share of the last minutes that it ran, newest first.</summary>
    public ImmutableArray<double> Shares { get; init; } = [];

    /// <summary>When it last started.</summary>
    public Instant StartedAt { get; init; }

    /// <summary>From one start to the next in seconds; a shorter one counts at once, a longer one by and by.</summary>
    public double Cycle { get; init; }

    /// <summary>When the counter was last heard.</summary>
    public Instant CountedAt { get; init; }

    /// <summary>What it said.</summary>
    public double Count { get; init; }

    /// <summary>Strokes that are not given to a minute yet.</summary>
    public double Owed { get; init; }

    /// <summary>Minutes they are for.</summary>
    public double OwedMinutes { get; init; }

    /// <summary>The pump said what it does.</summary>
    public StrokeBook Turn(PumpActivity activity, Instant at)
    {
        if (Turns is [.., var last] && (last.Activity == activity || at <= last.At)) return this;
        var next = this with { Turns = Turns.Add(new(at, activity)) };
        return activity != PumpActivity.Running ? next : next with { StartedAt = at, Cycle = StartedAt.IsSet ? Seen((at - StartedAt).TotalSeconds) : 0 };
    }

    /// <summary>The counter said how many strokes there were.</summary>
    public StrokeBook Counted(double count, Instant at)
    {
        var next = this with { Count = count, CountedAt = at };
        if (!CountedAt.IsSet || at - CountedAt > LongestSilence || StrokeRise.Of(Count, count, at - CountedAt) is not { } rose) return next with { Owed = 0, OwedMinutes = 0 };
        return next with { Owed = Owed + rose, OwedMinutes = OwedMinutes + (at - CountedAt).TotalMinutes };
    }

    /// <summary>The strokes of a minute by the counter; null when they are not told.</summary>
    public (StrokeBook Book, double? Strokes) ByCount()
    {
        if (OwedMinutes < 0.5) return (this, null);
        var (rate, took) = (Owed / OwedMinutes, Math.Min(1, OwedMinutes));
        // What stands behind for minutes that nobody asked for is let go.
        var left = Math.Min(OwedMinutes - took, LongestSilence.TotalMinutes);
        return (this with { Owed = rate * left, OwedMinutes = left }, rate);
    }

    /// <summary>The strokes of the minute that began then, by how much of it and of the cycle it is in the pump ran; null when that is not known.</summary>
    public (StrokeBook Book, double? Strokes) ByRunning(Instant from)
    {
        var to = from + HeardMinute.Span;
        var share = Share(from, to);
        var kept = this with { Turns = From(to), Shares = share is { } s ? [s, .. Shares.Take(LongestCycle - 1)] : [] };
        return (kept, share is null ? null : DosedBy.StrokesPerMinute * kept.Shares.Take(Window).Average());
    }

    private int Window => Math.Clamp((int)Math.Ceiling((Cycle / 60) - Jitter), 1, LongestCycle);

    // A controller that wants little leaves cycles out: the shortest time between two starts is its cycle.
    private double Seen(double seconds) => seconds > 60 * LongestCycle ? Cycle : Cycle <= 0 ? seconds : Math.Min(seconds, Forgets * Cycle);

    private double? Share(Instant from, Instant to)
    {
        var (ran, known) = (0.0, 0.0);
        for (var i = 0; i < Turns.Length; i++)
        {
            var (begins, ends) = (Instant.Later(from, Turns[i].At), i + 1 < Turns.Length ? Instant.Earlier(to, Turns[i + 1].At) : to);
            if (ends <= begins || Turns[i].Activity is PumpActivity.Unknown or PumpActivity.Fault) continue;
            known += (ends - begins).TotalSeconds;
            if (Turns[i].Activity == PumpActivity.Running) ran += (ends - begins).TotalSeconds;
        }

        return known >= 30 ? ran / known : null;
    }

    // What it does since before then still counts.
    private ImmutableArray<PumpTurn> From(Instant at)
    {
        var first = 0;
        while (first + 1 < Turns.Length && Turns[first + 1].At <= at) first++;
        return first == 0 ? Turns : Turns.RemoveRange(0, first);
    }
}
