using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using PlantWatch.Core.Dosing.Supervision.Live;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Look-ups over a plan, made once for each plan and forgotten with it.</summary>
internal sealed class PlanIndex
{
    private static readonly ConditionalWeakTable<CircuitPlan, PlanIndex> Known = [];

    private static readonly Rule[] PumpTroubles = [RuleBook.NothingArrives, RuleBook.ComesUnasked, RuleBook.DosesTooMuch, RuleBook.ProductsSwapped, RuleBook.DoesTooLittle];

    private readonly Dictionary<Rule, string[]> _troubleKeys;
    private readonly Dictionary<string, TopicRoute> _topics = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _probes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _pools = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _pumps = new(StringComparer.Ordinal);

    private PlanIndex(CircuitPlan plan)
    {
        for (var i = 0; i < plan.Pools.Length; i++) _pools[plan.Pools[i].Id] = i;
        for (var i = 0; i < plan.Probes.Length; i++)
        {
            var probe = plan.Probes[i];
            _probes[probe.Id] = i;
            var scale = probe.Unit is { } unit && ReadingUnits.TryScale(probe.Measurand, unit, out var found) ? found : UnitScale.Same;
            Route(probe.Topic).AddProbe(i, probe, scale);
        }

        PoolOf = [.. plan.Probes.Select(p => Pool(p.PoolId))];
        Limiting = [.. plan.Probes.Select(p => p.Measurand.Limiting())];
        ClosureKeys = [.. plan.Probes.Select(p => RuleBook.OutsideClosure.KeyFor(p.Id))];
        PackAsksWater = plan.Pack is { } pack && pack.Rows.Any(r => r.When.AsksWater);
        Stops = [.. plan.Probes.Select(p => Rules.Stops.TryOf(plan, p.Measurand, out var stop, out var rule) ? new StopOnProbe(stop, rule, rule.KeyFor(p.Id)) : null)];
        LowKeys = [.. plan.Probes.Select(p => RuleBook.BelowLimit.KeyFor(p.Id))];
        HighKeys = [.. plan.Probes.Select(p => RuleBook.AboveLimit.KeyFor(p.Id))];
        Tunings = [.. plan.Probes.Select(p => LimitTuning.Of(plan, p))];
        TrustKeys = [.. plan.Probes.Select(p => RuleBook.ProbeNotTrusted.KeyFor(p.Id))];
        SilentKeys = [.. plan.Probes.Select(p => RuleBook.Silent.KeyFor(p.Id))];
        ClockKeys = [.. plan.Probes.Select(p => RuleBook.ClockDoubted.KeyFor(p.Id))];
        SilentAfter = [.. plan.Probes.Select(p => SignalLimits.SilentAfter(p.Every))];
        LateAfter = [.. plan.Probes.Select(p => DeviceClock.LateAfter(p.Every))];
        OverdueKeys = [.. plan.Pools.Select(p => RuleBook.CheckOverdue.KeyFor(p.Id))];
        RepeatKeys = [.. plan.Pools.Select(p => DoubtFold.Watched.Select(m => RuleBook.TestWanted.KeyFor($"{p.Id}/{m.Key()}")).ToArray())];
        Follows = [.. plan.Pumps.Select(p => PumpFollows.Of(plan, p))];
        FollowKeys = [.. plan.Pumps.Select(p => RuleBook.PumpsFollowWrongValue.KeyFor(p.Id))];
        NoFlowKeys = [.. plan.Pumps.Select(p => RuleBook.DosesWithoutFlow.KeyFor(p.Id))];
        RestartKeys = [.. plan.Pumps.Select(p => RuleBook.RestartedUnsafe.KeyFor(p.Id))];
        Waters = DosedWater.Of(plan);
        _troubleKeys = PumpTroubles.ToDictionary(rule => rule, rule => plan.Pumps.Select(p => rule.KeyFor(p.Id)).ToArray());
        NobodyKeys = [.. plan.Pumps.Select(p => RuleBook.TankFilledByNobody.KeyFor(p.Id))];
        Clock = SiteClock.TryOf(plan.TimeZone, out var clock) ? clock : null;
        HasDuties = plan.Pools.Any(p => !p.Duties.IsEmpty);
        FlowSwitches = [.. plan.Probes.Select(p => p.FlowSwitchId is { } id && _probes.TryGetValue(id, out var i) ? i : -1)];
        Circulation = Array.FindIndex([.. plan.Probes], p => p.Measurand == Measurand.CirculationFlow);
        DosingSwitches = [.. plan.Pumps.Select((p, i) => DosingFlow.SwitchOf(plan, p, Follows[i], FlowSwitches))];
        Trends = [.. plan.Probes.Select(p => TrendSetting.Of(plan, p))];
        FastKeys = [.. plan.Probes.Select(p => RuleBook.ChangesTooFast.KeyFor(p.Id))];
        HeadsKeys = [.. plan.Probes.Select(p => RuleBook.HeadsForLimit.KeyFor(p.Id))];
        for (var i = 0; i < plan.Pumps.Length; i++)
        {
            _pumps[plan.Pumps[i].Id] = i;
            Route(plan.Pumps[i].StateTopic).PumpState = i;
            if (plan.Pumps[i].TankTopic is { } tank) Route(tank).PumpTank = i;
            if (plan.Pumps[i].StrokesTopic is { } strokes) Route(strokes).PumpStrokes = i;
        }
    }

