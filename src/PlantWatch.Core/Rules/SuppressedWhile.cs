namespace PlantWatch.Core.Rules;

/// <summary>What suppresses an alarm by design: states of the plant in which its message would ask for nothing. The default never suppresses.</summary>
[Flags]
public enum SuppressedWhile
{
    /// <summary>Never.</summary>
    Never = 0,
    /// <summary>The sample cell of its probe has no flow: the probe sees standing water.</summary>
    NoSampleFlow = 1,
    /// <summary>Its pool is drained: there is no water.</summary>
    Drained = 2,
    /// <summary>Its pool is closed, covered or drained: nobody bathes in it.</summary>
    NotOpen = 4,
    /// <summary>A filter is being backwashed: flow and values are not those of the pool.</summary>
    Backwash = 8,
    /// <summary>A person works on its probe.</summary>
    ProbeWork = 16,
}
