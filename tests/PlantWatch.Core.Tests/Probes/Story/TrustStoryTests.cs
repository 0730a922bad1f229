using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using Xunit.Abstractions;

namespace PlantWatch.Core.Tests.Probes.Story;

/// <summary>Each answer by a story made for it: what is wrong is known, and the story has to find it.</summary>
public sealed class TrustStoryTests(ITestOutputHelper output)
{
    private static readonly ToldPool Sound = new() { OrpRead = ToldPool.OrpAt(7.4, 1.5) };

    [Fact]
    public void When_all_agree_there_is_nothing_to_do()
    {
        var story = Tell(Sound);
        Assert.Equal(StoryAnswer.AllAgree, story.Answer);
        Assert.True(story.Weight >= StoryWeight.Likely, $"{story.Probability}");
        Assert.Empty(story.Steps);
        Assert.Empty(story.Plausible);
    }

    [Fact]
    public void A_pH_test_that_takes_the_ORP_off_its_line_while_the_probe_keeps_it_there_is_suspect()
    {
        // The water is 7.3 and the test says 7.9: with 7.9 less than half the chlorine would be hypochlorous acid, and the ORP does not see that.
        var story = Tell(Sound with { PhTest = 7.9, PhRead = 7.3, OrpRead = ToldPool.OrpAt(7.3, 1.5) });
        Assert.Equal((StoryAnswer.TestSuspect, StoryPart.PhTest, "main-ph"), (story.Answer, story.Part, story.ProbeId));
        Assert.Contains(story.Signs, s => s.What.Code == "story.orp_fits_the_probe" && s is { Part: StoryPart.PhTest, Ratio: > 1.5 });
        Assert.Equal(StoryAct.RepeatTest, story.Steps[0].Act);
        Assert.Contains(story.Steps[0].What, r => r.Code == "story.tells_repeat" && r.Facts[0].Number == 7.9);
    }

    [Fact]
    public void A_pH_probe_that_takes_the_ORP_off_its_line_while_the_test_keeps_it_there_is_off()
    {
        var story = Tell(Sound with { PhTest = 7.3, PhRead = 7.9, OrpRead = ToldPool.OrpAt(7.3, 1.5), PhChecks = Standing.OutOfSpecification, PhBias = 0.5 });
        Assert.Equal((StoryAnswer.ProbeDrifts, StoryPart.PhProbe), (story.Answer, story.Part));
        Assert.Contains(story.Signs, s => s.What.Code == "story.orp_fits_the_test" && s is { Part: StoryPart.PhProbe, Ratio: > 1.5 });
        Assert.Contains(story.Steps, s => s.Act == StoryAct.Clean);
        Assert.Contains(story.Steps, s => s.Act == StoryAct.CheckInBuffer);
    }

    [Fact]
    public void Without_a_witness_a_test_and_a_probe_that_differ_once_leave_it_open()
    {
        var story = Tell(new ToldPool { PhTest = 7.7, ChlorineTest = null, PhRead = 7.3 });
        Assert.Equal(StoryAnswer.CannotTell, story.Answer);
        Assert.Equal(StoryAct.RepeatTest, story.Steps[0].Act);
        // Doubt never makes safe: both ends stay in view.
        var ph = Assert.Single(story.Plausible);
        Assert.True(ph.Low < 7.42 && ph.High > 7.58, $"{ph}");
    }

    [Fact]
    public void The_same_probe_with_many_checks_against_it_is_off()
    {
        var story = Tell(new ToldPool { PhTest = 7.7, ChlorineTest = null, PhRead = 7.3, PhChecks = Standing.OutOfSpecification, PhBias = -0.4 });
        Assert.Equal((StoryAnswer.ProbeDrifts, StoryPart.PhProbe), (story.Answer, story.Part));
    }

    [Fact]
    public void A_probe_that_many_checks_surely_call_wrong_is_not_left_open_by_a_gap_that_is_just_beyond_its_limit()
    {
        // The figures of a slow drift: 0.21 with a standard uncertainty of 0.05, the newest test 0.25 below; ORP can live with either pH.
        var story = Tell(Sound with { PhTest = 7.35, PhRead = 7.6, ChlorineTest = 1.05, OrpRead = ToldPool.OrpAt(7.45, 1.05), PhChecks = Standing.MaintenanceRequired, PhBias = 0.21 });
        Assert.Equal((StoryAnswer.ProbeDrifts, StoryPart.PhProbe), (story.Answer, story.Part));
    }

