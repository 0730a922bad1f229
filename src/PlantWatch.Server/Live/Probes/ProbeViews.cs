using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>A probe as the page shows it: its number, how old and how sure it is, and whether to believe it.</summary>
internal static class ProbeViews
{
    public static ProbeView Of(CircuitState state, ProbePlan plan, ProbeState probe, Instant now, Wording words)
    {
        var last = probe.Last;
        var heard = last.Quality != Quality.NotReceived;
        var stale = heard && IsSilent(state, plan);
        var (standing, reasons) = Standing(probe, plan, stale, now, last);
        var due = CalibrationDue.Of(plan, state.Calibrations, probe.ExpectedSince);
        return new ProbeView(
            plan.Id, last.MeasuredAt.OrNull(), heard ? last.Raw : null, heard ? last.Value : null, heard && last.Quality.IsGood(), stale,
            standing, words.Say(reasons), probe.Trust.Bias.OrNull(), Believed(plan, probe, heard), probe.Trust.Verdict, probe.Trust.JudgedAt.OrNull(),
            probe.Trust.Taken, InForce(state, plan.Id, words), due, due < now, BenchViews.Work(probe.Work, now));
    }

    /// <summary>True when the probe has not spoken for longer than it should.</summary>
    public static bool IsSilent(CircuitState state, ProbePlan plan) => state.Alarms.TryGetValue(RuleBook.Silent.KeyFor(plan.Id), out var silent) && silent.Active;

    private static (Standing, IEnumerable<Reason>) Standing(ProbeState probe, ProbePlan plan, bool stale, Instant now, LastReading last)
    {
        if (stale) return (Core.Probes.Standing.Failure, [Reason.Of("probe.silent", plan.Name, (now - last.ReceivedAt).TotalMinutes)]);
        var worst = Standings.Worse(probe.Signal.Standing, probe.Trust.Standing);
        return (worst, Standings.IsWorse(probe.Signal.Standing, probe.Trust.Standing)
            ? probe.Signal.Reasons.Concat(probe.Trust.Reasons) : probe.Trust.Reasons.Concat(probe.Signal.Reasons));
    }

    // ORP is never turned into anything else, and a bias of an ORP line is a residual: what is shown is what was read.
    private static WithU? Believed(ProbePlan plan, ProbeState probe, bool heard) =>
        heard && probe.Trust.Bias.IsKnown && plan.Measurand != Measurand.Orp
            ? new WithU(probe.Last.Value - probe.Trust.Bias.Value, probe.Trust.Bias.Expanded)
            : null;

    private static CalibrationView? InForce(CircuitState state, string probeId, Wording words)
    {
        Calibration? newest = null;
        foreach (var c in state.Calibrations)
            if (c.ProbeId == probeId && c.Status is CalibrationStatus.Approved or CalibrationStatus.Adjusted && c.Kind != CalibrationKind.Verification && (newest is null || c.HoldsFrom >= newest.HoldsFrom))
                newest = c;
        return newest is null ? null : CircuitViews.Calibration(newest, state, words);
    }
}
