using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using Xunit.Abstractions;

namespace PlantWatch.Core.Tests.Probes.Story;

/// <summary>What the estimator found enters the story: each case is lived through by the estimator itself, check by check, before the story is told.</summary>
public sealed class EstimateInStoryTests(ITestOutputHelper output)
{
    // Two checks a day; the numbers repeat so that nothing hangs on chance.
    private static readonly double[] Scatter = [0.02, -0.03, 0.01, 0, -0.02, 0.03, -0.01];

    [Fact]
    public void A_bad_lot_speaks_against_the_tests_and_asks_for_another_lot_or_a_meter_first()
    {
        var lived = new TestPool(Measurand.Ph);
        for (var i = 0; i < 20; i++) lived.Check(12 * i, 7.4 + Scatter[i % 7], 7.4);
        for (var i = 20; i < 24; i++) lived.Check(12 * i, 7.7 + Scatter[i % 7], 7.4);
        Assert.InRange(lived.Trust.TestOff.Value, 0.2, 0.4);
        var told = new ToldPool { PhTest = 7.7, ChlorineTest = null, PhTrust = With(lived) };
        var story = Tell(told);
        Assert.Equal((StoryAnswer.TestSuspect, StoryPart.PhTest), (story.Answer, story.Part));
        Assert.Contains(story.Signs, s => s is { Part: StoryPart.PhTest, Ratio: 100, What.Code: "story.sign_tests_off" } && s.What.Facts[1].Number == lived.Trust.TestOff.Value);
        Assert.Equal("story.ph_lot_suspect", story.Says[0].Code);
        Assert.Equal((StoryAct.OtherLot, "story.step_lot_or_meter"), (story.Steps[0].Act, story.Steps[0].What[0].Code));
        // The same lot would only say the same again.
        Assert.DoesNotContain(story.Steps, s => s.Act == StoryAct.RepeatTest);
        // Doubt never makes safe: what the test found stays in view.
        Assert.Contains(story.Plausible, p => p.Measurand == Measurand.Ph && p.High >= 7.7);
    }

    [Fact]
    public void A_meter_is_no_lot()
    {
        var told = new ToldPool { PhTest = 7.7, ChlorineTest = null, PhMethod = TestMethod.Meter, PhTrust = trust => trust with { TestOff = new(0.3, 0.05) } };
        Assert.DoesNotContain(Tell(told).Signs, s => s.What.Code == "story.sign_tests_off");
        Assert.DoesNotContain(Tell(told).Steps, s => s.What[0].Code == "story.step_lot_or_meter");
    }

    [Fact]
    public void A_lot_that_is_off_by_little_still_asks_for_another_one()
    {
        var story = Tell(new ToldPool { PhTest = 7.55, ChlorineTest = null, PhTrust = trust => trust with { TestOff = new(0.15, 0.04) } });
        Assert.Equal(StoryAct.OtherLot, story.Steps[0].Act);
        Assert.Equal(StoryPart.PhTest, story.Explanations.First(e => e.Part != StoryPart.None).Part);
        Assert.NotEqual(StoryAnswer.ProbeDrifts, story.Answer);
    }

    [Fact]
    public void A_leap_taken_as_the_probes_own_speaks_against_it_until_tests_take_it_back_however_long_ago()
    {
        var lived = new TestPool(Measurand.Ph);
        for (var i = 0; i < 20; i++) lived.Check(12 * i, 7.4 + Scatter[i % 7], 7.4);
        lived.Leap(230, 0.4);
        var story = Tell(new ToldPool { PhTest = 7.4, ChlorineTest = null, PhRead = 7.8, PhTrust = With(lived) });
        var leap = Assert.Single(story.Signs, s => s.What.Code == "story.sign_leap");
        Assert.Equal((StoryPart.PhProbe, 20, 0.4), (leap.Part, leap.Ratio, leap.What.Facts[1].Number));
        Assert.Equal((StoryAnswer.ProbeDrifts, StoryPart.PhProbe), (story.Answer, story.Part));
        // It is flagged for the leap; no check has called it wrong yet.
        Assert.DoesNotContain(story.Signs, s => s.What.Code == "story.sign_checks_call_it_wrong");
        for (var i = 20; i < 24; i++) lived.Check(12 * i, 7.8 + Scatter[i % 7], 7.8);
        var took = Tell(new ToldPool { PhTest = 7.8, ChlorineTest = null, PhRead = 7.8, PhTrust = With(lived) });
        Assert.DoesNotContain(took.Signs, s => s.What.Code == "story.sign_leap");
    }

    [Fact]
    public void A_small_leap_does_not_hush_the_checks_that_call_a_probe_wrong_by_more()
    {
        var leapt = SignalHealth.New with { Standing = Standing.Good, LeaptAt = ToldPool.Sampled - TimeSpan.FromHours(1), LeaptBy = 0.1 };
        var story = Tell(new ToldPool { PhTest = 7.3, ChlorineTest = null, PhRead = 7.8, PhChecks = Standing.OutOfSpecification, PhBias = 0.5, PhSignal = leapt });
        Assert.Contains(story.Signs, s => s.What.Code == "story.sign_checks_call_it_wrong");
        Assert.Contains(story.Signs, s => s.What.Code == "story.sign_leap");
    }

