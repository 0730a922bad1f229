using System.Runtime.CompilerServices;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Look-ups over a plan, made once for each plan and forgotten with it.</summary>
internal sealed class PlanIndex
{
    private static readonly ConditionalWeakTable<CircuitPlan, PlanIndex> Known = [];

    private readonly Dictionary<string, TopicRoute> topics = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> probes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> pools = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> pumps = new(StringComparer.Ordinal);

    private PlanIndex(CircuitPlan plan)
    {
        for (var i = 0; i < plan.Pools.Length; i++) pools[plan.Pools[i].Id] = i;
        for (var i = 0; i < plan.Probes.Length; i++)
        {
            var probe = plan.Probes[i];
            probes[probe.Id] = i;
            var scale = probe.Unit is { } unit && Units.TryScale(probe.Measurand, unit, out var found) ? found : UnitScale.Same;
            Route(probe.Topic).AddProbe(i, probe, scale);
        }

        Limits = [.. plan.Probes.Select(p => LimitOf(plan, p))];
        StopKeys = [.. plan.Probes.Select(p => Stops.TryOf(p.Measurand, out _, out var rule) ? rule.KeyFor(p.Id) : "")];
        LowKeys = [.. plan.Probes.Select(p => RuleBook.BelowLimit.KeyFor(p.Id))];
        HighKeys = [.. plan.Probes.Select(p => RuleBook.AboveLimit.KeyFor(p.Id))];
        TrustKeys = [.. plan.Probes.Select(p => RuleBook.ProbeNotTrusted.KeyFor(p.Id))];
        SilentKeys = [.. plan.Probes.Select(p => RuleBook.Silent.KeyFor(p.Id))];
        ClockKeys = [.. plan.Probes.Select(p => RuleBook.ClockDoubted.KeyFor(p.Id))];
        OverdueKeys = [.. plan.Pools.Select(p => RuleBook.CheckOverdue.KeyFor(p.Id))];
        HasDuties = plan.Pools.Any(p => !p.Duties.IsEmpty);
        FlowSwitches = [.. plan.Probes.Select(p => p.FlowSwitchId is { } id && probes.TryGetValue(id, out var i) ? i : -1)];
        for (var i = 0; i < plan.Pumps.Length; i++)
        {
            pumps[plan.Pumps[i].Id] = i;
            Route(plan.Pumps[i].StateTopic).PumpState = i;
            if (plan.Pumps[i].TankTopic is { } tank) Route(tank).PumpTank = i;
        }
    }

    /// <summary>The limit on each probe's measurand in its pool; null where there is none.</summary>
    public LimitPlan?[] Limits { get; }

    /// <summary>Alarm key of the stop on each probe.</summary>
    public string[] StopKeys { get; }

    /// <summary>Alarm key of each probe's low limit.</summary>
    public string[] LowKeys { get; }

    /// <summary>Alarm key of each probe's high limit.</summary>
    public string[] HighKeys { get; }

    /// <summary>Alarm key of each probe that cannot be believed.</summary>
    public string[] TrustKeys { get; }

    /// <summary>Alarm key of each probe's silence.</summary>
    public string[] SilentKeys { get; }

    /// <summary>Alarm key of each probe's clock.</summary>
    public string[] ClockKeys { get; }

    /// <summary>Some pool has checks due by the clock.</summary>
    public bool HasDuties { get; }

    /// <summary>Alarm key of each pool's overdue checks.</summary>
    public string[] OverdueKeys { get; }

    /// <summary>For each probe the index of its flow switch, or -1.</summary>
    public int[] FlowSwitches { get; }

    public static PlanIndex Of(CircuitPlan plan) => Known.GetValue(plan, static p => new PlanIndex(p));

    public IEnumerable<string> Topics => topics.Keys;

    public TopicRoute? Find(string topic) => topics.GetValueOrDefault(topic);

    public int Probe(string? id) => id is null ? -1 : probes.GetValueOrDefault(id, -1);

    public int Pool(string? id) => id is null ? -1 : pools.GetValueOrDefault(id, -1);

    public int Pump(string? id) => id is null ? -1 : pumps.GetValueOrDefault(id, -1);

    private TopicRoute Route(string topic)
    {
        if (!topics.TryGetValue(topic, out var route)) topics[topic] = route = new TopicRoute();
        return route;
    }

    private static LimitPlan? LimitOf(CircuitPlan plan, ProbePlan probe) =>
        plan.Pools.FirstOrDefault(p => p.Id == probe.PoolId)?.Limits.FirstOrDefault(l => l.Measurand == probe.Measurand);
}

/// <summary>Who listens to a topic.</summary>
internal sealed class TopicRoute
{
    private readonly Dictionary<string, int> byName = new(StringComparer.Ordinal);
    private readonly List<UnitScale> scales = [];
    private readonly List<int> probes = [];

    /// <summary>How the payload is read.</summary>
    public PayloadFormat Format { get; private set; }

    /// <summary>Pump whose state this is, or -1.</summary>
    public int PumpState { get; set; } = -1;

    /// <summary>Pump whose tank level this is, or -1.</summary>
    public int PumpTank { get; set; } = -1;

    public void AddProbe(int index, ProbePlan probe, UnitScale scale)
    {
        Format = probe.Format;
        byName[probe.RecordName ?? ""] = probes.Count;
        probes.Add(index);
        scales.Add(scale);
    }

    /// <summary>The probe that a record name means; a plain number has the empty name.</summary>
    public bool TryProbe(string name, out int probe, out UnitScale scale)
    {
        (probe, scale) = (-1, default);
        if (!byName.TryGetValue(name, out var i)) return false;
        (probe, scale) = (probes[i], scales[i]);
        return true;
    }
}
