using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>The signs that are no figures: each a stated likelihood ratio, common practice put into a number and marked so in docs/decisions/0012-one-story.md.</summary>
internal sealed class StorySigns
{
    // Odds that a part is wrong before anything is seen: of a test one in forty, of a probe that nothing speaks against one in twenty-five.
    private const double TestBefore = 1 / 40.0;
    private const double ProbeBefore = 1 / 25.0;

    // No heap of small signs may drown the figures.
    private const double Most = 400;

    // In two days even a poor electrode drifts by less than its limit (docs/decisions/0005-trust.md: 0.15 pH a month).
    private static readonly TimeSpan NoDriftWithin = TimeSpan.FromHours(48);

    // The estimate calls a lot bad from evens on; from one in forty this brings a test to 5 : 2 (docs/decisions/0012-one-story.md).
    private const double LotBelieved = 100;

    private const double DaysAMonth = 30.44;

    private readonly StoryInput _input;
    private readonly List<StorySign> _signs = [];

    private StorySigns(StoryInput input) => _input = input;

    public static List<StorySign> Of(StoryInput input)
    {
        var signs = new StorySigns(input);
        signs.OfTests();
        foreach (var probe in input.Probes) signs.OfProbe(probe);
        signs.OfPumps();
        return signs._signs;
    }

    /// <summary>Odds that a part is wrong, with the signs that were seen and before the figures.</summary>
    public static double Before(IEnumerable<StorySign> signs, StoryPart part)
    {
        var ratio = 1.0;
        foreach (var sign in signs)
            if (sign.Part == part) ratio *= sign.Ratio;
        return (part.IsTest() ? TestBefore : ProbeBefore) * Math.Clamp(ratio, 1 / Most, Most);
    }

    private void OfTests()
    {
        foreach (var test in _input.Tests)
        {
            var part = PartOf(test.Result.Measurand);
            if (part == StoryPart.None || !test.Suspect) continue;
            var nil = part == StoryPart.ChlorineTest && test.Result.Value <= 0.1;
            Add(part, nil ? 10 : 4, nil ? Reason.Of("story.sign_nil_chlorine") : Reason.Of("story.sign_unlikely_by_itself", test.Result.Measurand.Key()));
        }

        if (_input.IncidentOpen && _input.Test(Measurand.FreeChlorine) is not null) Add(StoryPart.ChlorineTest, 2, Reason.Of("story.sign_incident"));
        if (StoryBench.IsUnmixed(_input)) Add(StoryPart.None, 1, Reason.Of("story.sign_dose_mixing"));
    }

    private void OfProbe(StoryProbe probe)
    {
        var part = PartOf(probe);
        if (part == StoryPart.None) return;
        OfSignal(probe, part);
        OfChecks(probe, part);
        if (PanelStory.Of(probe) is { } panel) Add(part, PanelStory.Ratio, panel);
    }

    private void OfSignal(StoryProbe probe, StoryPart part)
    {
        var name = probe.Plan.Measurand.Key();
        var why = probe.Signal.Reasons.IsDefaultOrEmpty ? Reason.Of("story.sign_signal", name) : probe.Signal.Reasons[0];
        if (probe.Signal.Standing == Standing.CheckFunction) Add(StoryPart.None, 1, why);
        else if (probe.Signal.Standing is Standing.Failure or Standing.OutOfSpecification) Add(part, 100, why);
        else if (probe.Signal.Standing == Standing.MaintenanceRequired && !probe.IsOnlySlow) Add(part, 5, why);
        // Slow, it is still right while the water rests.
        if (probe.Signal.Response is { IsKnown: true } slow) Add(part, 3, Reason.Of("story.sign_slow", name, slow.Value, slow.Expanded));
        // Water of a whole pool does not move within a reading or two.
        if (probe.Leap(_input.Now) is { } leap) Add(part, 20, Reason.Of("story.sign_leap", name, leap.By, probe.Plan.Measurand.Unit(), (_input.Now - leap.At).TotalHours));
    }

    private void OfChecks(StoryProbe probe, StoryPart part)
    {
        var (trust, name, unit) = (probe.Trust, probe.Plan.Measurand.Key(), probe.Plan.Measurand.Unit());
        // Called wrong for its leap alone, before any test came since: that is said already.
        if (_input.IsCalledWrong(probe))
        {
            if (!IsFlaggedByLeap(probe) && trust.Bias.IsKnown) Add(part, 20, Reason.Of("story.sign_checks_call_it_wrong", name, Math.Abs(trust.Bias.Value), trust.Bias.Expanded, unit, trust.Taken));
        }

        // What the checks said before a signal went bad says nothing of it now.
        else if (trust is { Standing: Standing.Good, Taken: >= 3 } && (probe.Signal.Standing is Standing.Good or Standing.Unknown || probe.IsOnlySlow) && probe.Leap(_input.Now) is null) StandsBy(probe, part, name);
        if (!_input.IsCalledWrong(probe) && trust.Bias.IsKnown && Math.Abs(trust.Bias.Value) > trust.Bias.StandardUncertainty)
            Add(StoryPart.None, 1, Reason.Of("story.sign_bias_taken_off", name, trust.Bias.Value, trust.Bias.Expanded, unit));
        if (probe.FoundDrift is { } drift) OfDrift(probe, part, drift);
        if (_input.LotOff(probe) is { } lot) Add(PartOf(probe.Plan.Measurand), LotBelieved, Reason.Of("story.sign_tests_off", name, lot.Value, lot.Expanded, unit));
    }

