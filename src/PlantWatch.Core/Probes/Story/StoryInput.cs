using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Probes;

/// <summary>All signs that a pool's story is told from.</summary>
public sealed record StoryInput
{
    /// <summary>The pool.</summary>
    public required PoolPlan Pool { get; init; }

    /// <summary>When the story is told.</summary>
    public required Instant Now { get; init; }

    /// <summary>The newest check; empty without one.</summary>
    public Guid CheckId { get; init; }

    /// <summary>When its sample was taken; never without one.</summary>
    public Instant SampledAt { get; init; }

    /// <summary>Where.</summary>
    public SamplePoint Point { get; init; }

    /// <summary>What it tested.</summary>
    public ImmutableArray<StoryTest> Tests { get; init; } = [];

    /// <summary>The probes that see the pool's water.</summary>
    public ImmutableArray<StoryProbe> Probes { get; init; } = [];

    /// <summary>The pumps that dose it.</summary>
    public ImmutableArray<StoryPump> Pumps { get; init; } = [];

    /// <summary>Water temperature in degC; null when nothing knows it.</summary>
    public double? Celsius { get; init; }

    /// <summary>Newest cyanuric acid in mg/L; null when never tested.</summary>
    public double? Cyanurate { get; init; }

    /// <summary>Until when the newest dose by hand that moves pH or chlorine was mixing; never without one.</summary>
    public Instant MixedAt { get; init; }

    /// <summary>A contamination incident is open: chlorine may stand far above the range of the test.</summary>
    public bool IncidentOpen { get; init; }

    /// <summary>The test of a measurand; null when it was not tested.</summary>
    public StoryTest? Test(Measurand measurand)
    {
        foreach (var test in Tests)
            if (test.Result.Measurand == measurand) return test;
        return null;
    }

    /// <summary>True when the checks call a probe wrong and the newest test is off to the same side. A test on the other side is no part of that story: the probe's bias is known, and the test stands against it.</summary>
    internal bool IsCalledWrong(StoryProbe probe) =>
        probe.IsFlagged && (!probe.Read.IsKnown || !probe.Trust.Bias.IsKnown || Test(probe.Plan.Measurand) is not { Result.Censoring: Censoring.None } test
            || Math.Sign(probe.Read.Value - test.Result.Value) == Math.Sign(probe.Trust.Bias.Value));

    /// <summary>What the newest test is off by, when a bad lot or instrument is believed by the checks of this probe and it was such a test; null otherwise. A meter uses no lot.</summary>
    internal Estimate? LotOff(StoryProbe probe) =>
        probe.Trust.TestOff is { IsKnown: true } off && Test(probe.Plan.Measurand) is { Result.Method: not TestMethod.Meter } ? off : null;

    /// <summary>The same of all probes.</summary>
    internal (StoryProbe Probe, Estimate Off)? LotOff(Measurand measurand)
    {
        foreach (var probe in Probes)
            if (probe.Plan.Measurand == measurand && LotOff(probe) is { } off) return (probe, off);
        return null;
    }

    /// <summary>The probe of a measurand that could be compared, else any; null without one.</summary>
    public StoryProbe? Probe(Measurand measurand)
    {
        StoryProbe? any = null;
        foreach (var probe in Probes)
        {
            if (probe.Plan.Measurand != measurand) continue;
            if (probe.Read.IsKnown) return probe;
            any ??= probe;
        }

        return any;
    }
}

/// <summary>One result of the newest check.</summary>
/// <param name="Result">The result.</param>
/// <param name="Suspect">It was unlikely by itself.</param>
public sealed record StoryTest(TestResult Result, bool Suspect);

/// <summary>What a dosing pump did.</summary>
/// <param name="Name">What people call it.</param>
/// <param name="Aim">What it moves.</param>
/// <param name="Run">How much it ran.</param>
public sealed record StoryPump(string Name, DosingAim Aim, PumpRun Run);
