using System.Collections.Immutable;

namespace PlantWatch.Core.Plans;

/// <summary>One thing that is looked at on a round.</summary>
/// <param name="Id">Key in the plant file, unique in its circuit.</param>
/// <param name="What">What it is.</param>
/// <param name="Kind">How it is read.</param>
public sealed record RoundItemPlan(string Id, RoundItem What, RoundReadingKind Kind)
{
    /// <summary>What people call it; null leaves it to the words for what it is.</summary>
    public string? Name { get; init; }

    /// <summary>The filter or pool it belongs to; null where it is the circuit's.</summary>
    public string? Of { get; init; }

    /// <summary>The least that is in order, in the unit of its kind; null where nothing is too low.</summary>
    public double? Low { get; init; }

    /// <summary>The most that is in order; null where nothing is too high.</summary>
    public double? High { get; init; }

    /// <summary>Longest time between two looks; null for one that belongs to each round.</summary>
    public TimeSpan? Every { get; init; }
}

/// <summary>The daily round through a circuit's plant room.</summary>
/// <param name="At">Until when on the site's day it is to be walked.</param>
/// <param name="Items">What is looked at, in the order of the walk.</param>
public sealed record RoundPlan(TimeOnly At, ImmutableArray<RoundItemPlan> Items)
{
    /// <summary>The plant room is walked in the morning, before the pool fills (common practice).</summary>
    public static TimeOnly UsualAt { get; } = new(9, 0);

    /// <summary>Eyewash and gas alarm are run once a week (common practice; the maker's papers and the local code come first).</summary>
    public static TimeSpan Weekly { get; } = TimeSpan.FromDays(7);

    /// <summary>What a plant has of which its plan knows, for one that names nothing itself.</summary>
    public static RoundPlan UsualOf(CircuitPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var items = ImmutableArray.CreateBuilder<RoundItemPlan>();
        foreach (var filter in plan.Filters)
            if (filter.Kind == FilterKind.Strainer) items.Add(One(RoundItem.Strainer, filter.Id));
            else items.AddRange(One(RoundItem.FilterInlet, filter.Id), One(RoundItem.FilterOutlet, filter.Id));
        items.Add(One(RoundItem.Circulation) with { Low = plan.CirculationLow });
        if (plan.BalanceTankCubicMetres is > 0) items.Add(One(RoundItem.BalanceTank));
        items.Add(One(RoundItem.MakeUpMeter));
        foreach (var pool in plan.Pools)
        {
            if (plan.Probes.Any(p => p.PoolId == pool.Id)) items.Add(One(RoundItem.SampleFlow, pool.Id));
            if (pool.Secondary.Contains(SecondaryTreatment.Uv)) items.Add(One(RoundItem.UltravioletIntensity, pool.Id));
        }

        if (plan.Pumps.Length > 0) items.Add(One(RoundItem.Eyewash) with { Every = Weekly });
        return new(UsualAt, items.DrainToImmutable());
    }

    private static RoundItemPlan One(RoundItem what, string? of = null) => new($"{WordOf(what)}{(of is null ? "" : "/")}{of}", what, what.Kind()) { Of = of };

    private static string WordOf(RoundItem what) => what switch
    {
        RoundItem.FilterInlet => "filter_inlet",
        RoundItem.FilterOutlet => "filter_outlet",
        RoundItem.Circulation => "circulation",
        RoundItem.Strainer => "strainer",
        RoundItem.BalanceTank => "balance_tank",
        RoundItem.MakeUpMeter => "make_up_meter",
        RoundItem.SampleFlow => "sample_flow",
        RoundItem.UltravioletIntensity => "ultraviolet_intensity",
        RoundItem.Coagulant => "coagulant",
        RoundItem.Eyewash => "eyewash",
        RoundItem.GasAlarm => "gas_alarm",
        _ => "other",
    };
}
