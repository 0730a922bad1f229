using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plans;

/// <summary>The method a reagent is for. The default is every method that uses one: a meter uses none.</summary>
public enum ReagentUse
{
    /// <summary>Every method that uses a reagent.</summary>
    Any = 0,
    /// <summary>Photometer.</summary>
    Photometer,
    /// <summary>Visual comparator.</summary>
    Comparator,
    /// <summary>Tablet count.</summary>
    TabletCount,
    /// <summary>A buffer or check solution: probes are calibrated with it and no test is made with it.</summary>
    Calibration,
}

/// <summary>A reagent that the plant tests with. Which lot of it is in use is no matter of the plant file: whoever opens one notes it.</summary>
public sealed record ReagentPlan
{
    /// <summary>Key in the plant file.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>What is tested with it.</summary>
    public ImmutableArray<Measurand> Tests { get; init; } = [];

    /// <summary>The method it is for.</summary>
    public ReagentUse Use { get; init; }

    /// <summary>How long it is good once opened; null when only its printed day counts.</summary>
    public TimeSpan? LifeAfterOpening { get; init; }

    /// <summary>The alarm on it stands in this circuit. Every circuit judges its tests by it, and one of them tells of it.</summary>
    public bool IsWatchedHere { get; init; }
}
