using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Plant.Fold;

public sealed class CorrectionStepTests
{
    private readonly Bench _bench = new();

    [Fact]
    public void A_correction_is_a_row_of_the_record_and_its_withdrawal_another_and_no_reading_is_touched()
    {
        var probes = _bench.State.Probes;
        Assert.IsType<Outcome.Done>(Make(Correction("a")));
        var made = Assert.IsType<CorrectionEntry>(_bench.Entries[^1].Body).Correction;
        Assert.True(made.IsInForce);
        Assert.IsType<Outcome.Done>(Withdraw(made.Id, "wrong buffer"));
        var withdrawn = Assert.IsType<CorrectionEntry>(_bench.Entries[^1].Body).Correction;
        Assert.Equal(("J. Sample", "wrong buffer", false), (withdrawn.WithdrawnBy, withdrawn.WithdrawnWhy, withdrawn.IsInForce));
        Assert.Equal(made with { WithdrawnAt = withdrawn.WithdrawnAt, WithdrawnBy = "J. Sample", WithdrawnWhy = "wrong buffer" }, withdrawn);
        Assert.Equal(probes.AsEnumerable(), _bench.State.Probes);
    }

    [Fact]
    public void Sent_again_it_is_done_already_also_after_it_was_withdrawn_and_other_content_under_its_id_is_a_conflict()
    {
        var correction = Correction("a");
        Make(correction);
        Assert.IsType<Outcome.AlreadyDone>(Make(correction));
        Withdraw(correction.Id, "wrong buffer");
        Assert.IsType<Outcome.AlreadyDone>(Withdraw(correction.Id, "again"));
        Assert.IsType<Outcome.AlreadyDone>(Make(correction));
        Assert.Equal(TurnedDownKind.Conflict, Refused(Make(correction with { Drift = 0.2 })).Kind);
    }

    [Fact]
    public void Two_never_overlap_but_one_may_follow_what_was_withdrawn()
    {
        var first = Correction("a");
        Make(first);
        Assert.Equal("correction.overlaps", Refused(Make(Correction("b"))).Remarks[0].Reason.Code);
        Withdraw(first.Id, "wrong buffer");
        Assert.IsType<Outcome.Done>(Make(Correction("b")));
        Assert.IsType<Outcome.Done>(Make(Correction("c") with { From = first.To, To = first.To + TimeSpan.FromDays(3) }));
    }

    [Fact]
    public void What_is_impossible_is_refused_beside_its_field()
    {
        var sound = Correction("a");
        Says("probeId", sound with { ProbeId = "nobody" });
        Says("to", sound with { To = sound.From });
        Says("to", sound with { To = _bench.Now + TimeSpan.FromDays(2) });
        Says("gapU", sound with { GapU = 0 });
        Says("gapU", sound with { GapU = 1e300 });
        Says("pivot", sound with { DriftSlope = 0.1, Pivot = 1e300 });
        Says("fouling", sound with { Fouling = 99 });
        Says("drift", sound with { Drift = double.NaN });
        Says("driftSlope", sound with { DriftSlope = 3 });
        Says("why", sound with { Why = " " });
        Assert.Equal(TurnedDownKind.NotFound, Refused(Withdraw(sound.Id, "never made")).Kind);
        Assert.Empty(_bench.State.Corrections);

        void Says(string field, RecordCorrection wrong) => Assert.Equal(field, Refused(Make(wrong)).Remarks[0].Field);
    }

    private RecordCorrection Correction(string id) => new()
    {
        Id = TimeOrderedId.Derive(Hall.Nine, id), ProbeId = "main-ph", From = Hall.Nine - TimeSpan.FromDays(30), To = Hall.Nine - TimeSpan.FromDays(10), Drift = 0.12, GapU = 0.02,
        MadeBy = "J. Sample", Why = "found in buffers",
    };

    private Outcome Make(RecordCorrection correction) => _bench.Run(at => new CorrectionMade(at, correction));

    private Outcome Withdraw(Guid id, string why) => _bench.Run(at => new CorrectionWithdrawn(at, id, "J. Sample", why));

    private static Outcome.TurnedDown Refused(Outcome outcome) => Assert.IsType<Outcome.TurnedDown>(outcome);
}
