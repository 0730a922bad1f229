using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>The step of <see cref="SignalHealth"/>: follow the signal, then say what it looks like.</summary>
internal static class SignalWatch
{
    private static readonly ImmutableArray<Reason> NoFlow = [Reason.Of("signal.no_flow")];
    private static readonly ImmutableArray<Reason> Flushing = [Reason.Of("signal.flushing")];

    public static SignalHealth Next(ProbePlan probe, SignalHealth before, Instant at, double raw, bool? flow, double lag)
    {
        if (flow == false) return Stand(Silent(before, at, raw, lag) with { NoFlowAt = at }, Standing.CheckFunction, NoFlow);
        if (IsFlushing(probe, before, at)) return Stand(Silent(before, at, raw, lag), Standing.CheckFunction, Flushing);
        // A switch, a flow, a pressure follow what the plant does: their leaps are their job, and standing still is no fault.
        if (probe.Measurand.IsOfPlant()) return Stand(Silent(before, at, raw, lag), Standing.Good, []);
        return Judge(probe, Follow(probe, before, at, raw, lag), at);
    }

    public static SignalHealth Wait(ProbePlan probe, SignalHealth before, Instant watermark)
    {
        if (!before.LastAt.IsSet || watermark - before.LastAt <= SignalLimits.SilentAfter(probe.Every)) return before;
        // Said once with the time it went silent, not anew with every tick.
        if (before.Standing == Standing.Failure && before.Reasons is [{ Code: "signal.silent" }]) return before;
        return before with { Standing = Standing.Failure, Reasons = [Reason.Of("signal.silent", SignalLimits.SilentAfter(probe.Every).TotalSeconds)] };
    }

    private static bool IsFlushing(ProbePlan probe, SignalHealth before, Instant at) =>
        before.NoFlowAt.IsSet && at - before.NoFlowAt < SignalLimits.Flushing + probe.SampleDelay;

    // Standing water tells nothing of the probe: nothing is learned from it.
    private static SignalHealth Silent(SignalHealth before, Instant at, double raw, double lag) => before with
    {
        LastAt = at, LastRaw = raw, Trial = null, Tail = default(SignalTail).Push(raw), SameSince = at, LagSeconds = Lag(before, lag),
        BlindAt = at,
    };

    private static SignalHealth Follow(ProbePlan probe, SignalHealth before, Instant at, double raw, double lag)
    {
        if (!before.LastAt.IsSet || at - before.LastAt > SignalLimits.SilentAfter(probe.Every) || LeapWatch.IsSettling(probe, before, at)) return Silent(before, at, raw, lag);
        if (before.Spikes > 0) before = before with { Spikes = Faded(before.Spikes, at - before.LastAt) };
        if (LeapWatch.Of(probe, before, at, raw) is not { } trial) return Move(probe, before, at, raw, lag);
        var heard = LeapWatch.Hear(probe, before, trial, at, raw);
        return heard.Trial is null ? Move(probe, heard, at, raw, lag) : heard with { LastAt = at, LastRaw = raw, LagSeconds = Lag(before, lag) };
    }

    private static SignalHealth Move(ProbePlan probe, SignalHealth before, Instant at, double raw, double lag)
    {
        var block = SignalLimits.BlockOf(probe.Every);
        var closes = !before.Block.Since.IsSet || at - before.Block.Since >= block;
        var noise = before.Noise.Hear(raw, before.Tail);
        var moved = raw != before.LastRaw && before.SameSince.IsSet;
        var stayed = (at - before.SameSince).TotalSeconds;
        var weight = 1.0 / Math.Min(before.Changes + 1, SignalLimits.ChangesNeeded);
        return before with
        {
            LastAt = at, LastRaw = raw, Tail = before.Tail.Push(raw), Noise = closes ? noise.Close() : noise, SameSince = moved ? at : before.SameSince, LagSeconds = Lag(before, lag),
            UsuallySameSeconds = moved ? before.UsuallySameSeconds + (weight * (stayed - before.UsuallySameSeconds)) : before.UsuallySameSeconds,
            LongestSameSeconds = moved && !IsStuck(before, at) ? Math.Max(before.LongestSameSeconds, stayed) : before.LongestSameSeconds,
            Changes = moved ? Math.Min(before.Changes + 1, SignalLimits.ChangesNeeded) : before.Changes,
            Block = closes ? new(Start(before.Block, at, block), raw, 1) : before.Block with { Sum = before.Block.Sum + raw, Count = before.Block.Count + 1 },
            Wander = closes && before.Block.Count > 0 ? Close(probe, before, at, block) : before.Wander,
        };
    }

    // Blocks lie on a grid of their length, so that what was missed is counted in whole blocks.
    private static Instant Start(SignalBlock block, Instant at, TimeSpan length) =>
        block.Since.IsSet ? block.Since + (length * Math.Floor((at - block.Since) / length)) : at;

    private static SignalWander Close(ProbePlan probe, SignalHealth before, Instant at, TimeSpan length)
    {
        var (since, sum, count) = before.Block;
        var mean = count >= length / probe.Every / 2 ? sum / count : double.NaN;
        return WanderWatch.Next(before.Wander, since + length, mean, holes: (int)Math.Min((at - since) / length, BlockRing.Length + 1) - 1, IsPaced(probe), before.AtSevenSince.IsSet);
    }

