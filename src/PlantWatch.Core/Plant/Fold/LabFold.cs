using System.Collections.Immutable;
using System.Text.Json;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Results of the laboratory. Only a newer one inside its limit, or a person who may, takes back one that was outside; no chemistry comes in here.</summary>
internal static class LabFold
{
    private const int ResultsRemembered = 256;
    private static readonly TimeSpan ClockSkew = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan Oldest = TimeSpan.FromDays(366);

    public static Outcome Enter(Draft draft, LabResultEntered said)
    {
        var result = said.Result;
        var content = ContentHash.Of(JsonSerializer.Serialize(result, PlantJson.AnyNumber));
        foreach (var known in draft.KnownLabResults)
            if (known.Id == result.Id)
                return known.ContentHash == content ? Outcome.AlreadyDone.Instance : No(TurnedDownKind.Conflict, "id", "id.taken");
        var pool = draft.Index.Pool(result.PoolId);
        if (pool < 0) return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "poolId", Reason.Of("pool.unknown", result.PoolId));
        if (Objection(result, said.At) is { } no) return no;
        var corrected = draft.KnownLabResults.Any(known => known.Corrects == result.Id);
        draft.KnownLabResults = Remember(draft.KnownLabResults, new KnownCheck(result.Id, content, result.Corrects));
        draft.Entries.Add(new RecordEntry(result.Id, said.At, result.SampledAt, result.PoolId, new LabResultEntry(result, said.At, said.Water)));
        if (result.Corrects is { } wrong) Withdraw(draft, pool, wrong);
        if (!corrected) Take(draft, pool, result, said.At);
        Look(draft, pool, said.At);
        return Outcome.Done.Instance;
    }

    public static Outcome Close(Draft draft, LabResultClosed said)
    {
        var pool = Array.FindIndex(draft.Pools, p => p.Laboratory.Any(s => s.Outside?.ResultId == said.ResultId));
        if (pool < 0) return draft.KnownLabResults.Any(k => k.Id == said.ResultId) ? Outcome.AlreadyDone.Instance : No(TurnedDownKind.NotFound, "id", "lab.not_open");
        if (string.IsNullOrWhiteSpace(said.Why)) return No(TurnedDownKind.Invalid, "why", "field.required");
        if (draft.Plan.People.Named(said.By) is not { MayReopen: true }) return No(TurnedDownKind.Invalid, "by", "lab.not_entitled");
        var plan = draft.Plan.Pools[pool];
        Keep(draft, pool, [.. draft.Pools[pool].Laboratory.Select(s => s.Outside?.ResultId == said.ResultId ? s.Closed() : s)]);
        draft.Write(said.At, said.At, plan.Id, new LabClosedEntry(said.ResultId, said.By, said.Why));
        Look(draft, pool, said.At);
        return Outcome.Done.Instance;
    }

    /// <summary>Time went on, or limits changed: samples become due, and what is known is held against the limits of now.</summary>
    public static void Tick(Draft draft, Instant now)
    {
        for (var i = 0; i < draft.Pools.Length; i++)
            if (!draft.Pools[i].Laboratory.IsEmpty || draft.Plan.Pools[i].Laboratory.Every is not null || draft.Pools[i].SamplesExpectedSince.IsSet) Look(draft, i, now);
    }

    private static void Take(Draft draft, int pool, LabResult result, Instant at)
    {
        var all = draft.Pools[pool].Laboratory;
        foreach (var count in result.Counts)
        {
            var known = all.FirstOrDefault(s => s.Organism == count.Organism && s.Point == result.Point);
            var next = (known ?? new(count.Organism, result.Point, null, null, Instant.Never)).With(
                new LabFinding(result.Id, result.SampledAt, at, count), LabLimits.Of(draft.Plan.Pools[pool], draft.Pools[pool].Limits, count.Organism));
            all = known is null ? all.Add(next) : all.Replace(known, next);
        }

        Keep(draft, pool, all);
        if (result.SampledAt > draft.Pools[pool].LastLabSampleAt) draft.Pools[pool] = draft.Pools[pool] with { LastLabSampleAt = result.SampledAt };
    }

    // What a corrected report said was never so; what it took the place of is not brought back, since the correction speaks of the same sample.
    private static void Withdraw(Draft draft, int pool, Guid wrong) => Keep(draft, pool,
    [
        .. draft.Pools[pool].Laboratory.Select(s => s with
        {
            Newest = s.Newest?.ResultId == wrong ? s.Outside?.ResultId == wrong ? null : s.Outside : s.Newest,
            Outside = s.Outside?.ResultId == wrong ? null : s.Outside,
        }),
    ]);

    private static void Look(Draft draft, int pool, Instant now)
    {
        var (plan, all, limits) = (draft.Plan.Pools[pool], draft.Pools[pool].Laboratory, draft.Pools[pool].Limits);
        foreach (var standing in all)
            if (standing.Judged(LabLimits.Of(plan, limits, standing.Organism)) is var judged && judged != standing) all = all.Replace(standing, judged);
        Keep(draft, pool, all);
        foreach (var organism in Organisms.All) LookAtCount(draft, plan, organism, Worst(all, organism), LabLimits.Of(plan, limits, organism), now);
        LookAtDue(draft, pool, plan, all, now);
    }

    private static LabFinding? Worst(ImmutableArray<LabStanding> all, Organism organism) =>
        all.Where(s => s.Organism == organism && s.Outside is not null).Select(s => s.Outside!).OrderBy(f => f.SampledAt).FirstOrDefault();

    private static void LookAtCount(Draft draft, PoolPlan plan, Organism organism, LabFinding? outside, LabLimit? limit, Instant now)
    {
        var subject = $"{plan.Id}/{organism.Key()}";
        var key = RuleBook.LaboratoryOutside.KeyFor(subject);
        if (outside is null && !draft.Alarms.Knows(key)) return;
        draft.Alarms.Look(RuleBook.LaboratoryOutside, key, subject, outside is not null, now, () => Cause(plan, organism, outside!, limit), renew: true);
    }

    private static Reason Cause(PoolPlan plan, Organism organism, LabFinding outside, LabLimit? limit)
    {
        var (name, key, count, volume) = (plan.Name, organism.Key(), outside.Count.PerBasis, organism.BasisMillilitres());
        if (limit is null) return Reason.Of("lab.outside_limit_gone", name, key, count, volume);
        return Reason.Of(outside.Count.Sense == CountSense.Above ? "lab.outside_above" : "lab.outside", name, key, count, volume, limit.High);
    }

    private static void LookAtDue(Draft draft, int pool, PoolPlan plan, ImmutableArray<LabStanding> all, Instant now)
    {
        var state = draft.Pools[pool];
        var expected = plan.Laboratory.Every is null ? Instant.Never : state.SamplesExpectedSince.IsSet ? state.SamplesExpectedSince : now;
        if (expected != state.SamplesExpectedSince) draft.Pools[pool] = state = state with { SamplesExpectedSince = expected };
        var sample = LabDue.Sample(plan.Laboratory, expected, state.LastLabSampleAt);
        var resample = LabDue.Resample(plan.Laboratory, all);
        Tell(draft, RuleBook.LaboratorySampleOverdue, plan, sample, now, "lab.sample_overdue");
        Tell(draft, RuleBook.ResampleOverdue, plan, resample, now, "lab.resample_overdue");
    }

    private static void Tell(Draft draft, Rule rule, PoolPlan plan, Instant due, Instant now, string code)
    {
        var (key, overdue) = (rule.KeyFor(plan.Id), due.IsSet && now > due);
        if (overdue || draft.Alarms.Knows(key)) draft.Alarms.Look(rule, key, plan.Id, overdue, now, () => Reason.Of(code, plan.Name, (now - due).TotalDays));
    }

    private static void Keep(Draft draft, int pool, ImmutableArray<LabStanding> all)
    {
        if (all != draft.Pools[pool].Laboratory) draft.Pools[pool] = draft.Pools[pool] with { Laboratory = all };
    }

    private static Outcome.TurnedDown? Objection(LabResult result, Instant now)
    {
        if (string.IsNullOrWhiteSpace(result.By)) return No(TurnedDownKind.Invalid, "by", "field.required");
        if (string.IsNullOrWhiteSpace(result.Laboratory)) return No(TurnedDownKind.Invalid, "laboratory", "field.required");
        if (string.IsNullOrWhiteSpace(result.SampleNumber)) return No(TurnedDownKind.Invalid, "sampleNumber", "field.required");
        if (result.SampledAt > now + ClockSkew || result.SampledAt < now - Oldest) return No(TurnedDownKind.Invalid, "sampledAt", "lab.time_impossible");
        if (result.ReportedAt > now + ClockSkew || result.ReportedAt < result.SampledAt) return No(TurnedDownKind.Invalid, "reportedAt", "lab.reported_before");
        if (result.Counts.IsDefaultOrEmpty) return No(TurnedDownKind.Invalid, "counts", "field.required");
        for (var i = 0; i < result.Counts.Length; i++)
            if (!result.Counts[i].IsPossible) return No(TurnedDownKind.Invalid, $"counts[{i}]", "lab.count_impossible");
        return result.Counts.Select(c => c.Organism).Distinct().Count() < result.Counts.Length ? No(TurnedDownKind.Invalid, "counts", "lab.counted_twice") : null;
    }

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, string code) => Outcome.TurnedDown.Because(kind, field, Reason.Of(code));

    private static ImmutableArray<KnownCheck> Remember(ImmutableArray<KnownCheck> known, KnownCheck result) =>
        known.Length < ResultsRemembered ? known.Add(result) : known.RemoveAt(0).Add(result);
}
