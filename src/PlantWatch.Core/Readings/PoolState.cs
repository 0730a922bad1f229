using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Readings.Laboratory;

namespace PlantWatch.Core.Readings;

/// <summary>What is known of one pool.</summary>
public sealed record PoolState
{
    /// <summary>The pool's id.</summary>
    public required string Id { get; init; }

    /// <summary>Newest manual result for each measurand that has one, with its time: inputs of the balance, their age shown.</summary>
    public ImmutableSortedDictionary<Measurand, ManualValue> Manual { get; init; } = ImmutableSortedDictionary<Measurand, ManualValue>.Empty;

    /// <summary>Its limits as they hold now.</summary>
    public LimitsInForce Limits { get; init; } = LimitsInForce.None;

    /// <summary>What was known of its water when its limits were worked out last.</summary>
    public WaterFacts Water { get; init; }

    /// <summary>How it is run, and who said so.</summary>
    public PoolOperation Operation { get; init; }

    /// <summary>Ids and content hashes of the newest acts that set how it is run, so that an old one sent again does nothing.</summary>
    public ImmutableArray<KnownCheck> KnownActs { get; init; } = [];

    /// <summary>When it was last filled anew: what was sampled before is of other water. Never when that is not known.</summary>
    public Instant FilledAt { get; init; }

    /// <summary>Whether the bottom was visible at the last look; null when never looked at.</summary>
    public bool? BottomVisible { get; init; }

    /// <summary>When that look was.</summary>
    public Instant BottomSeenAt { get; init; }

    /// <summary>Bathers at the last count.</summary>
    public int? Bathers { get; init; }

    /// <summary>Tests in doubt, each with the time by which a repeat has to settle it.</summary>
    public ImmutableArray<TestDoubt> Doubts { get; init; } = [];

    /// <summary>Sample time of the newest check that covered each duty, in the order of the plan's duties.</summary>
    public ImmutableArray<Instant> DutyDoneAt { get; init; } = [];

    /// <summary>What the laboratory found, an entry for each organism and point.</summary>
    public ImmutableArray<LabStanding> Laboratory { get; init; } = [];

    /// <summary>Sample time of the newest laboratory result.</summary>
    public Instant LastLabSampleAt { get; init; }

    /// <summary>Since when samples for the laboratory are expected; never when none are planned.</summary>
    public Instant SamplesExpectedSince { get; init; }
}

/// <summary>A manual result as the pool remembers it.</summary>
/// <param name="Result">The result.</param>
/// <param name="SampledAt">When the sample was taken.</param>
/// <param name="Suspect">It is kept but doubted; the unsafe reading of it stands until a repeat clears it.</param>
/// <param name="CheckId">The check it came with.</param>
public sealed record ManualValue(TestResult Result, Instant SampledAt, bool Suspect, Guid CheckId);