    /// <summary>For each probe the index of its pool, or -1.</summary>
    public int[] PoolOf { get; }

    /// <summary>What limits each probe's measurand.</summary>
    public PackQuantity[] Limiting { get; }

    /// <summary>Alarm key of each probe's closure limit.</summary>
    public string[] ClosureKeys { get; }

    /// <summary>Some row of the pack holds or not by what the water is like.</summary>
    public bool PackAsksWater { get; }

    /// <summary>The stop on each probe as the plant has it; null where none holds.</summary>
    public StopOnProbe?[] Stops { get; }

    /// <summary>Alarm key of each probe's low limit.</summary>
    public string[] LowKeys { get; }

    /// <summary>Alarm key of each probe's high limit.</summary>
    public string[] HighKeys { get; }

    /// <summary>How the operating limits of each probe are watched.</summary>
    public LimitTuning[] Tunings { get; }

    /// <summary>Alarm key of each probe that cannot be believed.</summary>
    public string[] TrustKeys { get; }

    /// <summary>Alarm key of each probe's silence.</summary>
    public string[] SilentKeys { get; }

    /// <summary>Alarm key of each probe's clock.</summary>
    public string[] ClockKeys { get; }

    /// <summary>After how long without a reading each probe is silent.</summary>
    public TimeSpan[] SilentAfter { get; }

    /// <summary>By how much a reading of each probe must be older than the watermark to be late.</summary>
    public TimeSpan[] LateAfter { get; }

    /// <summary>Some pool has checks due by the clock.</summary>
    public bool HasDuties { get; }

    /// <summary>Alarm key of each pool's overdue checks.</summary>
    public string[] OverdueKeys { get; }

    /// <summary>Alarm keys of each pool's wanted tests, in the order of <see cref="DoubtFold.Watched"/>.</summary>
    public string[][] RepeatKeys { get; }

    /// <summary>For each pump the index of the probe it follows, or -1.</summary>
    public int[] Follows { get; }

    /// <summary>Alarm key of each pump that follows a wrong value.</summary>
    public string[] FollowKeys { get; }

    /// <summary>Alarm key of a pump under one of the rules that its supervision speaks by.</summary>
    public string TroubleKey(Rule rule, int pump) => _troubleKeys[rule][pump];

    /// <summary>The waters whose dosing pumps are supervised.</summary>
    public ImmutableArray<DosedWater> Waters { get; }

