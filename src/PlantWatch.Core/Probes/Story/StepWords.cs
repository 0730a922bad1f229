using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>A step in words: what to do, and what it would tell.</summary>
internal static class StepWords
{
    public static ImmutableArray<Reason> Of(StoryAct act, StoryInput input, StoryPart part, StoryProbe? probe) => act switch
    {
        StoryAct.RepeatTest => [Reason.Of("story.step_repeat", Tested(part)), .. Tells(input, part)],
        StoryAct.OtherLot when probe is not null && input.LotOff(probe) is { } lot =>
            [Reason.Of("story.step_lot_or_meter", Tested(part)), Reason.Of("story.tells_lot", lot.Value, lot.Expanded, probe.Plan.Measurand.Unit())],
        StoryAct.OtherLot => [Reason.Of("story.step_other_lot", Tested(part)), Reason.Of("story.tells_other_lot")],
        StoryAct.Dilute => [Reason.Of("story.step_dilute"), Reason.Of("story.tells_dilute")],
        StoryAct.RestoreFlow => [Reason.Of("story.step_flow"), Reason.Of("story.tells_flow")],
        StoryAct.WaitForMixing => [Reason.Of("story.step_wait"), Reason.Of("story.tells_wait")],
        StoryAct.ReadPanel => [Reason.Of("story.step_panel", Name(probe)), Reason.Of("story.tells_panel")],
        StoryAct.CheckScaling => [Reason.Of("story.step_scaling", Name(probe)), Reason.Of("story.tells_scaling")],
        StoryAct.LookAtSignal => [Reason.Of("story.step_signal", Name(probe)), Reason.Of("story.tells_signal")],
        StoryAct.Clean when IsSlow(probe) => [Reason.Of("story.step_clean", Name(probe)), Reason.Of("story.tells_clean_slow", probe!.Signal.Response.Value)],
        StoryAct.Replace when IsSlow(probe) => [Reason.Of("story.step_replace_slow", Name(probe)), Reason.Of("story.tells_replace")],
        StoryAct.Clean => [Reason.Of("story.step_clean", Name(probe)), Reason.Of("story.tells_clean")],
        StoryAct.CheckInBuffer => [Reason.Of("story.step_buffer", Name(probe)), Reason.Of("story.tells_buffer")],
        StoryAct.CheckInSolution => [Reason.Of("story.step_solution", Name(probe)), Reason.Of("story.tells_solution")],
        StoryAct.CheckCell => [Reason.Of("story.step_cell", Name(probe)), Reason.Of("story.tells_cell")],
        StoryAct.Calibrate => [probe?.Plan.Origin == SignalOrigin.PanelScaled ? Reason.Of("story.step_adjust_panel", Name(probe)) : Reason.Of("story.step_calibrate", Name(probe)), Reason.Of("story.tells_calibrate")],
        StoryAct.Replace => [Reason.Of("story.step_replace", Name(probe)), Reason.Of("story.tells_replace")],
        StoryAct.LookAtPump => [Reason.Of("story.step_pump"), Reason.Of("story.tells_pump")],
        _ => [],
    };

    private static ImmutableArray<Reason> Tells(StoryInput input, StoryPart part)
    {
        var measurand = part == StoryPart.PhTest ? Measurand.Ph : Measurand.FreeChlorine;
        return input.Test(measurand) is { } test ? [Reason.Of("story.tells_repeat", test.Result.Value, measurand.Unit())] : [Reason.Of("story.tells_first")];
    }

    private static bool IsSlow(StoryProbe? probe) => probe is { Signal.Response.IsKnown: true };

    private static string Tested(StoryPart part) => (part == StoryPart.PhTest ? Measurand.Ph : Measurand.FreeChlorine).Key();

    private static string Name(StoryProbe? probe) => probe?.Plan.Measurand.Key() ?? "";
}
