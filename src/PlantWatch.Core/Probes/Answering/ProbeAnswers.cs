using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes.Answering;

/// <summary>Whom to believe and what to do next, for one probe by itself. The signal is heard first: a probe that sees no water agrees with nobody.</summary>
public static class ProbeAnswers
{
    /// <summary>The answer at <see cref="AnswerInput.Now"/>.</summary>
    public static ProbeAnswer Of(AnswerInput input) => OfSignal(input) ?? OfChecks(input, TrustLimits.Of(input.Probe.Measurand));

    private static ProbeAnswer? OfSignal(AnswerInput input) => input switch
    {
        { Heard: false } => Say(Believe.Tests, Reason.Of("probe_answer.never_heard"), NextStep.RestoreSignal, NextStep.Test),
        { Silent: true } => Say(Believe.Tests, Reason.Of("probe_answer.silent"), NextStep.RestoreSignal, NextStep.Test),
        { Signal.Standing: Standing.Failure } => Say(Believe.Tests, Reason.Of("probe_answer.signal_failed"), RemedyOf(input.Signal), NextStep.Test),
        { Signal.Standing: Standing.CheckFunction } => OtherWater(input.Signal),
        _ => null,
    };

    // Flow that is back, and a person at the probe, need nothing but time.
    private static ProbeAnswer OtherWater(SignalHealth signal) => CodeOf(signal) switch
    {
        "signal.worked_on" => Say(Believe.Tests, Reason.Of("probe_answer.worked_on"), NextStep.Wait, NextStep.TestAgain),
        "signal.flushing" => Say(Believe.Tests, Reason.Of("probe_answer.other_water"), NextStep.Wait),
        _ => Say(Believe.Tests, Reason.Of("probe_answer.other_water"), NextStep.RestoreFlow, NextStep.Test),
    };

    // Broken glass and wet cables show the isopotential point: no cleaning brings that back.
    private static NextStep RemedyOf(SignalHealth signal) => CodeOf(signal) switch
    {
        "signal.sits_at_seven" => NextStep.Replace,
        "signal.silent" => NextStep.RestoreSignal,
        _ => NextStep.Look,
    };

    private static string CodeOf(SignalHealth signal) => signal.Reasons is [var first, ..] ? first.Code : "";

    private static ProbeAnswer OfChecks(AnswerInput input, TrustLimits? limits)
    {
        var trust = input.Trust;
        if (limits is null) return Say(Believe.Neither, Reason.Of("probe_answer.signal_only"), SignalStep(input));
        if (trust.Pairs.IsEmpty) return Say(Believe.Neither, Reason.Of("probe_answer.untested"), NextStep.Test);
        if (limits.Learns && trust.Line is null) return Learning(trust, limits);
        if (IsAnew(trust)) return Say(Believe.Neither, Reason.Of("probe_answer.anew"), NextStep.Test);
        if (trust.TestOff.IsKnown && !IsFlagged(trust)) return TestsOff(input);
        if (trust.Verdict == Verdict.CheckSuspect) return TestAlone(input);
        return IsFlagged(trust) ? Flagged(input) : Agrees(input, limits);
    }

    // Whatever the tests said before, the work since may have mended it. A correction made from the checks themselves is no work on the probe.
    private static bool IsAnew(ProbeTrust trust) => (trust.Taken == 0 && trust.Verdict != Verdict.CheckSuspect)
        || (trust.Reasons is [{ Code: not "trust.corrected_since" } first, ..] && (first.Code.EndsWith("_since", StringComparison.Ordinal) || first.Code.EndsWith("_anew", StringComparison.Ordinal)));

    private static ProbeAnswer TestsOff(AnswerInput input) => Say(
        Believe.Probe, Reason.Of("probe_answer.tests_off", input.Trust.TestOff.Value, input.Trust.TestOff.Expanded, input.Probe.Measurand.Unit()), NextStep.OtherReagent);

    private static ProbeAnswer Learning(ProbeTrust trust, TrustLimits limits)
    {
        var sentence = Reason.Of("probe_answer.learning", trust.Taken, limits.ChecksNeeded, limits.DaysNeeded);
        return trust.Verdict == Verdict.CheckSuspect
            ? Say(Believe.Neither, sentence, NextStep.Repeat)
            : new(Believe.Neither, sentence, [new(NextStep.Test, Reason.Of("probe_step.test_to_learn"))]);
    }

