using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>Finds values that leap away, and says a quarter of an hour later whether they came back.</summary>
internal static class LeapWatch
{
    /// <summary>The trial that the reading opens, or the one under way.</summary>
    public static LeapTrial? Of(ProbePlan probe, SignalHealth before, Instant at, double raw)
    {
        if (before.Trial is not null) return before.Trial;
        var tail = before.Tail;
        if (tail.Count == 0 || at - before.LastAt > SignalLimits.LeapWithin) return null;
        var limit = SignalLimits.LeapOf(probe.Measurand);
        if (Math.Abs(raw - tail.A) < limit && (tail.Count < 2 || Math.Abs(raw - tail.B) < limit)) return null;
        // What the noise of now does four times in a hundred thousand is no leap: a difference scatters by root 2.
        limit = Math.Max(limit, 6 * Math.Sqrt(before.Noise.Now));
        if (Math.Abs(raw - tail.A) >= limit) return new LeapTrial(at, tail.Newest(leaveOut: 0), tail.Rise, limit);
        return tail.Count > 1 && Math.Abs(raw - tail.B) >= limit ? new LeapTrial(at, tail.Newest(leaveOut: 1), tail.Rise, limit) : null;
    }

    /// <summary>Takes the reading into the trial; without a trial afterwards it is decided, and the reading counts again.</summary>
    public static SignalHealth Hear(ProbePlan probe, SignalHealth before, LeapTrial trial, Instant at, double raw)
    {
        trial = trial.Hear(at, raw);
        if (trial.IsBack) return before with { Trial = null, Spikes = trial.WasSpike ? before.Spikes + 1 : before.Spikes };
        if (!trial.IsOver(at)) return before with { Trial = trial };
        if (!trial.Stayed) return before with { Trial = null, Tail = default, BlindAt = at };
        return before with
        {
            Trial = null, Tail = default, LeaptAt = trial.At, LeaptBy = trial.By, AtSevenSince = IsNearSeven(probe, raw) ? trial.At : Instant.Never,
            Block = before.Block with { Sum = before.Block.Sum + (trial.By * before.Block.Count) }, Wander = before.Wander with { Ring = before.Wander.Ring.Shift(trial.By) },
        };
    }

    /// <summary>True for a pH near the isopotential point.</summary>
    public static bool IsNearSeven(ProbePlan probe, double raw) => probe.Measurand == Measurand.Ph && Math.Abs(raw - 7) <= SignalLimits.StaysAtSeven;

    /// <summary>True while the pool's water is still arriving after a standstill.</summary>
    public static bool IsSettling(ProbePlan probe, SignalHealth before, Instant at) => before.NoFlowAt.IsSet && at - before.NoFlowAt < SignalLimits.Settling + probe.SampleDelay;
}