    [Fact]
    public void A_doubted_nil_that_no_probe_speaks_to_has_no_range_for_it_may_be_bleached()
    {
        var story = Tell(new ToldPool { ChlorineTest = 0, ChlorineSuspect = true });
        Assert.Equal(StoryAnswer.CannotTell, story.Answer);
        Assert.Contains(story.Says, r => r.Code == "story.nil_or_bleached");
        Assert.DoesNotContain(story.Plausible, p => p.Measurand == Measurand.FreeChlorine);
        Assert.Equal(StoryAct.Dilute, story.Steps[0].Act);
    }

    [Fact]
    public void A_range_reaches_down_to_what_the_test_read()
    {
        var story = Tell(Sound with { ChlorineTest = 0, ChlorineSuspect = true, ChlorineRead = 6, OrpRead = ToldPool.OrpAt(7.4, 6) });
        Assert.Equal(0, story.Plausible.First(p => p.Measurand == Measurand.FreeChlorine).Low);
    }

    [Fact]
    public void When_the_others_agree_a_probe_that_was_not_compared_is_named()
    {
        var flushing = SignalHealth.New with { Standing = Standing.CheckFunction, Reasons = [Reason.Of("signal.flushing")] };
        var story = Tell(Sound with { PhRead = null, PhSignal = flushing, PhTrust = _ => ProbeTrust.New });
        Assert.Equal(StoryAnswer.AllAgree, story.Answer);
        Assert.Contains(story.Says, r => r.Code == "story.probe_unheard");
        // Flow that is back needs nothing but time.
        Assert.DoesNotContain(story.Steps, s => s.Act == StoryAct.RestoreFlow);
    }

    [Fact]
    public void Nil_chlorine_with_a_high_ORP_and_a_chlorine_probe_that_saw_nothing_is_bleaching_and_asks_for_dilution()
    {
        var story = Tell(Sound with { ChlorineTest = 0, ChlorineSuspect = true, ChlorineRead = 6, OrpRead = ToldPool.OrpAt(7.4, 6) });
        Assert.Equal((StoryAnswer.TestSuspect, StoryPart.ChlorineTest, StoryWeight.Strong), (story.Answer, story.Part, story.Weight));
        Assert.Equal(StoryAct.Dilute, story.Steps[0].Act);
        Assert.Contains(story.Plausible, p => p.Measurand == Measurand.FreeChlorine && p.High > 5);
    }

    [Fact]
    public void Nil_chlorine_that_ORP_and_chlorine_probe_see_too_is_an_empty_pool()
    {
        var story = Tell(Sound with { ChlorineTest = 0.1, ChlorineSuspect = true, ChlorineRead = 0.12, OrpRead = ToldPool.OrpAt(7.4, 0.11) });
        Assert.NotEqual(StoryAnswer.TestSuspect, story.Answer);
        Assert.NotEqual(StoryAnswer.ProbeDrifts, story.Answer);
    }

    [Fact]
    public void Water_that_moved_under_test_and_probe_alike_really_changed()
    {
        var before = new PairedCheck(TimeOrderedId.Derive(ToldPool.Sampled, "before"), ToldPool.Sampled - TimeSpan.FromHours(5), new(7.4, 0.01), new(7.42, 0.08), false);
        var story = Tell(Sound with { PhTest = 7.9, PhRead = 7.88, PhSuspect = true, OrpRead = ToldPool.OrpAt(7.88, 1.5), PhBefore = before });
        Assert.Equal(StoryAnswer.WaterChanged, story.Answer);
        Assert.Contains(story.Says, r => r.Code == "story.moved_ph");
        Assert.Equal(StoryAct.LookAtPump, story.Steps[0].Act);
    }

