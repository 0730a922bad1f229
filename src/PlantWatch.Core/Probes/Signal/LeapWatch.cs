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
        if (tail.Count == 0 || at - before.LastAt > SignalLimits.LeapWithin || IsSettling(before, at)) return null;
        var limit = SignalLimits.LeapOf(probe.Measurand);
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
        return before with { Trial = null, Tail = default, LeaptAt = trial.At, LeaptBy = trial.By, AtSevenSince = IsAtSeven(probe, raw) ? trial.At : Instant.Never };
    }

    /// <summary>True for a pH near the isopotential point.</summary>
    public static bool IsAtSeven(ProbePlan probe, double raw) => probe.Measurand == Measurand.Ph && Math.Abs(raw - 7) <= SignalLimits.AtSeven;

    private static bool IsSettling(SignalHealth before, Instant at) => before.NoFlowAt.IsSet && at - before.NoFlowAt < SignalLimits.Settling;
}
