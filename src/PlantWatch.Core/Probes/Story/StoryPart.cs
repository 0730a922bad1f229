namespace PlantWatch.Core.Probes;

/// <summary>Who bears witness to the water of a pool, and may be wrong.</summary>
public enum StoryPart
{
    /// <summary>Nobody.</summary>
    None = 0,
    /// <summary>The pH test by hand.</summary>
    PhTest,
    /// <summary>The pH probe.</summary>
    PhProbe,
    /// <summary>The test of free chlorine by hand.</summary>
    ChlorineTest,
    /// <summary>The free-chlorine probe.</summary>
    ChlorineProbe,
    /// <summary>The ORP probe, by the pool's own line.</summary>
    OrpProbe,
}

/// <summary>What all signs together say of a pool's probes and tests. The default is that nothing can be told.</summary>
public enum StoryAnswer
{
    /// <summary>Too little speaks for any explanation.</summary>
    CannotTell = 0,
    /// <summary>All that bear witness agree.</summary>
    AllAgree,
    /// <summary>A probe is off, and the others say so.</summary>
    ProbeDrifts,
    /// <summary>A test is not to be believed until it is repeated.</summary>
    TestSuspect,
    /// <summary>The water itself moved, and all saw it.</summary>
    WaterChanged,
    /// <summary>No probe can be held against the newest test.</summary>
    NotComparable,
}

/// <summary>How sure an answer is, in words.</summary>
public enum StoryWeight
{
    /// <summary>Nothing to lean on.</summary>
    None = 0,
    /// <summary>It leans that way: from 65 in 100.</summary>
    Leans,
    /// <summary>Likely: from 85 in 100.</summary>
    Likely,
    /// <summary>As good as certain: from 97 in 100.</summary>
    Strong,
}

/// <summary>Which part is a test and which a probe.</summary>
public static class StoryParts
{
    /// <summary>True for a test by hand.</summary>
    public static bool IsTest(this StoryPart part) => part is StoryPart.PhTest or StoryPart.ChlorineTest;

    /// <summary>True for a probe.</summary>
    public static bool IsProbe(this StoryPart part) => part is StoryPart.PhProbe or StoryPart.ChlorineProbe or StoryPart.OrpProbe;
}
