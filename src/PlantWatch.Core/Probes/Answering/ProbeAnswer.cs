using System.Collections.Immutable;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes.Answering;

/// <summary>Whom to believe. The default believes nobody.</summary>
public enum Believe
{
    /// <summary>Neither by itself: too little is known, or both are in doubt.</summary>
    Neither = 0,
    /// <summary>The probe, against the newest test.</summary>
    Probe,
    /// <summary>The tests, against the probe.</summary>
    Tests,
    /// <summary>They agree.</summary>
    Either,
}

/// <summary>What a person does next. Advice, never a command.</summary>
public enum NextStep
{
    /// <summary>Nothing until the next check.</summary>
    Nothing = 0,
    /// <summary>Test the water and enter the check.</summary>
    Test,
    /// <summary>Repeat the newest test.</summary>
    Repeat,
    /// <summary>Find why nothing is heard.</summary>
    RestoreSignal,
    /// <summary>Bring back the flow through the sample cell.</summary>
    RestoreFlow,
    /// <summary>Look at probe, cable and connector.</summary>
    Look,
    /// <summary>Clean the probe.</summary>
    Clean,
    /// <summary>Test again after the work.</summary>
    TestAgain,
    /// <summary>Calibrate, should the difference stay.</summary>
    Calibrate,
    /// <summary>Set the plant's panel right, should the difference stay.</summary>
    AdjustPanel,
    /// <summary>Decide on a calibration that waits.</summary>
    Decide,
    /// <summary>Replace the electrode.</summary>
    Replace,
    /// <summary>Test with another instrument or a fresh lot of reagent.</summary>
    OtherReagent,
    /// <summary>Wait until the cell has been flushed or the work at the probe has ended.</summary>
    Wait,
}

/// <summary>One step with its words.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="Text">How it is said.</param>
public sealed record AdvisedStep(NextStep Kind, Reason Text);

/// <summary>The answer to "which do I believe, the probe or the test, and what do I do now?" for one probe.</summary>
/// <param name="Whom">Whom to believe.</param>
/// <param name="Sentence">The same in one sentence.</param>
/// <param name="Steps">What to do, first step first; never empty.</param>
public sealed record ProbeAnswer(Believe Whom, Reason Sentence, ImmutableArray<AdvisedStep> Steps);
