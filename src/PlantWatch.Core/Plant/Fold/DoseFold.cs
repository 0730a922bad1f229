using System.Collections.Immutable;
using System.Text.Json;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Doses that people gave: kept as entered, and held against the next checks once they have mixed.</summary>
internal static class DoseFold
{
    // Older ones are found by their id in the record; the shell looks there before it sends.
    private const int DosesRemembered = 256;
    private const double MostKilograms = 100_000;
    private static readonly TimeSpan ClockSkew = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan Oldest = TimeSpan.FromDays(30);

    public static Outcome Give(Draft draft, DoseGiven said)
    {
        var dose = said.Dose;
        // What the shell worked out is no part of what the person said: sent again an hour later it may differ.
        var content = ContentHash.Of(JsonSerializer.Serialize(dose with { Predicted = [], MixedAt = default, Strength = 0, PredictedFor = null, StrengthUncertainty = null }, PlantJson.AnyNumber));
        foreach (var known in draft.KnownDoses)
            if (known.Id == dose.Id)
                return known.ContentHash == content ? Outcome.AlreadyDone.Instance : Outcome.TurnedDown.Because(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        if (draft.Index.Pool(dose.PoolId) < 0) return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "poolId", Reason.Of("pool.unknown", dose.PoolId));
        if (Objection(dose, said.At) is { } no) return no;
        var isCorrected = draft.KnownDoses.Any(known => known.Corrects == dose.Id);
        draft.KnownDoses = Remember(draft.KnownDoses, new KnownCheck(dose.Id, content, dose.Corrects));
        draft.Entries.Add(new RecordEntry(dose.Id, said.At, dose.GivenAt, dose.PoolId, new DoseEntry(dose, said.At)));
        StoreFold.Give(draft, dose, said.At, isCorrected);
        if (dose.Corrects is { } wrong) draft.Doses = draft.Doses.RemoveAll(d => d.Id == wrong);
        if (!isCorrected && !dose.Predicted.IsDefaultOrEmpty) draft.Doses = Among(draft.Doses, dose);
        return Outcome.Done.Instance;
    }

    /// <summary>A check that came after a dose has mixed answers it, figure by figure.</summary>
    public static void Retest(Draft draft, ManualCheck check, Plausibility plausibility, Instant now)
    {
        if (draft.Doses.IsEmpty) return;
        foreach (var dose in draft.Doses)
            if (dose.PoolId == check.PoolId && check.SampledAt >= dose.MixedAt && check.SampledAt <= dose.MixedAt + ResponseJudge.StillTells)
                Answer(draft, dose, check, plausibility, now);
    }

    /// <summary>Doses that no check can tell of any more leave the list; they stay in the record.</summary>
    public static void Tick(Draft draft, Instant now)
    {
        foreach (var dose in draft.Doses)
            if (now > dose.MixedAt + (2 * ResponseJudge.StillTells))
            {
                draft.Doses = draft.Doses.RemoveAll(d => now > d.MixedAt + (2 * ResponseJudge.StillTells));
                return;
            }
    }

    private static void Answer(Draft draft, GivenDose dose, ManualCheck check, Plausibility plausibility, Instant now)
    {
        var figures = ImmutableArray.CreateBuilder<FigureResponse>();
        foreach (var predicted in dose.Predicted)
        {
            if (plausibility.IsSuspect(predicted.Measurand) || check.Result(predicted.Measurand) is not { } result) continue;
            if (ResponseJudge.Of(predicted, result) is { } answer) figures.Add(answer);
        }

        if (figures.Count == 0) return;
        draft.Write(now, check.SampledAt, dose.PoolId, new DoseResponseEntry(new(dose.Id, check.Id, check.SampledAt, figures.ToImmutable())));
        var left = dose.Predicted.RemoveAll(p => figures.Any(f => f.Measurand == p.Measurand));
        draft.Doses = left.IsEmpty ? draft.Doses.Remove(dose) : draft.Doses.Replace(dose, dose with { Predicted = left });
    }

    // Two doses that move one figure between two tests cannot be told apart. Pools of one circuit share their water: a dose into the neighbour counts too.
    private static ImmutableArray<GivenDose> Among(ImmutableArray<GivenDose> others, GivenDose dose)
    {
        var marked = others.Select(other => other with { Predicted = Marked(other, dose) }).ToImmutableArray();
        return marked.Add(others.Aggregate(dose, (one, other) => one with { Predicted = Marked(one, other) }));
    }

    private static ImmutableArray<PredictedChange> Marked(GivenDose one, GivenDose other) => [.. one.Predicted.Select(
        p => p.Disturbed || (other.GivenAt > p.TestedAt && other.Predicted.Any(o => o.Measurand == p.Measurand)) ? p with { Disturbed = true } : p)];

    private static Outcome.TurnedDown? Objection(GivenDose dose, Instant now)
    {
        if (string.IsNullOrWhiteSpace(dose.By)) return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (!(dose.Kilograms > 0 && dose.Kilograms <= MostKilograms)) return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "amount", Reason.Of("dose.amount_impossible"));
        if (dose.GivenAt > now + ClockSkew || dose.GivenAt < now - Oldest) return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "givenAt", Reason.Of("dose.time_impossible"));
        return dose.Corrects is not null && string.IsNullOrWhiteSpace(dose.CorrectionReason)
            ? Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "correctionReason", Reason.Of("field.required")) : null;
    }

    private static ImmutableArray<KnownCheck> Remember(ImmutableArray<KnownCheck> known, KnownCheck dose) =>
        known.Length < DosesRemembered ? known.Add(dose) : known.RemoveAt(0).Add(dose);
}