    [Fact]
    public void A_drift_is_a_sign_with_its_rate()
    {
        var lived = new TestPool(Measurand.Ph);
        for (var i = 0; i < 60; i++) lived.Check(12 * i, 7.4 + Scatter[i % 7], 7.4 + Math.Max(0, 0.008 * ((i / 2.0) - 5)));
        var story = Tell(new ToldPool { PhTest = 7.4, ChlorineTest = null, PhRead = 7.6, PhTrust = With(lived) });
        var drift = Assert.Single(story.Signs, s => s.What.Code == "story.sign_drift");
        Assert.Equal((StoryPart.PhProbe, 2), (drift.Part, drift.Ratio));
        Assert.InRange(drift.What.Facts[1].Number!.Value, 0.15, 0.35);
        // To the other side it explains nothing.
        var other = Tell(new ToldPool { PhTest = 7.8, ChlorineTest = null, PhRead = 7.6, PhTrust = With(lived) });
        Assert.Equal((StoryPart.None, 1), (other.Signs.Single(s => s.What.Code == "story.sign_drift").Part, other.Signs.Single(s => s.What.Code == "story.sign_drift").Ratio));
    }

    [Fact]
    public void A_healthy_probe_gives_none_of_these_signs()
    {
        var lived = new TestPool(Measurand.Ph);
        for (var i = 0; i < 60; i++) lived.Check(12 * i, 7.4 + Scatter[i % 7], 7.4);
        var story = Tell(new ToldPool { ChlorineTest = null, PhTrust = With(lived) });
        Assert.DoesNotContain(story.Signs, s => s.What.Code is "story.sign_drift" or "story.sign_tests_off" or "story.sign_leap" or "story.sign_slow");
        Assert.Empty(story.Steps);
    }

    [Fact]
    public void A_slow_probe_is_cleaned_then_replaced_even_when_all_agree()
    {
        var told = new ToldPool { ChlorineTest = null, PhSignal = Slow };
        var story = Tell(told);
        var slow = Assert.Single(story.Signs, s => s.What.Code == "story.sign_slow");
        Assert.Equal((StoryPart.PhProbe, 3, 45), (slow.Part, slow.Ratio, slow.What.Facts[1].Number));
        Assert.Equal(StoryAnswer.AllAgree, story.Answer);
        Assert.Equal([StoryAct.Clean, StoryAct.Replace], story.Steps.Select(s => s.Act));
        // Said once, not twice.
        Assert.DoesNotContain(story.Signs, s => s.What.Code == "signal.slow");
        // Beside a gap it is cleaned and replaced, not calibrated.
        var apart = Tell(told with { PhTest = 7.1, PhChecks = Standing.MaintenanceRequired, PhBias = 0.3 });
        Assert.True(Order(apart, StoryAct.Clean) < Order(apart, StoryAct.Replace));
        Assert.DoesNotContain(apart.Steps, s => s.Act == StoryAct.Calibrate);
    }

    [Fact]
    public void A_probe_that_fouls_within_days_is_not_stood_by_for_having_been_right_yesterday()
    {
        var before = new PairedCheck(TimeOrderedId.Derive(ToldPool.Sampled, "before"), ToldPool.Sampled - TimeSpan.FromHours(24), new(7.41, 0.01), new(7.42, 0.08), false);
        var steady = new ToldPool { PhTest = 7.9, ChlorineTest = null, PhBefore = before };
        Assert.Contains(Tell(steady).Signs, s => s.What.Code == "story.sign_no_leap_since");
        Assert.DoesNotContain(Tell(steady with { PhTrust = trust => trust with { Drift = new(-0.08, 0.02) } }).Signs, s => s.What.Code == "story.sign_no_leap_since");
    }

    private static SignalHealth Slow => SignalHealth.New with
    {
        Standing = Standing.MaintenanceRequired, Reasons = [Reason.Of("signal.slow", 45)], Wander = SignalWander.New with { Pace = SignalPace.New with { SlowFor = 2, Response = new(45, 6) } },
    };

    // The newest check of the story is the newest the estimator saw; times are moved with it.
    private static Func<ProbeTrust, ProbeTrust> With(TestPool lived) => _ =>
    {
        var by = ToldPool.Sampled - lived.Trust.JudgedAt;
        return lived.Trust with
        {
            JudgedAt = ToldPool.Sampled, Leaps = [.. lived.Trust.Leaps.Select(l => new SignalLeap(l.At + by - TimeSpan.FromHours(24), l.By))],
            Pairs = [.. lived.Trust.Pairs.Select(p => p with { SampledAt = p.SampledAt + by - TimeSpan.FromHours(36) })],
        };
    };

    private static int Order(TrustStory story, StoryAct act) => story.Steps.Select(s => s.Act).ToList().IndexOf(act);

    private TrustStory Tell(ToldPool pool)
    {
        var story = pool.Tell();
        output.WriteLine($"{story.Answer} {story.Part} p {story.Probability:0.000} odds {story.Odds:0.0} {story.Weight}: {string.Join(", ", story.Explanations.Select(e => $"{e.Part} {e.Probability:0.000}"))}");
        foreach (var sign in story.Signs) output.WriteLine($"  {sign.Part} x{sign.Ratio:0.00} {sign.What.Code} {string.Join(" ", sign.What.Facts.Select(f => f.Number?.ToString("0.###") ?? f.Text))}");
        foreach (var step in story.Steps) output.WriteLine($"  -> {step.Act} {step.Part} {step.Minutes} min {step.Settles:0.00} bit");
        return story;
    }
}
