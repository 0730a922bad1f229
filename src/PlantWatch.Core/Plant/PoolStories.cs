using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant;

/// <summary>Gathers the signs of a pool from a circuit's state, for its story to be told.</summary>
public static class PoolStories
{
    /// <summary>The newest check that the pool remembers a result of; empty without one.</summary>
    public static Guid NewestCheck(PoolState pool)
    {
        var (id, at) = (Guid.Empty, Instant.Never);
        foreach (var value in pool.Manual.Values)
            if (value.Result.Measurand is Measurand.Ph or Measurand.FreeChlorine && value.SampledAt > at) (id, at) = (value.CheckId, value.SampledAt);
        return id;
    }

    /// <summary>All signs of a pool.</summary>
    /// <param name="state">The circuit.</param>
    /// <param name="plan">The pool.</param>
    /// <param name="now">When the story is told.</param>
    /// <param name="check">The newest check as it was entered; null when it is not at hand, and then its place and the panel are not known.</param>
    /// <param name="judgements">What that check said of each probe; empty when not at hand.</param>
    public static StoryInput Of(CircuitState state, PoolPlan plan, Instant now, ManualCheck? check, ImmutableArray<Judgement> judgements)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(plan);
        var pool = state.Pools.First(p => p.Id == plan.Id);
        var newest = NewestCheck(pool);
        ImmutableArray<ManualValue> values = [.. pool.Manual.Values.Where(v => v.CheckId == newest)];
        return new()
        {
            Pool = plan,
            Now = now,
            CheckId = newest,
            SampledAt = values.IsEmpty ? Instant.Never : values[0].SampledAt,
            Point = check?.Id == newest ? check.Point : SamplePoint.Unknown,
            Tests = [.. values.Select(v => new StoryTest(v.Result, v.Suspect))],
            Probes = [.. Probes(state, plan, newest, check, judgements)],
            Pumps = [.. Pumps(state, plan, now)],
            Celsius = Celsius(state, plan, pool),
            Cyanurate = pool.Manual.TryGetValue(Measurand.CyanuricAcid, out var cyanurate) ? cyanurate.Result.Value : null,
            MixedAt = MixedAt(state, plan),
            IncidentOpen = state.Incidents.Values.Any(i => i.PoolId == plan.Id),
        };
    }

    private static List<StoryProbe> Probes(CircuitState state, PoolPlan pool, Guid newest, ManualCheck? check, ImmutableArray<Judgement> judgements)
    {
        List<StoryProbe> probes = [];
        for (var i = 0; i < state.Probes.Length; i++)
        {
            var (plan, probe) = (state.Plan.Probes[i], state.Probes[i]);
            if ((plan.PoolId is not null && plan.PoolId != pool.Id) || TrustModel.Of(plan.Measurand) is null) continue;
            var said = judgements.FirstOrDefault(j => j.ProbeId == plan.Id && j.CheckId == newest);
            var received = Received(probe.Trust, newest);
            probes.Add(new()
            {
                Plan = plan,
                Signal = probe.Signal,
                Trust = probe.Trust,
                Read = said is { Probe.IsKnown: true } ? said.Probe : Corrected(state, plan, received, probe.Trust, newest),
                Received = received,
                WhyNot = said is { Verdict: Verdict.NotComparable, Reasons: [var why, ..] } ? why : null,
                Panel = check?.Id == newest ? check.Panel.FirstOrDefault(p => p.ProbeId == plan.Id)?.Value : null,
            });
        }

        return probes;
    }

    private static Estimate Received(ProbeTrust trust, Guid check)
    {
        foreach (var pair in trust.Pairs)
            if (pair.CheckId == check) return pair.Raw;
        return default;
    }

    private static Estimate Corrected(CircuitState state, ProbePlan plan, Estimate received, ProbeTrust trust, Guid check) =>
        received.IsKnown && CalibrationsInForce.At(state.Calibrations, plan.Id, trust.Pairs.First(p => p.CheckId == check).SampledAt) is { } held
            ? new(held.Apply(received.Value), received.StandardUncertainty * Math.Abs(held.Slope)) : received;

    // What a pump said it does still counts for the time since; a pump without words of an hour is not counted.
    private static List<StoryPump> Pumps(CircuitState state, PoolPlan pool, Instant now)
    {
        List<StoryPump> pumps = [];
        for (var i = 0; i < state.Pumps.Length; i++)
        {
            var (plan, pump) = (state.Plan.Pumps[i], state.Pumps[i]);
            if ((plan.PoolId is null || plan.PoolId == pool.Id) && DosingAims.Of(plan.Doses) is not DosingAim.Other and var aim)
                pumps.Add(new(plan.Name, aim, pump.Run.Until(pump.Activity, now)));
        }

        return pumps;
    }

    private static double? Celsius(CircuitState state, PoolPlan plan, PoolState pool)
    {
        for (var i = 0; i < state.Probes.Length; i++)
            if (state.Plan.Probes[i] is { Measurand: Measurand.Temperature } probe && (probe.PoolId is null || probe.PoolId == plan.Id) && state.Probes[i].Last.Quality.IsGood())
                return state.Probes[i].Last.Value;
        return pool.Manual.TryGetValue(Measurand.Temperature, out var tested) ? tested.Result.Value : null;
    }

    private static Instant MixedAt(CircuitState state, PoolPlan plan)
    {
        var mixed = Instant.Never;
        foreach (var dose in state.Doses)
            if (dose.PoolId == plan.Id && dose.Predicted.Any(p => p.Measurand is Measurand.Ph or Measurand.FreeChlorine)) mixed = Instant.Later(mixed, dose.MixedAt);
        return mixed;
    }
}
