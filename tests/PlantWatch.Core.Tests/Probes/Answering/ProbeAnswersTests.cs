using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Answering;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Probes.Answering;

/// <summary>Which to believe, the probe or the test, and what to do now.</summary>
public sealed class ProbeAnswersTests
{
    [Fact]
    public void A_probe_nobody_has_tested_is_believed_by_nobody_and_a_test_is_wanted() => Is(Of(new TestPool(Measurand.Ph)), Believe.Neither, "probe_answer.untested", NextStep.Test);

    [Fact]
    public void A_probe_that_agrees_with_its_tests_leaves_nothing_to_do() => Is(Of(Healthy()), Believe.Either, "probe_answer.agrees", NextStep.Nothing);

    [Fact]
    public void A_probe_that_reads_high_by_all_tests_is_cleaned_tested_again_and_only_then_calibrated() =>
        Is(Of(Drifted(8.0)), Believe.Tests, "probe_answer.reads_high", NextStep.Clean, NextStep.TestAgain, NextStep.Calibrate);

    [Fact]
    public void A_low_probe_on_the_panel_is_put_right_on_the_panel() =>
        Is(Of(Drifted(6.8, SignalOriginPanel)), Believe.Tests, "probe_answer.reads_low", NextStep.Clean, NextStep.TestAgain, NextStep.AdjustPanel);

    [Fact]
    public void A_calibration_that_waits_is_decided_first() => Assert.Equal(NextStep.Decide, Of(Drifted(8.0), waiting: true).Steps[0].Kind);

    [Fact]
    public void A_slope_no_electrode_may_have_asks_for_another_electrode()
    {
        var worn = new CalibrationAdvice(null, [Reason.Of("offer.slope_implausible", 1.4, 0.95, 1.18)]);
        Assert.Equal(NextStep.Replace, Of(Drifted(8.0), advice: worn).Steps[0].Kind);
    }

    [Fact]
    public void A_test_that_stands_alone_is_repeated_and_the_probe_believed_meanwhile()
    {
        var pool = Healthy();
        pool.Check(100, test: 6.95, probe: 7.41);
        Is(Of(pool, 101), Believe.Probe, "probe_answer.test_alone", NextStep.Repeat);
    }

    [Fact]
    public void A_bad_lot_of_reagent_is_told_by_name_and_the_probe_believed()
    {
        var pool = Healthy();
        Is(Of(pool, trust: pool.Trust with { TestOff = new(0.3, 0.05) }), Believe.Probe, "probe_answer.tests_off", NextStep.OtherReagent);
    }

    [Fact]
    public void A_first_test_that_differs_leaves_both_in_doubt()
    {
        var pool = new TestPool(Measurand.Ph);
        pool.Check(0, test: 6.9, probe: 7.7);
        Is(Of(pool, 1), Believe.Neither, "probe_answer.first_differs", NextStep.Repeat);
    }

    [Fact]
    public void An_orp_probe_is_not_judged_while_its_line_is_being_learned()
    {
        var pool = new TestPool(Measurand.Orp);
        for (var i = 0; i < 3; i++) pool.CheckOrp(i * 8, 1.0, 7.3, 740);
        Is(Of(pool, 17), Believe.Neither, "probe_answer.learning", NextStep.Test);
    }

    [Fact]
    public void The_signal_is_heard_before_the_tests()
    {
        var pool = Healthy();
        Is(Of(pool, heard: false), Believe.Tests, "probe_answer.never_heard", NextStep.RestoreSignal, NextStep.Test);
        Is(Of(pool, silent: true), Believe.Tests, "probe_answer.silent", NextStep.RestoreSignal, NextStep.Test);
        Is(Of(pool, signal: new() { Standing = Standing.CheckFunction, Reasons = [Reason.Of("signal.no_flow")] }), Believe.Tests, "probe_answer.other_water", NextStep.RestoreFlow, NextStep.Test);
        Is(Of(pool, signal: new() { Standing = Standing.CheckFunction, Reasons = [Reason.Of("signal.worked_on")] }), Believe.Tests, "probe_answer.worked_on", NextStep.Wait, NextStep.TestAgain);
        Is(Of(pool, signal: new() { Standing = Standing.Failure, Reasons = [Reason.Of("signal.sits_at_seven", 7.0)] }), Believe.Tests, "probe_answer.signal_failed", NextStep.Replace, NextStep.Test);
        Is(Of(pool, signal: new() { Standing = Standing.MaintenanceRequired, Reasons = [Reason.Of("signal.slow", 12.0)] }), Believe.Either, "probe_answer.agrees_but_signal", NextStep.Clean, NextStep.TestAgain);
        Is(Of(pool, signal: new() { Standing = Standing.MaintenanceRequired, Reasons = [Reason.Of("signal.spikes")] }), Believe.Either, "probe_answer.agrees_but_signal", NextStep.Look, NextStep.TestAgain);
    }

    [Fact]
    public void Agreement_does_not_last_for_ever() => Is(Of(Healthy(), 24 * 3000), Believe.Neither, "probe_answer.old", NextStep.Test);

    [Fact]
    public void What_no_test_judges_is_watched_by_its_signal_alone() => Is(Of(new TestPool(Measurand.Conductivity)), Believe.Neither, "probe_answer.signal_only", NextStep.Nothing);

    private const Core.Plans.SignalOrigin SignalOriginPanel = Core.Plans.SignalOrigin.PanelScaled;

    private static TestPool Healthy()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 12; i++) pool.Check(i * 8, test: 7.40 + (i % 3 * 0.02), probe: 7.42);
        return pool;
    }

    // Six tests in a row that all find the probe as far off.
    private static TestPool Drifted(double probe, Core.Plans.SignalOrigin origin = Core.Plans.SignalOrigin.Raw)
    {
        var pool = new TestPool(Measurand.Ph, origin);
        for (var i = 0; i < 12; i++) pool.Check(i * 8, test: 7.40 + (i % 3 * 0.02), probe: probe);
        return pool;
    }

    private static ProbeAnswer Of(
        TestPool pool, double hour = 90, bool heard = true, bool silent = false, bool waiting = false, SignalHealth? signal = null, CalibrationAdvice? advice = null,
        ProbeTrust? trust = null) => ProbeAnswers.Of(new()
    {
        Probe = pool.Probe, Trust = trust ?? pool.Trust, Signal = signal ?? new() { Standing = Standing.Good },
        Advice = advice ?? CalibrationOffers.For(pool.Probe, pool.Trust, pool.Calibrations, TestPool.After(hour)),
        Heard = heard, Silent = silent, Waiting = waiting, Now = TestPool.After(hour),
    });

    private static void Is(ProbeAnswer answer, Believe whom, string sentence, params NextStep[] steps)
    {
        Assert.Equal((whom, sentence), (answer.Whom, answer.Sentence.Code));
        Assert.Equal(steps, answer.Steps.Select(s => s.Kind));
    }
}
