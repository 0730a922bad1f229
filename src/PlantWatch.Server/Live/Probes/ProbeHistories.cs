using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Answering;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Makes the past of a probe from the state and from what the record keeps of its judgements. Pure: nothing is looked up.</summary>
internal static class ProbeHistories
{
    /// <summary>The probe with its past.</summary>
    /// <param name="state">The circuit.</param>
    /// <param name="index">Which of its probes.</param>
    /// <param name="now">How it stands.</param>
    /// <param name="newest">Judgements for the curve, newest first.</param>
    /// <param name="page">Judgements for the list, newest first.</param>
    /// <param name="older">Where the list goes on.</param>
    public static ProbeHistory Of(CircuitState state, int index, ProbeView now, IReadOnlyList<Judged> newest, IReadOnlyList<Judged> page, Instant? older)
    {
        var (plan, probe) = (state.Plan.Probes[index], state.Probes[index]);
        ImmutableArray<Calibration> calibrations = [.. state.Calibrations.Where(c => c.ProbeId == plan.Id)];
        var advice = CalibrationOffers.For(plan, probe.Trust, calibrations, state.Watermark);
        var why = Reader.Words.Say(advice.Why);
        var doubts = new Doubts(probe.Trust, newest);
        return new ProbeHistory(
            SiteApi.Probe(plan), now, Answer(state, plan, probe, now, advice, calibrations), [.. page.Select(JudgementViews.Of)], older, CalibrationApi.Of(state, plan.Id),
            advice.Offer is { } o ? new OfferedCalibration(o.Kind, o.Slope, o.Offset, o.Checks, why) : null, why)
        {
            Bias = [.. newest.Where(j => j.Judgement.Bias.IsKnown).Reverse().Select(j => Point(j, doubts))],
            Ahead = Ahead(plan, probe.Trust, Now(state, probe)),
            Limits = TrustLimits.Of(plan.Measurand),
            Learned = LearnedViews.Of(plan, probe.Trust, calibrations, [.. newest.Where(j => j.Judgement.Probe.IsKnown && !doubts.Of(j)).Select(j => j.SampledAt)]),
            Slope = probe.Trust.Slope.OrNull(),
            TestOff = probe.Trust.TestOff.OrNull(),
            Signal = SignalViews.Of(probe.Signal),
            Doubted = [.. newest.Where(doubts.Of).Select(j => j.Judgement.CheckId)],
            TakenIn = [.. newest.Where(j => j.Judgement.Probe.IsKnown && !doubts.Of(j)).Select(j => j.Judgement.CheckId)],
            FlowSwitchId = plan.FlowSwitchId,
        };
    }

    // The sample of the newest check may be a moment ahead of the readings.
    private static Instant Now(CircuitState state, ProbeState probe) => probe.Trust.JudgedAt > state.Watermark ? probe.Trust.JudgedAt : state.Watermark;

    private static ProbeAnswerView Answer(
        CircuitState state, ProbePlan plan, ProbeState probe, ProbeView now, CalibrationAdvice advice, ImmutableArray<Calibration> calibrations)
    {
        var answer = ProbeAnswers.Of(new()
        {
            Probe = plan,
            Signal = probe.Signal,
            Trust = probe.Trust,
            Advice = advice,
            Heard = probe.Last.Quality != Quality.NotReceived,
            Silent = now.Stale,
            Waiting = calibrations.Any(c => c.Status == CalibrationStatus.Proposed),
            Now = Now(state, probe),
        });
        return new(answer.Whom, Reader.Words.Say(answer.Sentence), [.. answer.Steps.Select(s => new AdvisedStepView(s.Kind, Reader.Words.Text(s.Text)))]);
    }

    private static BiasPoint Point(Judged j, Doubts doubts) =>
        new(j.Judgement.CheckId, j.SampledAt, j.Judgement.Bias.Value, j.Judgement.Bias.Expanded, doubts.Of(j));

    private static BiasAheadView? Ahead(ProbePlan plan, ProbeTrust trust, Instant now)
    {
        var ahead = BiasAhead.Of(plan, trust, trust.Drift, now);
        return ahead.Points.IsEmpty ? null : new(
            [.. ahead.Points.Select(p => new BiasPoint(Guid.Empty, p.At, p.Bias.Value, p.Bias.Expanded, false))], trust.Drift.OrNull(),
            ahead.Outlook.Earliest, ahead.Outlook.Likely, ahead.Outlook.Latest, Reader.Words.Say(ahead.Outlook.Why));
    }
}