    /// <summary>For each probe the index of its flow switch, or -1.</summary>
    public int[] FlowSwitches { get; }

    /// <summary>Alarm key of each pump that doses without flow.</summary>
    public string[] NoFlowKeys { get; }

    /// <summary>Alarm key of each pump after whose dosing into standing water the circulation was restarted.</summary>
    public string[] RestartKeys { get; }

    /// <summary>Alarm key of each tank that was filled and nobody wrote down what with.</summary>
    public string[] NobodyKeys { get; }

    /// <summary>The site's clock; null where the zone is none.</summary>
    public SiteClock? Clock { get; }

    /// <summary>For each pump the index of the flow switch that tells whether the water it is dosed by flows, or -1.</summary>
    public int[] DosingSwitches { get; }

    /// <summary>Index of the probe of the circulation flow, or -1.</summary>
    public int Circulation { get; }

    /// <summary>How the trend of each probe is followed; null where it is not.</summary>
    public TrendSetting?[] Trends { get; }

    /// <summary>Alarm key of each probe that changes too fast.</summary>
    public string[] FastKeys { get; }

    /// <summary>Alarm key of each probe that heads for a limit.</summary>
    public string[] HeadsKeys { get; }

    public static PlanIndex Of(CircuitPlan plan) => Known.GetValue(plan, static p => new PlanIndex(p));

    /// <summary>The rule of an alarm as it holds for its subject, with the delays that the plant has set.</summary>
    public Rule RuleOf(string number, string subject)
    {
        var rule = RuleBook.All[number];
        if (rule != RuleBook.BelowLimit && rule != RuleBook.AboveLimit) return rule;
        var probe = Probe(subject);
        return probe < 0 ? rule : rule == RuleBook.BelowLimit ? Tunings[probe].Below : Tunings[probe].Above;
    }

    public IEnumerable<string> Topics => _topics.Keys;

    public TopicRoute? Find(string topic) => _topics.GetValueOrDefault(topic);

    public int Probe(string? id) => id is null ? -1 : _probes.GetValueOrDefault(id, -1);

    public int Pool(string? id) => id is null ? -1 : _pools.GetValueOrDefault(id, -1);

    public int Pump(string? id) => id is null ? -1 : _pumps.GetValueOrDefault(id, -1);

    private TopicRoute Route(string topic)
    {
        if (!_topics.TryGetValue(topic, out var route)) _topics[topic] = route = new TopicRoute();
        return route;
    }
}

/// <summary>The stop on a probe.</summary>
internal sealed record StopOnProbe(ValueRange Range, Rule Rule, string Key);

/// <summary>Who listens to a topic.</summary>
internal sealed class TopicRoute
{
    private readonly Dictionary<string, int> _byName = new(StringComparer.Ordinal);
    private readonly List<UnitScale> _scales = [];
    private readonly List<int> _probes = [];

    /// <summary>How the payload is read.</summary>
    public PayloadFormat Format { get; private set; }

    /// <summary>Pump whose state this is, or -1.</summary>
    public int PumpState { get; set; } = -1;

    /// <summary>Pump whose tank level this is, or -1.</summary>
    public int PumpTank { get; set; } = -1;

    /// <summary>Pump whose strokes these are, or -1.</summary>
    public int PumpStrokes { get; set; } = -1;

    public void AddProbe(int index, ProbePlan probe, UnitScale scale)
    {
        Format = probe.Format;
        _byName[probe.RecordName ?? ""] = _probes.Count;
        _probes.Add(index);
        _scales.Add(scale);
    }

    /// <summary>The probe that a record name means; a plain number has the empty name.</summary>
    public bool TryProbe(string name, out int probe, out UnitScale scale)
    {
        (probe, scale) = (-1, default);
        if (!_byName.TryGetValue(name, out var i)) return false;
        (probe, scale) = (_probes[i], _scales[i]);
        return true;
    }
}
