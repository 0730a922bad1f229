using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A manual check: kept as evidence, compared with every probe of its pool, remembered as the pool's newest knowledge.</summary>
internal static class CheckFold
{
    // Checks older than these many are found by their id in the record; the shell looks there before it sends.
    private const int ChecksRemembered = 512;

    public static Outcome Enter(Draft draft, CheckEntered said)
    {
        var check = said.Check.AsSent();
        var content = ContentHash.Of(System.Text.Json.JsonSerializer.Serialize(check, PlantJson.AnyNumber));
        foreach (var known in draft.KnownChecks)
            if (known.Id == check.Id)
                return known.ContentHash == content ? Outcome.AlreadyDone.Instance
                    : Outcome.TurnedDown.Because(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));

        var pool = draft.Index.Pool(check.PoolId);
        if (pool < 0) return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "poolId", Reason.Of("pool.unknown", check.PoolId));
        var plausibility = CheckPlausibility.Of(draft.Plan, draft.Pools[pool], check, said.At, OrpAt(draft, said), Reagent(draft, check));
        if (!plausibility.Impossible.IsEmpty) return new Outcome.TurnedDown(TurnedDownKind.Invalid, plausibility.Impossible);

        plausibility = plausibility with { Unlikely = plausibility.Unlikely.AddRange(InstrumentFold.Remarks(draft, check)) };
        // From two phones a correction may arrive before what it corrects: that is kept as evidence then, and nothing rests on it.
        var isCorrected = draft.KnownChecks.Any(known => known.Corrects == check.Id);
        if (isCorrected) plausibility = plausibility with { Unlikely = [new("id", Reason.Of("check.corrected_already"))] };
        draft.KnownChecks = Remember(draft.KnownChecks, new KnownCheck(check.Id, content, check.Corrects));
        // The record keeps it as it is judged: a result is less sure where its instrument is.
        check = InstrumentFold.Weighed(draft, check);
        said = said with { Check = check };
        draft.Entries.Add(new RecordEntry(check.Id, said.At, check.SampledAt, check.PoolId, new CheckEntry(check, said.At, plausibility.Unlikely)));
        if (isCorrected) return new Outcome.CheckTaken([], plausibility.Unlikely);
        var judgements = Judge(draft, said, plausibility);
        if (check.Corrects is { } corrected)
        {
            PoolFold.Withdraw(draft, corrected);
            IncidentFold.Withdraw(draft, corrected);
        }

        IncidentFold.Take(draft, check, plausibility);
        DoseFold.Retest(draft, check, plausibility, said.At);
        if (IsOfOtherWater(draft, check)) return new Outcome.CheckTaken(judgements, plausibility.Unlikely);
        PoolFold.Learn(draft, pool, check, plausibility, judgements, said.At);
        SupervisionFold.Tested(draft, pool, check, plausibility, said.At);
        BalanceFold.Learn(draft, pool, check, said.At);
        DoubtFold.Learn(draft, pool, check, plausibility, judgements, said.At);
        return new Outcome.CheckTaken(judgements, plausibility.Unlikely);
    }

    // Sampled before the pool was filled anew and told later: evidence of the record, and of no water that is there.
    private static bool IsOfOtherWater(Draft draft, ManualCheck check) => check.SampledAt < draft.Pools[draft.Index.Pool(check.PoolId)].FilledAt;

    private static ImmutableArray<Judgement> Judge(Draft draft, CheckEntered said, Plausibility plausibility)
    {
        var judgements = ImmutableArray.CreateBuilder<Judgement>();
        JudgeThose(draft, said, plausibility, judgements, measurand => measurand != Measurand.Orp);
        // What the ORP should be hangs on the pH that is believed, so its probes come last.
        JudgeThose(draft, said, plausibility, judgements, measurand => measurand == Measurand.Orp && !IsOfOtherWater(draft, said.Check));
        judgements.Sort((a, b) => draft.Index.Probe(a.ProbeId).CompareTo(draft.Index.Probe(b.ProbeId)));
        return judgements.DrainToImmutable();
    }

    private static void JudgeThose(
        Draft draft, CheckEntered said, Plausibility plausibility, ImmutableArray<Judgement>.Builder judgements, Func<Measurand, bool> those)
    {
        for (var i = 0; i < draft.Probes.Length; i++)
        {
            var plan = draft.Plan.Probes[i];
            if (!those(plan.Measurand)) continue;
            if (!Reconciliation.Concerns(plan, said.Check) || Reconciliation.Judge(draft.Probes[i].Trust, Input(draft, i, said, plausibility)) is not { } judged)
            {
                Withdraw(draft, i, said);
                continue;
            }

            draft.Probes[i] = draft.Probes[i] with { Trust = judged.Trust };
            draft.Write(said.At, said.Check.SampledAt, plan.Id, new JudgementEntry(judged.Judgement));
            judgements.Add(judged.Judgement);
            StandingFold.Look(draft, i, said.At);
        }
    }

    // A correction may name another pool, or leave a result out: what the corrected check said of this probe was never so.
    private static void Withdraw(Draft draft, int index, CheckEntered said)
    {
        var trust = draft.Probes[index].Trust;
        if (said.Check.Corrects is not { } wrong || PairBook.Without(trust.Pairs, wrong) is var left && left.Length == trust.Pairs.Length) return;
        trust = Reconciliation.Refold(trust with { Pairs = left }, draft.Plan.Probes[index], draft.Calibrations.All, said.At);
        draft.Probes[index] = draft.Probes[index] with { Trust = trust };
        StandingFold.Look(draft, index, said.At);
    }

    private static ProbeCheck Input(Draft draft, int index, CheckEntered said, Plausibility plausibility) => Input(draft, index, draft.Plan.Probes[index], said, plausibility);

    private static ProbeCheck Input(Draft draft, int index, ProbePlan plan, CheckEntered said, Plausibility plausibility) => new()
    {
        Plan = draft.Plan,
        Probe = plan,
        WatchedSince = WatchedSince(draft.Probes[index]),
        SignalFails = draft.Probes[index].Signal.Standing == Standing.Failure,
        BelievedPh = plan.Measurand == Measurand.Orp ? BelievedPh.Of(draft, said) : default,
        Check = said.Check,
        Suspect = plausibility.InItself,
        Reagent = Reagent(draft, said.Check),
        InBackwash = BackwashFold.Holds(draft, said.Check.SampledAt),
        Now = said.At,
        Window = WindowOf(said, plan.Id),
        WaterTemperature = draft.Plan.Probes.FirstOrDefault(p => p.Measurand == Measurand.Temperature && p.PoolId == plan.PoolId) is { } thermometer
            ? WindowOf(said, thermometer.Id) : null,
        Cyanurate = draft.Pools[draft.Index.Pool(said.Check.PoolId)].Manual.TryGetValue(Measurand.CyanuricAcid, out var cyanurate) ? cyanurate.Result.Value : null,
        Calibrations = draft.Calibrations.All,
    };

    private static Func<TestResult, Reason?> Reagent(Draft draft, ManualCheck check) => result => ReagentWatch.Against(draft.Plan, draft.Reagents, result, check.SampledAt);

    private static Instant WatchedSince(ProbeState probe) =>
        !probe.Signal.LastAt.IsSet ? Instant.Never : probe.Signal.BlindAt.IsSet ? probe.Signal.BlindAt : probe.ExpectedSince;

    internal static ProbeWindow? WindowOf(CheckEntered said, string series)
    {
        if (said.Windows.IsDefault) return null;
        foreach (var window in said.Windows)
            if (window.Series == series) return window;
        return null;
    }

    // What ORP was when the sample was taken: from the window where there is one, else the newest reading if it is of that time.
    private static Millivolts? OrpAt(Draft draft, CheckEntered said)
    {
        for (var i = 0; i < draft.Probes.Length; i++)
        {
            var plan = draft.Plan.Probes[i];
            // A frozen or broken probe is no witness against a test.
            if (draft.Probes[i].Signal.Standing == Standing.Failure) continue;
            if (plan.Measurand != Measurand.Orp || !(plan.PoolId == said.Check.PoolId || (plan.PoolId is null && draft.Plan.Pools.Length == 1))) continue;
            var last = draft.Probes[i].Last;
            var value = WindowOf(said, plan.Id) is { Count: > 0 } window ? draft.Calibrations.Correct(i, said.Check.SampledAt, window.Mean)
                : last.Quality.IsGood() && (last.MeasuredAt - said.Check.SampledAt).Duration() <= SignalLimits.SilentAfter(plan.Every) ? last.Value
                : double.NaN;
            if (Quantity.TryFrom(value, out Millivolts orp)) return orp;
        }

        return null;
    }

    private static ImmutableArray<KnownCheck> Remember(ImmutableArray<KnownCheck> known, KnownCheck check) =>
        known.Length < ChecksRemembered ? known.Add(check) : known.RemoveAt(0).Add(check);
}