    // Doubt never makes safe: whoever is believed, the repeat comes first and until then the worse of the two counts.
    private static ProbeAnswer TestAlone(AnswerInput input)
    {
        var trust = input.Trust;
        if (IsFlagged(trust)) return Say(Believe.Neither, Off("probe_answer.test_alone_probe_off", input), NextStep.Repeat, NextStep.Clean);
        return trust.Taken <= 1 || trust.Standing == Standing.Unknown
            ? Say(Believe.Neither, Reason.Of("probe_answer.first_differs"), NextStep.Repeat)
            : Say(Believe.Probe, Reason.Of("probe_answer.test_alone"), NextStep.Repeat);
    }

    private static ProbeAnswer Flagged(AnswerInput input)
    {
        var (line, high) = (input.Probe.Measurand == Measurand.Orp, input.Trust.Bias.Value > 0);
        var bias = input.Trust.Bias;
        var sentence = Reason.Of((line, high) switch
        {
            (true, true) => "probe_answer.above_line",
            (true, false) => "probe_answer.below_line",
            (false, true) => "probe_answer.reads_high",
            _ => "probe_answer.reads_low",
        }, Math.Abs(bias.Value), bias.Expanded, input.Probe.Measurand.Unit());
        return Say(Believe.Tests, sentence, Remedies(input));
    }

    private static NextStep[] Remedies(AnswerInput input) =>
        input.Waiting ? [NextStep.Decide, NextStep.TestAgain]
        : input.Advice.Why.Any(why => why.Code == "offer.slope_implausible") ? [NextStep.Replace, NextStep.TestAgain]
        : [NextStep.Clean, NextStep.TestAgain, input.Probe.Origin == Plans.SignalOrigin.PanelScaled ? NextStep.AdjustPanel : NextStep.Calibrate];

    private static ProbeAnswer Agrees(AnswerInput input, TrustLimits limits)
    {
        var now = Reconciliation.BiasAt(input.Probe, input.Trust, input.Now);
        // By now it may have drifted to the limit unseen.
        if (now.IsKnown && now.Expanded > limits.MaintenanceAt)
            return Say(Believe.Neither, Reason.Of("probe_answer.old", (input.Now - input.Trust.JudgedAt).TotalDays, now.Expanded, input.Probe.Measurand.Unit()), NextStep.Test);
        return input.Signal.Standing is Standing.MaintenanceRequired or Standing.OutOfSpecification
            ? Say(Believe.Either, Reason.Of("probe_answer.agrees_but_signal"), SignalStep(input), NextStep.TestAgain)
            : Say(Believe.Either, Off("probe_answer.agrees", input), input.Waiting ? NextStep.Decide : NextStep.Nothing);
    }

    // What has become slow is coated more often than broken.
    private static NextStep SignalStep(AnswerInput input) =>
        input.Signal.Standing is not (Standing.MaintenanceRequired or Standing.OutOfSpecification) ? NextStep.Nothing
        : CodeOf(input.Signal) == "signal.slow" ? NextStep.Clean : NextStep.Look;

    private static bool IsFlagged(ProbeTrust trust) => trust.Standing is Standing.MaintenanceRequired or Standing.OutOfSpecification;

    private static Reason Off(string code, AnswerInput input) =>
        Reason.Of(code, input.Trust.Bias.Value, input.Trust.Bias.Expanded, input.Probe.Measurand.Unit());

    private static ProbeAnswer Say(Believe whom, Reason sentence, params ReadOnlySpan<NextStep> steps)
    {
        var advised = ImmutableArray.CreateBuilder<AdvisedStep>(steps.Length);
        foreach (var step in steps) advised.Add(new(step, Reason.Of(CodeOf(step))));
        return new(whom, sentence, advised.MoveToImmutable());
    }

    private static string CodeOf(NextStep step) => step switch
    {
        NextStep.Test => "probe_step.test",
        NextStep.Repeat => "probe_step.repeat",
        NextStep.RestoreSignal => "probe_step.restore_signal",
        NextStep.RestoreFlow => "probe_step.restore_flow",
        NextStep.Look => "probe_step.look",
        NextStep.Clean => "probe_step.clean",
        NextStep.TestAgain => "probe_step.test_again",
        NextStep.Calibrate => "probe_step.calibrate",
        NextStep.AdjustPanel => "probe_step.adjust_panel",
        NextStep.Decide => "probe_step.decide",
        NextStep.Replace => "probe_step.replace",
        NextStep.OtherReagent => "probe_step.other_reagent",
        NextStep.Wait => "probe_step.wait",
        _ => "probe_step.nothing",
    };
}
