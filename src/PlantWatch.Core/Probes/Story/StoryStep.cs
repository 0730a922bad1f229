using System.Collections.Immutable;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>What can be done to settle which to believe.</summary>
public enum StoryAct
{
    /// <summary>Nothing.</summary>
    None = 0,
    /// <summary>The same test again, with a clean cell and a fresh tablet.</summary>
    RepeatTest,
    /// <summary>The test by another lot of reagent, another instrument or another person.</summary>
    OtherLot,
    /// <summary>The chlorine test on a diluted sample.</summary>
    Dilute,
    /// <summary>Flow through the sample cell back.</summary>
    RestoreFlow,
    /// <summary>Let a dose mix first.</summary>
    WaitForMixing,
    /// <summary>Read the panel beside the test.</summary>
    ReadPanel,
    /// <summary>Look why panel and received number differ.</summary>
    CheckScaling,
    /// <summary>Look at cable, connector, glass and cell.</summary>
    LookAtSignal,
    /// <summary>Rinse and clean the probe.</summary>
    Clean,
    /// <summary>Put the pH probe into a buffer.</summary>
    CheckInBuffer,
    /// <summary>Put the ORP probe into its check solution.</summary>
    CheckInSolution,
    /// <summary>Compare the chlorine cell at flow and at zero.</summary>
    CheckCell,
    /// <summary>Calibrate, or adjust the panel.</summary>
    Calibrate,
    /// <summary>Replace the probe or its sensitive part.</summary>
    Replace,
    /// <summary>Look at the dosing pump and its tank.</summary>
    LookAtPump,
}

/// <summary>One step, with why it is worth its while.</summary>
/// <param name="Act">What to do.</param>
/// <param name="Part">Whom it is about.</param>
/// <param name="ProbeId">The probe; null when it is about a test.</param>
/// <param name="Minutes">About how long it takes.</param>
/// <param name="Settles">How much of the open question it answers on average, in bits: 0 nothing, 1 a question that stood even.</param>
/// <param name="What">What to do, why, and what it would tell, in words.</param>
public sealed record StoryStep(StoryAct Act, StoryPart Part, string? ProbeId, double Minutes, double Settles, ImmutableArray<Reason> What);