    // A drift explains a gap on its own side; to the other side it is only a thing to know.
    private void OfDrift(StoryProbe probe, StoryPart part, Estimate drift)
    {
        var what = Reason.Of("story.sign_drift", probe.Plan.Measurand.Key(), drift.Value * DaysAMonth, drift.Expanded * DaysAMonth, probe.Plan.Measurand.Unit());
        var explains = probe.Read.IsKnown && _input.Test(probe.Plan.Measurand) is { Result.Censoring: Censoring.None } test && Math.Sign(probe.Read.Value - test.Result.Value) == Math.Sign(drift.Value);
        Add(explains ? part : StoryPart.None, explains ? 2 : 1, what);
    }

    private bool IsFlaggedByLeap(StoryProbe probe) =>
        probe.Leap(_input.Now) is { } leap && !probe.Trust.Pairs.Any(pair => pair.SampledAt > leap.At && pair.CheckId != _input.CheckId && !pair.Doubted);

    // A probe gets wrong by a leap, which would have been seen, or by drifting, which takes weeks. Without either since it was found right, one test alone says little.
    private void StandsBy(StoryProbe probe, StoryPart part, string name)
    {
        var right = Instant.Never;
        foreach (var pair in probe.Trust.Pairs)
            if (!pair.Doubted && pair.CheckId != _input.CheckId && pair.SampledAt < _input.SampledAt) right = pair.SampledAt;
        var isWatched = right.IsSet && _input.SampledAt - right < NoDriftWithin && probe.Signal.BlindAt < right && probe.Signal.LeaptAt < right && !MayHaveDrifted(probe, right);
        if (isWatched) Add(part, 0.1, Reason.Of("story.sign_no_leap_since", name, (_input.SampledAt - right).TotalHours, probe.Trust.Taken));
        else Add(part, 0.5, Reason.Of("story.sign_checks_stand_by_it", name, probe.Trust.Taken));
    }

    // Fouling goes to the limit within days: at the rate that was found, half the way there is too much.
    private bool MayHaveDrifted(StoryProbe probe, Instant since) =>
        probe.FoundDrift is { } drift && (Math.Abs(drift.Value) + drift.Expanded) * (_input.SampledAt - since).TotalDays > TrustModel.Of(probe.Plan.Measurand)!.MaintenanceAt / 2;

    // A controller follows its probe: when that reads high, the acid pump runs against it while the water gets lower.
    private void OfPumps()
    {
        foreach (var pump in _input.Pumps)
            if (PumpStory.Trend(pump.Run) is not 0 and var trend) OfPump(pump, trend);
    }

    private void OfPump(StoryPump pump, int trend)
    {
        var code = trend > 0 ? Reason.Of("story.sign_pump_more", pump.Name, pump.Run.Recent, pump.Run.Usual) : Reason.Of("story.sign_pump_less", pump.Name, pump.Run.Recent, pump.Run.Usual);
        switch (pump.Aim)
        {
            case DosingAim.LowersPh or DosingAim.RaisesPh:
                var high = (pump.Aim == DosingAim.LowersPh) == (trend > 0);
                if (PumpStory.PhGap(_input) is { } gap && Math.Sign(gap) == (high ? 1 : -1)) Add(StoryPart.PhProbe, 2, code);
                else Add(StoryPart.None, 1, code);
                break;
            // Real demand makes the pump run: a test that found less chlorine has company.
            case DosingAim.AddsChlorine:
                Add(trend > 0 && _input.Test(Measurand.FreeChlorine) is not null ? StoryPart.ChlorineTest : StoryPart.None, trend > 0 ? 0.5 : 1, code);
                break;
            default: break;
        }
    }

    public static StoryPart PartOf(Measurand tested) => tested switch
    {
        Measurand.Ph => StoryPart.PhTest,
        Measurand.FreeChlorine => StoryPart.ChlorineTest,
        _ => StoryPart.None,
    };

    public static StoryPart PartOf(StoryProbe probe) => probe.Plan.Measurand switch
    {
        Measurand.Ph => StoryPart.PhProbe,
        Measurand.FreeChlorine => StoryPart.ChlorineProbe,
        Measurand.Orp => StoryPart.OrpProbe,
        _ => StoryPart.None,
    };

    private void Add(StoryPart part, double ratio, Reason what) => _signs.Add(new(part, ratio, what));
}
