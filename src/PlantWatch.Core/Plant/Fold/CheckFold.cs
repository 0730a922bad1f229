using System.Collections.Immutable;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A manual check: kept as evidence, compared with every probe of its pool, remembered as the pool's newest knowledge.</summary>
internal static class CheckFold
{
    // Checks older than these many are found by their id in the record; the shell looks there before it sends.
    private const int ChecksRemembered = 512;

    public static Outcome Enter(Draft draft, CheckEntered said)
    {
        var check = said.Check;
        var content = ContentHash.Of(System.Text.Json.JsonSerializer.Serialize(check, PlantJson.Options));
        foreach (var known in draft.KnownChecks)
            if (known.Id == check.Id)
                return known.ContentHash == content ? Outcome.AlreadyDone.Instance
                    : Outcome.TurnedDown.Because(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));

        var pool = draft.Index.Pool(check.PoolId);
        if (pool < 0) return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "poolId", Reason.Of("pool.unknown", check.PoolId));
        var plausibility = CheckPlausibility.Of(draft.Plan, draft.Pools[pool], check, said.At, LiveOrp(draft, check.PoolId));
        if (!plausibility.Impossible.IsEmpty) return new Outcome.TurnedDown(TurnedDownKind.Invalid, plausibility.Impossible);

        draft.KnownChecks = Remember(draft.KnownChecks, new KnownCheck(check.Id, content));
        draft.Entries.Add(new RecordEntry(check.Id, said.At, check.SampledAt, check.PoolId, new CheckEntry(check, said.At, plausibility.Unlikely)));
        var judgements = Judge(draft, said, plausibility);
        PoolFold.Learn(draft, pool, check, plausibility, said.At);
        return new Outcome.CheckTaken(judgements, plausibility.Unlikely);
    }

    private static ImmutableArray<Judgement> Judge(Draft draft, CheckEntered said, Plausibility plausibility)
    {
        var judgements = ImmutableArray.CreateBuilder<Judgement>();
        for (var i = 0; i < draft.Probes.Length; i++)
        {
            var plan = draft.Plan.Probes[i];
            if (!Reconciliation.Concerns(plan, said.Check) || Reconciliation.Judge(draft.Probes[i].Trust, Input(draft, plan, said, plausibility)) is not { } judged) continue;
            draft.Probes[i] = draft.Probes[i] with { Trust = judged.Trust };
            draft.Write(said.At, said.Check.SampledAt, plan.Id, new JudgementEntry(judged.Judgement));
            judgements.Add(judged.Judgement);
            StandingFold.Look(draft, i, said.At);
        }

        return judgements.DrainToImmutable();
    }

    private static ProbeCheck Input(Draft draft, ProbePlan plan, CheckEntered said, Plausibility plausibility) => new()
    {
        Plan = draft.Plan,
        Probe = plan,
        Check = said.Check,
        Suspect = plausibility.Suspect,
        Now = said.At,
        Window = WindowOf(said, plan.Id),
        WaterTemperature = draft.Plan.Probes.FirstOrDefault(p => p.Measurand == Measurand.Temperature && p.PoolId == plan.PoolId) is { } thermometer
            ? WindowOf(said, thermometer.Id) : null,
        Cyanurate = draft.Pools[draft.Index.Pool(said.Check.PoolId)].Manual.TryGetValue(Measurand.CyanuricAcid, out var cyanurate) ? cyanurate.Result.Value : null,
        Calibrations = draft.Calibrations.All,
    };

    private static ProbeWindow? WindowOf(CheckEntered said, string series)
    {
        foreach (var window in said.Windows)
            if (window.Series == series) return window;
        return null;
    }

    private static Millivolts? LiveOrp(Draft draft, string poolId)
    {
        for (var i = 0; i < draft.Probes.Length; i++)
            if (draft.Plan.Probes[i] is { Measurand: Measurand.Orp } plan && plan.PoolId == poolId && draft.Probes[i].Last.Quality.IsGood())
                return Millivolts.From(draft.Probes[i].Last.Value);
        return null;
    }

    private static ImmutableArray<KnownCheck> Remember(ImmutableArray<KnownCheck> known, KnownCheck check) =>
        known.Length < ChecksRemembered ? known.Add(check) : known.RemoveAt(0).Add(check);
}
