namespace PlantWatch.Simulator.Setup;

/// <summary>What a probe measures.</summary>
internal enum Measures
{
    Ph,
    Orp,
    Temperature,
    FreeChlorine,
    Conductivity,
    SampleFlow,
    CirculationFlow,
    FilterPressure,
}

/// <summary>One probe and how it speaks.</summary>
internal sealed class ProbeSetup
{
    public string Id { get; set; } = "";
    public string Pool { get; set; } = "";
    public Measures Measures { get; set; }
    public string Topic { get; set; } = "";
    /// <summary>Name of the SenML record after the base name; empty for a plain number.</summary>
    public string Record { get; set; } = "";
    /// <summary>The connection it speaks through; empty means the circuit's own.</summary>
    public string Gateway { get; set; } = "";
    /// <summary>The flow switch that stands still when this probe's cell does.</summary>
    public string FlowSwitch { get; set; } = "";
    /// <summary>Publishes what the panel shows, not its own signal.</summary>
    public bool PanelScaled { get; set; }
    /// <summary>What the panel adds to the signal at the start.</summary>
    public double PanelOffset { get; set; }
    /// <summary>Fixed error of the probe.</summary>
    public double Error { get; set; }
    /// <summary>Standard deviation of a reading; not given means usual for what it measures.</summary>
    public double? Noise { get; set; }
    /// <summary>Standard deviation of a slow wander over about half a day.</summary>
    public double? Wander { get; set; }
    public double? LagSeconds { get; set; }
    public double DelaySeconds { get; set; } = 120;
}

/// <summary>One dosing pump and the controller that starts it.</summary>
internal sealed class PumpSetup
{
    public string Id { get; set; } = "";
    /// <summary>The pool it doses; empty means the common return, shared by the flow to each pool.</summary>
    public string Pool { get; set; } = "";
    public string Product { get; set; } = "";
    public double LitresPerHour { get; set; } = 5;
    public double TankLitres { get; set; } = 100;
    /// <summary>Per cent in the tank at the start.</summary>
    public double TankStart { get; set; } = 80;
    /// <summary>Per cent below which a delivery comes the next morning.</summary>
    public double RefillBelow { get; set; } = 20;
    public string StateTopic { get; set; } = "";
    public string TankTopic { get; set; } = "";
    /// <summary>Where its running counter of strokes is said; empty when it is not.</summary>
    public string StrokesTopic { get; set; } = "";
    public double MillilitresPerStroke { get; set; } = 1;
    public string Gateway { get; set; } = "";
    public ControllerSetup Controller { get; set; } = new();
}

/// <summary>A proportional controller with pulses. It believes its probe.</summary>
internal sealed class ControllerSetup
{
    public string Probe { get; set; } = "";
    public double SetPoint { get; set; }
    /// <summary>Deviation at which it doses all the time.</summary>
    public double Band { get; set; } = 1;
    /// <summary>Doses when the reading is above (acid) or below (chlorine) the set point.</summary>
    public bool DosesWhenAbove { get; set; }
    public double CycleSeconds { get; set; } = 60;
    public double MinimumPulseSeconds { get; set; } = 3;
    /// <summary>Largest share of a cycle it may dose.</summary>
    public double MostOfCycle { get; set; } = 0.8;
}

/// <summary>Kinds of fault.</summary>
internal enum FaultKind
{
    /// <summary>Error that grows: size a day.</summary>
    Drift,
    /// <summary>Error that comes at once: size.</summary>
    Step,
    /// <summary>Slope of pH falls to the share given by size, over two days.</summary>
    SlopeLoss,
    /// <summary>The reading stands still.</summary>
    Stuck,
    /// <summary>Broken glass: pH sits at 7, other probes at size.</summary>
    Broken,
    /// <summary>Noise grows by the factor size.</summary>
    Noise,
    /// <summary>ORP falls by size mV, most of it within six hours.</summary>
    Poisoned,
    /// <summary>The sample cell has no flow (named on the flow switch).</summary>
    NoFlow,
    /// <summary>The circulation pump stands (named on a circuit).</summary>
    NoCirculation,
    /// <summary>Product runs from the tank without strokes: size L/h (named on a pump).</summary>
    Siphon,
    /// <summary>Nothing is sent.</summary>
    Silent,
    /// <summary>The gateway's clock is wrong by size seconds (named on a circuit).</summary>
    Clock,
    /// <summary>The payload is NaN.</summary>
    NotANumber,
    /// <summary>The pump runs and delivers nothing: lost prime, empty suction.</summary>
    LostPrime,
    /// <summary>The pump never stops.</summary>
    StuckOn,
    /// <summary>The pump stops and says fault.</summary>
    ReportsFault,
}

/// <summary>A fault on command.</summary>
internal sealed class FaultSetup
{
    /// <summary>When it starts, from the start of the scenario, such as <c>2d6h30m</c>.</summary>
    public string After { get; set; } = "0m";
    /// <summary>How long it lasts; empty means for good.</summary>
    public string For { get; set; } = "";
    /// <summary>Probe, pump or circuit.</summary>
    public string On { get; set; } = "";
    public FaultKind Kind { get; set; }
    public double Size { get; set; }
}

/// <summary>Somebody turns the panel's offset of a probe.</summary>
internal sealed class PanelTurn
{
    public string After { get; set; } = "0m";
    public string Probe { get; set; } = "";
    /// <summary>Added to what the panel shows from then on.</summary>
    public double Add { get; set; }
}
