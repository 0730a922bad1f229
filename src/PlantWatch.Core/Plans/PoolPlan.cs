using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plans;

/// <summary>What a pool is for; decides which advice and limits make sense.</summary>
public enum PoolKind
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Public swimming pool.</summary>
    Swimming,
    /// <summary>Teaching or learner pool.</summary>
    Teaching,
    /// <summary>Leisure pool with features.</summary>
    Leisure,
    /// <summary>Hydrotherapy pool.</summary>
    Therapy,
    /// <summary>Spa or hot tub.</summary>
    Spa,
    /// <summary>Plunge pool.</summary>
    Plunge,
    /// <summary>Paddling pool or splash pad.</summary>
    Paddling,
}

/// <summary>Where the pool lies.</summary>
public enum Setting
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Under a roof.</summary>
    Indoor,
    /// <summary>In the open.</summary>
    Outdoor,
}

/// <summary>The residual disinfectant.</summary>
public enum Disinfectant
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Chlorine without stabiliser.</summary>
    Chlorine,
    /// <summary>Chlorine with cyanuric acid.</summary>
    StabilisedChlorine,
    /// <summary>Chlorine made from salt in the water.</summary>
    SaltElectrolysis,
    /// <summary>Bromine.</summary>
    Bromine,
}

/// <summary>A second treatment beside the residual disinfectant.</summary>
public enum SecondaryTreatment
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary>Ultraviolet.</summary>
    Uv,
    /// <summary>Ozone.</summary>
    Ozone,
}

/// <summary>One pool.</summary>
public sealed record PoolPlan
{
    /// <summary>Stable key.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Former id when it was renamed.</summary>
    public string? Was { get; init; }

    /// <summary>What it is for.</summary>
    public PoolKind Kind { get; init; }

    /// <summary>Indoor or outdoor.</summary>
    public Setting Setting { get; init; }

    /// <summary>Residual disinfectant.</summary>
    public Disinfectant Disinfectant { get; init; }

    /// <summary>Second treatments.</summary>
    public ImmutableArray<SecondaryTreatment> Secondary { get; init; } = [];

    /// <summary>Water volume in m3.</summary>
    public double VolumeCubicMetres { get; init; }

    /// <summary>Who confirmed the volume and when; null when nobody did, and then no dose is worked out for it.</summary>
    public VolumeConfirmation? VolumeConfirmed { get; init; }

    /// <summary>Limits the plant has set for this pool.</summary>
    public ImmutableArray<LimitPlan> Limits { get; init; } = [];

    /// <summary>Manual checks that are due by the clock.</summary>
    public ImmutableArray<CheckDuty> Duties { get; init; } = [];

    /// <summary>What is sampled for the laboratory, and the plant's own limits on its counts.</summary>
    public LabPlan Laboratory { get; init; } = LabPlan.None;
}

/// <summary>That a volume is as stated: measured, metered or worked out from drawings by somebody who answers for it.</summary>
/// <param name="By">Who.</param>
/// <param name="On">When.</param>
public sealed record VolumeConfirmation(string By, DateOnly On);

/// <summary>A limit on one measurand of a pool. At least one end is set.</summary>
/// <param name="Measurand">What is limited.</param>
/// <param name="Low">Lowest acceptable value.</param>
/// <param name="High">Highest acceptable value.</param>
/// <param name="Source">Document and clause the plant took it from.</param>
/// <param name="ReferenceElectrode">Reference electrode that an ORP limit is against; null for every other measurand.</param>
/// <param name="LoosenedBy">Who stands for it where it is looser than a confirmed row of the pack; null when it only tightens.</param>
/// <param name="LoosenedWhy">Why.</param>
public sealed record LimitPlan(
    Measurand Measurand, double? Low, double? High, string Source, string? ReferenceElectrode = null, string? LoosenedBy = null, string? LoosenedWhy = null)
{
    /// <summary>How far a probe must come back inside before its alarm may clear, in the measurand's unit; null leaves the usual one.</summary>
    public double? Deadband { get; init; }

    /// <summary>How long a probe must be outside before it is an alarm; null leaves the rule's own. No stop and no closure limit is delayed by it.</summary>
    public TimeSpan? OnDelay { get; init; }

    /// <summary>How long a probe must be back inside before its alarm clears; null leaves the rule's own.</summary>
    public TimeSpan? OffDelay { get; init; }
}

/// <summary>Manual checks due at set times of the site's day.</summary>
/// <param name="What">What is tested.</param>
/// <param name="At">Times of day on the site's clock, in order.</param>
public sealed record CheckDuty(ImmutableArray<Measurand> What, ImmutableArray<TimeOnly> At);