    [Fact]
    public void A_test_against_a_probe_that_was_found_right_this_morning_and_did_not_leap_since_is_suspect_without_any_ORP()
    {
        var before = new PairedCheck(TimeOrderedId.Derive(ToldPool.Sampled, "before"), ToldPool.Sampled - TimeSpan.FromHours(5), new(7.41, 0.01), new(7.42, 0.08), false);
        var apart = new ToldPool { PhTest = 7.9, ChlorineTest = null, PhBefore = before };
        Assert.Equal((StoryAnswer.TestSuspect, StoryPart.PhTest), (Tell(apart).Answer, Tell(apart).Part));
        // Not when the cell stood still meanwhile: a leap could have passed unseen.
        var blind = SignalHealth.New with { Standing = Standing.Good, BlindAt = ToldPool.Sampled - TimeSpan.FromHours(2) };
        Assert.True(Of(Tell(apart with { PhSignal = blind }), StoryPart.PhProbe) > 2 * Of(Tell(apart), StoryPart.PhProbe));
    }

    [Fact]
    public void Nil_chlorine_beside_a_chlorine_probe_alone_asks_for_dilution()
    {
        var story = Tell(new ToldPool { ChlorineTest = 0, ChlorineRead = 1.57 });
        Assert.Equal((StoryAnswer.TestSuspect, StoryPart.ChlorineTest), (story.Answer, story.Part));
        Assert.Equal(StoryAct.Dilute, story.Steps[0].Act);
        // However unlikely: until the repeat the pool may be empty.
        Assert.True(Assert.Single(story.Plausible) is { Measurand: Measurand.FreeChlorine, Low: < 0.1, High: > 1.4 });
    }

    [Fact]
    public void A_probe_known_to_read_high_is_not_blamed_for_a_test_that_reads_higher_still()
    {
        var apart = new ToldPool { PhTest = 7.9, ChlorineTest = null, PhRead = 7.54, PhChecks = Standing.MaintenanceRequired, PhBias = 0.16 };
        Assert.Equal(StoryPart.PhTest, Tell(apart).Explanations[0].Part);
        Assert.DoesNotContain(Tell(apart).Signs, s => s.What.Code == "story.sign_checks_call_it_wrong");
        Assert.Equal(StoryAnswer.ProbeDrifts, Tell(apart with { PhTest = 7.15 }).Answer);
    }

    [Fact]
    public void A_leap_is_no_water()
    {
        var apart = new ToldPool { PhTest = 7.4, ChlorineTest = null, PhRead = 7.75 };
        var still = Tell(apart);
        var leapt = Tell(apart with { PhSignal = SignalHealth.New with { Standing = Standing.Good, LeaptAt = ToldPool.Sampled - TimeSpan.FromHours(1), LeaptBy = 0.35 } });
        Assert.NotEqual(StoryAnswer.ProbeDrifts, still.Answer);
        Assert.Equal((StoryAnswer.ProbeDrifts, StoryPart.PhProbe), (leapt.Answer, leapt.Part));
        Assert.Contains(leapt.Signs, s => s.What.Code == "story.sign_leap" && s.Ratio == 20);
    }

    [Fact]
    public void An_acid_pump_that_runs_against_a_high_reading_speaks_against_the_probe()
    {
        var apart = new ToldPool { PhTest = 7.3, ChlorineTest = null, PhRead = 7.6 };
        var quiet = Tell(apart);
        var runs = Tell(apart with { Pumps = [new("acid pump", DosingAim.LowersPh, Ran(usually: 0.1, lately: 0.6))] });
        Assert.True(Of(runs, StoryPart.PhProbe) > Of(quiet, StoryPart.PhProbe));
        Assert.Contains(runs.Signs, s => s is { Part: StoryPart.PhProbe, Ratio: 2, What.Code: "story.sign_pump_more" });
    }

    [Fact]
    public void A_chlorine_pump_that_runs_longer_takes_the_side_of_a_test_that_found_less()
    {
        var low = Sound with { ChlorineTest = 0.6, ChlorineRead = 1.2 };
        var runs = low with { Pumps = [new("hypochlorite pump", DosingAim.AddsChlorine, Ran(usually: 0.1, lately: 0.6))] };
        Assert.True(Of(Tell(runs), StoryPart.ChlorineTest) < Of(Tell(low), StoryPart.ChlorineTest));
    }

    [Fact]
    public void Without_anything_to_hold_against_the_test_it_says_so()
    {
        var story = Tell(new ToldPool { PhRead = null, PhSignal = SignalHealth.New with { Standing = Standing.CheckFunction, Reasons = [Reason.Of("signal.no_flow")] } });
        Assert.Equal(StoryAnswer.NotComparable, story.Answer);
        Assert.Equal(StoryAct.RestoreFlow, story.Steps[0].Act);
    }

