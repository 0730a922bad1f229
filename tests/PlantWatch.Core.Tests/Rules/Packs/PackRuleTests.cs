using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Rules.Packs;
using PlantWatch.Core.Tests.Plant.Fold;
using static PlantWatch.Core.Tests.Rules.Packs.PrintedRows;

namespace PlantWatch.Core.Tests.Rules.Packs;

/// <summary>The picked pack in the life of a circuit: confirmed row by row, watched from then on.</summary>
public sealed class PackRuleTests
{
    private readonly Bench _bench = new(Hall.Plan with
    {
        Pools = [Hall.Plan.Pools[0] with { Limits = [new(Measurand.Ph, 7.2, 7.6, "the hall's own sheet")] }, .. Hall.Plan.Pools.Skip(1)],
        Pack = Pack(IndoorMinimum, RaisedAbove76, PhBand, PhClosure, Ratio45, HalfOfFree),
        People = [new("e", "E. Example", PersonRole.Engineer), new("o", "O. Example", PersonRole.Operator)],
    });

    [Fact]
    public void Nothing_confirmed_alarms_nothing_of_the_pack_and_never_passes_for_normal()
    {
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 0.9), Bench.Test(Measurand.Ph, 8.1));
        Assert.False(_bench.IsUp(RuleBook.TestOutsideLimit, "main/free_chlorine"));
        Assert.False(_bench.IsUp(RuleBook.TestOutsideClosure, "main/ph"));
        // The plant's own limit is watched all the same.
        Assert.True(_bench.IsUp(RuleBook.TestOutsideLimit, "main/ph"));
        Assert.Equal(LimitsWord.Unconfirmed, _bench.State.Pools[0].Limits.Word);
        Assert.Equal(6, _bench.State.Pools[0].Limits.Unconfirmed.Length);
    }

    [Fact]
    public void Only_who_may_set_limits_confirms_and_only_what_the_row_says_now()
    {
        Turned(_bench.Run(at => Said(at, PhBand) with { By = "O. Example" }), "people.may_not_set_limits");
        Turned(_bench.Run(at => Said(at, PhBand) with { By = "S. Stranger" }), "people.may_not_set_limits");
        Turned(_bench.Run(at => Said(at, PhBand) with { Digest = "0000000000000000" }), "pack.row_changed");
        Turned(_bench.Run(at => Said(at, PhBand) with { RowId = "no-such" }), "pack.row_unknown");
        Turned(_bench.Run(at => Said(at, PhBand) with { PackId = "another" }), "pack.not_picked");
        Turned(_bench.Run(at => Said(at, PhBand) with { Document = " " }), "field.required");
        Assert.IsType<Outcome.Done>(Confirm(PhBand));
        Assert.IsType<Outcome.AlreadyDone>(Confirm(PhBand));
        Assert.Equal("E. Example", Assert.Single(_bench.State.Confirmations).By);
    }

    [Fact]
    public void A_row_that_a_person_has_to_judge_can_be_set_aside_and_no_other()
    {
        Turned(_bench.Run(at => Said(at, PhBand) with { Applies = false }), "pack.row_decides_itself");
        var iron = PhBand with { Id = "ph-iron", When = new() { ToJudge = "an iron flocculant" } };
        _bench.Load(_bench.State.Plan with { Pack = Pack(iron) });
        Assert.Equal("ph-iron", Assert.Single(_bench.State.Pools[0].Limits.Unconfirmed));
        _bench.Run(at => Said(at, iron) with { Applies = false });
        Assert.Equal(LimitsWord.InForce, _bench.State.Pools[0].Limits.Word);
        Assert.Equal(7.2, _bench.State.Pools[0].Limits.Find(PackQuantity.Ph, RowGrade.Operating)!.Low);
        Confirm(iron);
        Assert.Equal(LimitsWord.InForce, _bench.State.Pools[0].Limits.Word);
    }

    [Fact]
    public void A_confirmation_survives_a_restart_and_is_taken_back_with_a_reason()
    {
        Confirm(IndoorMinimum);
        _bench.Restart();
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 0.9));
        Assert.True(_bench.IsUp(RuleBook.TestOutsideLimit, "main/free_chlorine"));
        Turned(_bench.Run(at => new PackRowRevoked(at, "made-up", "fc-indoor", "E. Example", "")), "field.required");
        _bench.Run(at => new PackRowRevoked(at, "made-up", "fc-indoor", "E. Example", "the wrong schedule"));
        // What is watched no longer is not left standing.
        Assert.False(_bench.IsUp(RuleBook.TestOutsideLimit, "main/free_chlorine"));
        Assert.Empty(_bench.State.Confirmations);
    }

    [Fact, Evidence("R-007")]
    public void A_test_outside_a_closure_row_closes_and_nothing_softens_it()
    {
        Confirm(PhClosure);
        // 8.01 is within what a photometer can tell of 8.0, and closes all the same.
        _bench.Check(Bench.Test(Measurand.Ph, 8.01));
        Assert.True(_bench.IsUp(RuleBook.TestOutsideClosure, "main/ph"));
        Assert.Equal("test.above_closure", _bench.Alarm(RuleBook.TestOutsideClosure, "main/ph")!.Cause.Code);
        _bench.Check(Bench.Test(Measurand.Ph, 7.5));
        Assert.False(_bench.IsUp(RuleBook.TestOutsideClosure, "main/ph"));
    }

    [Fact, Evidence("R-007")]
    public void More_cyanurate_than_45_times_the_free_chlorine_closes()
    {
        Confirm(Ratio45);
        _bench.Check(Bench.Test(Measurand.CyanuricAcid, 60), Bench.Test(Measurand.FreeChlorine, 1.5));
        Assert.False(_bench.IsUp(RuleBook.TestOutsideClosure, "main/cyanurate_per_free"));
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 1.3));
        Assert.True(_bench.IsUp(RuleBook.TestOutsideClosure, "main/cyanurate_per_free"));
    }

    [Fact, Evidence("R-006")]
    public void A_probe_outside_a_closure_row_closes_as_read_or_as_corrected()
    {
        Confirm(PhClosure);
        _bench.Hold(TimeSpan.FromSeconds(10), (Hall.Ph, 8.05));
        Assert.False(_bench.IsUp(RuleBook.OutsideClosure, "main-ph"));
        _bench.Hold(TimeSpan.FromSeconds(30), (Hall.Ph, 8.05));
        Assert.True(_bench.IsUp(RuleBook.OutsideClosure, "main-ph"));
        // Back inside by less than the deadband is not back.
        _bench.Hold(TimeSpan.FromMinutes(3), (Hall.Ph, 7.97));
        Assert.True(_bench.IsUp(RuleBook.OutsideClosure, "main-ph"));
        _bench.Hold(TimeSpan.FromMinutes(2), (Hall.Ph, 7.9));
        Assert.False(_bench.IsUp(RuleBook.OutsideClosure, "main-ph"));
    }

    [Fact, Evidence("R-015")]
    public void Combined_above_half_of_free_is_an_alarm_where_the_pack_says_so()
    {
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 1.0), Bench.Test(Measurand.TotalChlorine, 1.7));
        Assert.False(_bench.IsUp(RuleBook.CombinedPart, "main/combined_per_free"));
        Confirm(HalfOfFree);
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 1.0), Bench.Test(Measurand.TotalChlorine, 1.7));
        Assert.True(_bench.IsUp(RuleBook.CombinedPart, "main/combined_per_free"));
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 1.4), Bench.Test(Measurand.TotalChlorine, 1.7));
        Assert.False(_bench.IsUp(RuleBook.CombinedPart, "main/combined_per_free"));
    }

    [Fact, Evidence("R-007")]
    public void A_row_that_is_confirmed_is_held_against_the_newest_test_at_once_and_not_against_one_of_yesterday()
    {
        _bench.Check(Bench.Test(Measurand.Ph, 8.2));
        Confirm(PhClosure);
        Assert.True(_bench.IsUp(RuleBook.TestOutsideClosure, "main/ph"));
        _bench.Run(at => new PackRowRevoked(at, "made-up", "ph-closure", "E. Example", "once more"));
        _bench.Skip(TimeSpan.FromHours(13));
        Confirm(PhClosure);
        Assert.False(_bench.IsUp(RuleBook.TestOutsideClosure, "main/ph"));
    }

    [Fact]
    public void A_test_outside_by_less_than_it_can_tell_is_at_the_limit_and_to_be_repeated()
    {
        Confirm(IndoorMinimum);
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 1.97));
        Assert.Equal("test.at_low_limit", _bench.Alarm(RuleBook.TestOutsideLimit, "main/free_chlorine")!.Cause.Code);
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 1.5));
        Assert.Equal("test.below_limit", _bench.Alarm(RuleBook.TestOutsideLimit, "main/free_chlorine")!.Cause.Code);
    }

    [Fact]
    public void The_minimum_follows_the_pH_of_the_same_check()
    {
        Confirm(IndoorMinimum);
        Confirm(RaisedAbove76);
        _bench.Check(Bench.Test(Measurand.Ph, 7.5), Bench.Test(Measurand.FreeChlorine, 2.5));
        Assert.False(_bench.IsUp(RuleBook.TestOutsideLimit, "main/free_chlorine"));
        _bench.Check(Bench.Test(Measurand.Ph, 7.8), Bench.Test(Measurand.FreeChlorine, 2.5));
        Assert.True(_bench.IsUp(RuleBook.TestOutsideLimit, "main/free_chlorine"));
    }

    [Fact, Evidence("R-007"), Evidence("R-012")]
    public void Turbidity_that_is_tested_by_hand_is_held_against_its_rows()
    {
        // Quebec Q-2, r. 39: the standard is 1 NTU, above 5 the pool is closed (published).
        var (standard, closes) = (Row("ntu", PackQuantity.Turbidity, null, 1, "s. 5"), Row("ntu-closure", PackQuantity.Turbidity, null, 5, "s. 17") with { Grade = RowGrade.Closure });
        _bench.Load(_bench.State.Plan with { Pack = Pack(standard, closes) });
        Confirm(standard);
        Confirm(closes);
        _bench.Check(Bench.Test(Measurand.Turbidity, 0.6));
        Assert.False(_bench.IsUp(RuleBook.TestOutsideLimit, "main/turbidity"));
        _bench.Check(Bench.Test(Measurand.Turbidity, 2));
        Assert.True(_bench.IsUp(RuleBook.TestOutsideLimit, "main/turbidity"));
        Assert.False(_bench.IsUp(RuleBook.TestOutsideClosure, "main/turbidity"));
        _bench.Check(Bench.Test(Measurand.Turbidity, 6));
        Assert.True(_bench.IsUp(RuleBook.TestOutsideClosure, "main/turbidity"));
        Assert.Equal("NTU", _bench.Alarm(RuleBook.TestOutsideClosure, "main/turbidity")!.Cause.Facts[4].Text);
    }

    [Fact, Evidence("R-004")]
    public void A_row_on_clarity_waits_like_any_other_and_is_watched_by_every_look_at_the_bottom()
    {
        var clear = Row("clear", PackQuantity.Clarity, null, null, "MAHC s. 6.6.3.1: the bottom is not visible, close (published)") with { Grade = RowGrade.Closure };
        _bench.Load(_bench.State.Plan with { Pack = Pack(clear) });
        Assert.Equal("clear", Assert.Single(_bench.State.Pools[0].Limits.Unconfirmed));
        Confirm(clear);
        Assert.Equal(LimitsWord.InForce, _bench.State.Pools[0].Limits.Word);
        Assert.Equal((1.0, "clear"), _bench.State.Pools[0].Limits.Find(PackQuantity.Clarity, RowGrade.Closure) is { } b ? (b.Low, b.LowFrom) : default);
        _bench.Check(_bench.CheckOf() with { BottomVisible = false });
        Assert.True(_bench.IsUp(RuleBook.StopBottom, "main"));
    }

    private Outcome Confirm(PackRow row) => _bench.Run(at => Said(at, row));

    private static PackRowConfirmed Said(Instant at, PackRow row) => new(at, "made-up", row.Id, RowDigest.Of(row), "E. Example", "the regulation, schedule 1");

    private static void Turned(Outcome outcome, string code) => Assert.Equal(code, Assert.Single(Assert.IsType<Outcome.TurnedDown>(outcome).Remarks).Reason.Code);
}
