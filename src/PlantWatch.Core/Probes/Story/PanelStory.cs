using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>The number on the panel against the number received of the same probe. A panel-scaled probe must show the same on both.</summary>
public static class PanelStory
{
    /// <summary>Likelihood ratio of a panel that differs: another probe, another scaling or a frozen panel, and nobody knows yet on which side.</summary>
    internal const double Ratio = 3;

    /// <summary>What two displays of one number may differ by: rounding on both, and the moment it takes to read them. Common practice.</summary>
    public static double Rounding(Measurand measurand) => measurand switch
    {
        Measurand.Ph => 0.03,
        Measurand.Orp => 6,
        Measurand.Temperature => 0.3,
        Measurand.FreeChlorine => 0.05,
        Measurand.Conductivity => 30,
        _ => 0,
    };

    /// <summary>True when the panel differs from what was received by more than rounding and the movement of the signal explain.</summary>
    public static bool Differs(Measurand measurand, double panel, Estimate received)
    {
        if (!received.IsKnown || !double.IsFinite(panel)) return false;
        var u = received.Expanded;
        return Math.Abs(panel - received.Value) > Math.Sqrt((Rounding(measurand) * Rounding(measurand)) + (u * u));
    }

    /// <summary>The sign in words; null when there is none. A raw signal has no panel to be held against: its controller may scale it.</summary>
    internal static Reason? Of(StoryProbe probe) =>
        probe is { Plan.Origin: SignalOrigin.PanelScaled, Panel: { } panel } && Differs(probe.Plan.Measurand, panel, probe.Received)
            ? Reason.Of("story.sign_panel_differs", probe.Plan.Measurand.Key(), panel, probe.Received.Value, probe.Plan.Measurand.Unit()) : null;
}
