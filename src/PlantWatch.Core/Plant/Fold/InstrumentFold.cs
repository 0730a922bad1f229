using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Instruments: what they read of their standards, and what that makes of the results made with them.</summary>
internal static class InstrumentFold
{
    // A phone's clock may be ahead: twice what a check is allowed (our choice, because nothing of the water is judged by the minute of a verification).
    private static readonly TimeSpan Ahead = 2 * ImpossibleChecks.ClockTolerance;

    // Two years back (our choice, because the last yearly service is told when PlantWatch is new in the house, and older ones say nothing of today).
    private static readonly TimeSpan LongAgo = TimeSpan.FromDays(2 * 366);

    public static Outcome Verify(Draft draft, InstrumentVerified said)
    {
        var index = IndexOf(draft, said.InstrumentId);
        if (index < 0) return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "instrumentId", Reason.Of("instrument.unknown", said.InstrumentId));
        var made = said.Verification;
        foreach (var known in draft.Instruments[index].Made)
            if (known.Id == made.Id) return known == made ? Outcome.AlreadyDone.Instance : Outcome.TurnedDown.Because(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        if (Objection(draft, index, made, said.At) is { } no) return no;
        draft.Instruments = draft.Instruments.SetItem(index, draft.Instruments[index].With(made));
        draft.Write(said.At, made.VerifiedAt, said.InstrumentId, new InstrumentEntry(said.InstrumentId, made));
        return Outcome.Done.Instance;
    }

    /// <summary>What the rest of the plant knows of the instruments is known here too.</summary>
    public static void Arrive(Draft draft, Arrival arrival)
    {
        foreach (var arrived in arrival.Instruments)
        {
            if (IndexOf(draft, arrived.Id) is not (>= 0 and var index)) continue;
            var mine = draft.Instruments[index];
            foreach (var made in arrived.Made)
                if (mine.Made.All(m => m.Id != made.Id)) mine = mine.With(made);
            draft.Instruments = draft.Instruments.SetItem(index, mine);
        }
    }

    /// <summary>The check as it weighs: results of an instrument that failed or is overdue are less sure.</summary>
    public static ManualCheck Weighed(Draft draft, ManualCheck check) => check with
    {
        Results = [.. check.Results.Select(r => r with { InstrumentDoubt = InstrumentWatch.Against(draft.Plan, draft.Instruments, r, check.SampledAt)?.Shared })],
    };

    /// <summary>What is said of the instruments beside the results.</summary>
    public static ImmutableArray<FieldRemark> Remarks(Draft draft, ManualCheck check)
    {
        var said = ImmutableArray.CreateBuilder<FieldRemark>();
        for (var i = 0; i < check.Results.Length; i++)
            if (InstrumentWatch.Against(draft.Plan, draft.Instruments, check.Results[i], check.SampledAt) is { } doubt) said.Add(new($"results[{i}].value", doubt.Why));
        return said.DrainToImmutable();
    }

    private static int IndexOf(Draft draft, string? id)
    {
        for (var i = 0; i < draft.Instruments.Length; i++)
            if (draft.Instruments[i].Id == id) return i;
        return -1;
    }

    private static Outcome.TurnedDown? Objection(Draft draft, int index, Verification made, Instant now)
    {
        var possible = made.Measurand.Possible();
        if (string.IsNullOrWhiteSpace(made.By)) return No("by", Reason.Of("field.required"));
        if (string.IsNullOrWhiteSpace(made.Standard)) return No("standard", Reason.Of("field.required"));
        if (!draft.Plan.Instruments[index].Tests.Contains(made.Measurand)) return No("measurand", Reason.Of("instrument.does_not_test"));
        if (!possible.Contains(made.Nominal)) return No("nominal", Reason.Of("check.value_impossible", possible.Low, possible.High, made.Measurand.Unit()));
        if (!possible.Contains(made.Reading)) return No("reading", Reason.Of("check.value_impossible", possible.Low, possible.High, made.Measurand.Unit()));
        if (!(made.Tolerance > 0 && made.Tolerance <= possible.High)) return No("tolerance", Reason.Of("instrument.tolerance_astray"));
        return !made.VerifiedAt.IsSet || made.VerifiedAt > now + Ahead || now - made.VerifiedAt > LongAgo ? No("verifiedAt", Reason.Of("instrument.verified_astray")) : null;
    }

    private static Outcome.TurnedDown No(string field, Reason why) => Outcome.TurnedDown.Because(TurnedDownKind.Invalid, field, why);
}