    [Fact]
    public void A_check_of_two_days_ago_tells_nothing_of_today()
    {
        var story = Tell(Sound with { Later = TimeSpan.FromHours(48) });
        Assert.Equal(StoryAnswer.CannotTell, story.Answer);
        Assert.Contains(story.Says, r => r.Code == "story.check_is_old");
        Assert.Equal(StoryAct.RepeatTest, story.Steps[0].Act);
    }

    [Fact]
    public void A_failed_signal_needs_no_check_to_be_called_off()
    {
        var story = Tell(Sound with { Later = TimeSpan.FromHours(48), PhSignal = SignalHealth.New with { Standing = Standing.Failure, Reasons = [Reason.Of("signal.stuck", 9000)] } });
        Assert.Equal((StoryAnswer.ProbeDrifts, StoryPart.PhProbe), (story.Answer, story.Part));
        Assert.Contains(story.Steps, s => s.Act == StoryAct.LookAtSignal);
        Assert.True(Of(story, StoryPart.None) <= 1 - Of(story, StoryPart.PhProbe), "nobody is wrong and the probe is wrong cannot both be likely");
    }

    [Fact]
    public void A_panel_that_shows_another_number_is_a_sign_of_its_own()
    {
        var story = Tell(Sound with { Origin = SignalOrigin.PanelScaled, Panel = 7.55 });
        var sign = Assert.Single(story.Signs, s => s.What.Code == "story.sign_panel_differs");
        Assert.Equal([7.55, 7.4], [sign.What.Facts[1].Number!.Value, sign.What.Facts[2].Number!.Value]);
        Assert.Contains(story.Steps, s => s.Act == StoryAct.CheckScaling);
        Assert.DoesNotContain(Tell(Sound with { Origin = SignalOrigin.PanelScaled, Panel = 7.41 }).Signs, s => s.What.Code == "story.sign_panel_differs");
        // What a controller makes of a raw signal is its own affair: the two need not be one number.
        Assert.DoesNotContain(Tell(Sound with { Origin = SignalOrigin.Raw, Panel = 7.55 }).Signs, s => s.What.Code == "story.sign_panel_differs");
    }

    [Fact]
    public void While_a_dose_is_mixing_a_difference_proves_little()
    {
        var apart = new ToldPool { PhTest = 7.3, ChlorineTest = null, PhRead = 7.6 };
        var mixing = Tell(apart with { MixedAt = ToldPool.Sampled + TimeSpan.FromMinutes(20) });
        Assert.True(Of(mixing, StoryPart.PhTest) + Of(mixing, StoryPart.PhProbe) < Of(Tell(apart), StoryPart.PhTest) + Of(Tell(apart), StoryPart.PhProbe));
        Assert.Contains(mixing.Signs, s => s.What.Code == "story.sign_dose_mixing");
    }

    private static double Of(TrustStory story, StoryPart part) => story.Explanations.FirstOrDefault(e => e.Part == part).Probability;

    private static PumpRun Ran(double usually, double lately)
    {
        var run = default(PumpRun);
        var at = ToldPool.Sampled - TimeSpan.FromDays(8);
        for (var minute = 0; at < ToldPool.Sampled; minute++)
        {
            var share = at < ToldPool.Sampled - TimeSpan.FromHours(3) ? usually : lately;
            at += TimeSpan.FromMinutes(1);
            run = run.Until(minute % 10 < share * 10 ? PumpActivity.Running : PumpActivity.Stopped, at);
        }

        return run;
    }

    private TrustStory Tell(ToldPool pool)
    {
        var story = pool.Tell();
        output.WriteLine($"{story.Answer} {story.Part} p {story.Probability:0.000} odds {story.Odds:0.0} {story.Weight}: {string.Join(", ", story.Explanations.Select(e => $"{e.Part} {e.Probability:0.000}"))}");
        foreach (var sign in story.Signs) output.WriteLine($"  {sign.Part} x{sign.Ratio:0.00} {sign.What.Code} {string.Join(" ", sign.What.Facts.Select(f => f.Number?.ToString("0.###") ?? f.Text))}");
        foreach (var step in story.Steps) output.WriteLine($"  -> {step.Act} {step.Part} {step.Minutes} min {step.Settles:0.00} bit");
        return story;
    }
}