    // A probe whose readings lie a quarter of an hour apart cannot show a response of half an hour; a thermometer in its pocket follows slowly by design.
    private static bool IsPaced(ProbePlan probe) => probe.Every <= SignalLimits.LeapWithin && probe.Measurand is (Measurand.Ph or Measurand.Orp or Measurand.FreeChlorine);

    private static SignalHealth Judge(ProbePlan probe, SignalHealth now, Instant at)
    {
        if (now.AtSevenSince.IsSet && !MaySitAtSeven(probe, now, at)) now = now with { AtSevenSince = Instant.Never };
        if (SitsAtSeven(now, at)) return Say(now, Standing.Failure, "signal.sits_at_seven", now.LastRaw);
        if (IsStuck(now, at)) return Say(now, Standing.Failure, "signal.stuck", Math.Round((at - now.SameSince).TotalSeconds));
        if (now.Wander.IsStill) return SayStill(probe, now);
        if (now.LeaptAt.IsSet && at - now.LeaptAt < LeapTrial.Lasts + SignalLimits.LeapShown) return Say(now, Standing.OutOfSpecification, "signal.leapt");
        if (probe.Every <= SignalLimits.LeapWithin && now.Noise.IsGrown(probe, Said(now, "signal.noisy")))
            return Say(now, Standing.MaintenanceRequired, "signal.noisy", Math.Sqrt(now.Noise.Now), Math.Sqrt(now.Noise.Usual));
        if (now.Spikes >= SignalLimits.SpikesBad) return Say(now, Standing.MaintenanceRequired, "signal.spikes");
        if (now.Wander.Pace.IsSlow) return Say(now, Standing.MaintenanceRequired, "signal.slow", Math.Round(now.Response.Value));
        if (now.LagSeconds < -SignalLimits.ClockAheadSeconds) return Say(now, Standing.MaintenanceRequired, "signal.clock_ahead", Math.Round(-now.LagSeconds));
        if (now.LagSeconds > SignalLimits.ClockBehindSeconds) return Say(now, Standing.MaintenanceRequired, "signal.clock_behind", Math.Round(now.LagSeconds));
        return Stand(now, Standing.Good, []);
    }

    // What leapt to seven and moves there as it always did is a probe that leapt, with its glass whole. Later it takes more to be believed again: a shock moves broken glass too.
    private static bool MaySitAtSeven(ProbePlan probe, SignalHealth now, Instant at)
    {
        var since = at - now.AtSevenSince;
        if (!LeapWatch.IsNearSeven(probe, now.LastRaw)) return false;
        return since < SignalLimits.MovesAgainFrom || now.Wander.Lively < now.Wander.Hours.Usual * (since < SignalLimits.SitsSurely ? SignalLimits.LivelyAgain : 1);
    }

    // Close to seven it is said soon; further off, with the probe's own offset, only once it is seen not to move.
    private static bool SitsAtSeven(SignalHealth now, Instant at) => now.AtSevenSince.IsSet
        && at - now.AtSevenSince >= (Math.Abs(now.LastRaw - 7) <= SignalLimits.AtSeven || Said(now, "signal.sits_at_seven") ? SignalLimits.AtSevenFor : SignalLimits.MovesAgainFrom);

    private static SignalHealth SayStill(ProbePlan probe, SignalHealth now) =>
        LeapWatch.IsNearSeven(probe, now.LastRaw)
            ? Say(now, Standing.Failure, "signal.sits_at_seven", now.LastRaw)
            : Say(now, Standing.OutOfSpecification, "signal.barely_moves", Math.Sqrt(now.Wander.Hours.Usual));

    private static bool IsStuck(SignalHealth now, Instant at)
    {
        if (now.Changes < SignalLimits.ChangesNeeded) return false;
        var same = at - now.SameSince;
        return same >= SignalLimits.StuckFrom && same.TotalSeconds >= SignalLimits.StuckTimes * now.UsuallySameSeconds
            && same.TotalSeconds >= SignalLimits.StuckTimesLongest * now.LongestSameSeconds;
    }

    private static double Faded(double spikes, TimeSpan by)
    {
        var faded = spikes * Math.Pow(2, -(by / SignalLimits.SpikesHalve));
        return faded < 0.01 ? 0 : faded;
    }

    // A back-fill comes late without the clock being wrong: the least lag counts, and it is forgotten slowly.
    private static double Lag(SignalHealth before, double lag) =>
        !before.LastAt.IsSet || lag <= before.LagSeconds ? lag : before.LagSeconds + ((lag - before.LagSeconds) * 0.01);

    // Said once: the figures of a standing are those at its start, so that it is no news with every reading.
    private static SignalHealth Say(SignalHealth health, Standing standing, string code, params ReadOnlySpan<Fact> facts) =>
        health.Standing == standing && Said(health, code) ? health : health with { Standing = standing, Reasons = [Reason.Of(code, facts)] };

    private static bool Said(SignalHealth health, string code) => health.Reasons is [{ } held] && held.Code == code;

    private static SignalHealth Stand(SignalHealth health, Standing standing, ImmutableArray<Reason> reasons) =>
        health.Standing == standing && health.Reasons.Length == reasons.Length && (reasons.IsEmpty || health.Reasons[0] == reasons[0])
            ? health
            : health with { Standing = standing, Reasons = reasons };
}
