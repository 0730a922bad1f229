using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>The signs that are no figures: each a stated likelihood ratio, common practice put into a number and marked so in docs/decisions/0012-one-story.md.</summary>
internal sealed partial class StorySigns
{
    // Odds that a part is wrong before anything is seen: of a test one in forty, of a probe that nothing speaks against one in twenty-five.
    private const double TestBefore = 1 / 40.0;
    private const double ProbeBefore = 1 / 25.0;

    private const double Flagged = 20;

    // No heap of small signs may drown the figures.
    private const double Most = 400;

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
