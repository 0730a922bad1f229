using System.Text.Json;
using CsCheck;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>Manual checks through the step: taken once, kept as evidence, paired at their sample time whenever they arrive.</summary>
public sealed class CheckTests
{
    private static readonly TimeSpan Hour = TimeSpan.FromHours(1);
    private readonly Bench _bench = new();

    [Fact]
    public void The_same_check_sent_twice_is_taken_once()
    {
        var check = _bench.CheckOf(Bench.Test(Measurand.Ph, 7.4));
        Assert.IsType<Outcome.CheckTaken>(_bench.Check(check, Bench.Window("main-ph", check.SampledAt, 7.4)));
        var state = PlantJson.HashOf(_bench.State with { Watermark = default });
        Assert.IsType<Outcome.AlreadyDone>(_bench.Check(check, Bench.Window("main-ph", check.SampledAt, 7.4)));
        Assert.Equal(state, PlantJson.HashOf(_bench.State with { Watermark = default }));
        Assert.Single(_bench.Entries, e => e.Body is CheckEntry);
    }

    [Fact]
    public void Other_content_under_a_taken_id_is_a_conflict_and_the_first_stands()
    {
        var check = _bench.CheckOf(Bench.Test(Measurand.Ph, 7.4));
        _bench.Check(check);
        var no = Assert.IsType<Outcome.TurnedDown>(_bench.Check(check with { Results = [Bench.Test(Measurand.Ph, 7.2)] }));
        Assert.Equal((TurnedDownKind.Conflict, "id"), (no.Kind, no.Remarks[0].Field));
        Assert.Equal(7.4, _bench.State.Pools[0].Manual[Measurand.Ph].Result.Value);
    }

    [Theory]
    [InlineData(-0.1, "results[0].value", "check.value_negative")]
    [InlineData(900, "results[0].value", "check.value_impossible")]
    public void An_impossible_result_is_refused_beside_its_field_and_nothing_is_kept(double value, string field, string code)
    {
        var no = Assert.IsType<Outcome.TurnedDown>(_bench.Check(Bench.Test(Measurand.FreeChlorine, value)));
        Assert.Equal((TurnedDownKind.Invalid, field, code), (no.Kind, no.Remarks[0].Field, no.Remarks[0].Reason.Code));
        Assert.Empty(_bench.State.KnownChecks);
        Assert.DoesNotContain(_bench.Entries, e => e.Body is CheckEntry);
    }

    [Fact]
    public void A_check_dated_tomorrow_is_refused_and_one_of_an_unknown_pool_is_not_found()
    {
        var check = _bench.CheckOf(Bench.Test(Measurand.Ph, 7.4));
        var future = Assert.IsType<Outcome.TurnedDown>(_bench.Check(check with { SampledAt = _bench.Now + (24 * Hour) }));
        Assert.Equal(("sampledAt", "check.sampled_in_future"), (future.Remarks[0].Field, future.Remarks[0].Reason.Code));
        Assert.Equal(TurnedDownKind.NotFound, Assert.IsType<Outcome.TurnedDown>(_bench.Check(check with { PoolId = "lake" })).Kind);
    }

    [Fact]
    public void An_unlikely_check_is_kept_in_the_record_with_its_remarks()
    {
        _bench.Check(Bench.Test(Measurand.FreeChlorine, 2.4), Bench.Test(Measurand.TotalChlorine, 1.2));
        var entry = Assert.IsType<CheckEntry>(_bench.Entries.Single(e => e.Body is CheckEntry).Body);
        Assert.Equal(["check.free_above_total", "check.free_above_total"], entry.Remarks.Select(r => r.Reason.Code));
        Assert.True(_bench.State.Pools[0].Manual[Measurand.FreeChlorine].Suspect);
    }

    [Fact]
    public void A_check_typed_hours_late_pairs_at_its_sample_time_and_does_not_replace_newer_results()
    {
        _bench.CheckBeside("main-ph", 7.45, Bench.Test(Measurand.Ph, 7.4));
        _bench.Pass(TimeSpan.FromMinutes(1));
        var late = _bench.CheckOf(Bench.Test(Measurand.Ph, 7.5)) with { SampledAt = _bench.Now - (5 * Hour) };
        _bench.Check(late, Bench.Window("main-ph", late.SampledAt, 7.55));
        Assert.Equal([7.5, 7.4], _bench.Probe("main-ph").Trust.Pairs.Select(p => p.Test.Value));
        Assert.Equal(late.SampledAt, _bench.Probe("main-ph").Trust.Pairs[0].SampledAt);
        Assert.Equal(7.4, _bench.State.Pools[0].Manual[Measurand.Ph].Result.Value);
    }

    [Fact]
    public void The_order_in_which_checks_arrive_does_not_matter_for_what_is_believed_of_a_probe() =>
        Gen.Select(Gen.Select(Gen.Double[7.0, 8.2], Gen.Double[7.0, 8.2]).Array[2, 12], Gen.Int).Sample((pairs, seed) =>
        {
            var checks = pairs.Select((p, i) => (Test: Math.Round(p.Item1, 2), Read: Math.Round(p.Item2, 2), At: Hall.Nine - ((pairs.Length - i) * Hour / 2))).ToArray();
            var shuffled = checks.ToArray();
            new Random(seed).Shuffle(shuffled);
            Assert.Equal(Believed(checks), Believed(shuffled));
        }, iter: 2000);

    private static string Believed((double Test, double Read, Instant At)[] checks)
    {
        var bench = new Bench();
        foreach (var (test, read, at) in checks)
        {
            var check = bench.CheckOf(Bench.Test(Measurand.Ph, test)) with { Id = TimeOrderedId.Derive(at, "check"), SampledAt = at, EnteredAt = at };
            bench.Check(check, Bench.Window("main-ph", at, read));
        }

        return JsonSerializer.Serialize(bench.Probe("main-ph").Trust, PlantJson.Options);
    }

    [Fact]
    public void A_correction_takes_the_place_of_what_it_corrects()
    {
        var wrong = _bench.CheckOf(Bench.Test(Measurand.Ph, 7.9));
        _bench.Check(wrong, Bench.Window("main-ph", wrong.SampledAt, 7.4));
        var right = Correction(wrong, Bench.Test(Measurand.Ph, 7.4));
        _bench.Check(right, Bench.Window("main-ph", right.SampledAt, 7.4));
        var pair = Assert.Single(_bench.Probe("main-ph").Trust.Pairs);
        Assert.Equal((right.Id, 7.4), (pair.CheckId, pair.Test.Value));
        Assert.Equal(7.4, _bench.State.Pools[0].Manual[Measurand.Ph].Result.Value);
        Assert.Equal(2, _bench.Entries.Count(e => e.Body is CheckEntry));
    }

    [Fact]
    public void A_correction_that_leaves_a_result_out_takes_it_back()
    {
        var wrong = _bench.CheckOf(Bench.Test(Measurand.Ph, 7.9), Bench.Test(Measurand.FreeChlorine, 1.5));
        _bench.Check(wrong, Bench.Window("main-ph", wrong.SampledAt, 7.4));
        _bench.Check(Correction(wrong, Bench.Test(Measurand.FreeChlorine, 1.5)));
        Assert.Empty(_bench.Probe("main-ph").Trust.Pairs);
        Assert.False(_bench.State.Pools[0].Manual.ContainsKey(Measurand.Ph));
    }

    [Fact]
    public void A_correction_may_say_that_it_was_the_other_pool()
    {
        var wrong = _bench.CheckOf(Bench.Test(Measurand.Ph, 7.5));
        _bench.Check(wrong, Bench.Window("main-ph", wrong.SampledAt, 7.4));
        var right = Correction(wrong, Bench.Test(Measurand.Ph, 7.5)) with { PoolId = "learner" };
        _bench.Check(right, Bench.Window("learner-ph", right.SampledAt, 7.5));
        Assert.Empty(_bench.Probe("main-ph").Trust.Pairs);
        Assert.Single(_bench.Probe("learner-ph").Trust.Pairs);
        Assert.Empty(_bench.State.Pools[0].Manual);
    }

    [Fact]
    public void A_check_that_arrives_after_its_own_correction_is_kept_and_changes_nothing()
    {
        var wrong = _bench.CheckOf(Bench.Test(Measurand.Ph, 7.9));
        var right = Correction(wrong, Bench.Test(Measurand.Ph, 7.4));
        _bench.Check(right, Bench.Window("main-ph", right.SampledAt, 7.4));
        var taken = Assert.IsType<Outcome.CheckTaken>(_bench.Check(wrong, Bench.Window("main-ph", wrong.SampledAt, 7.4)));
        Assert.Equal("check.corrected_already", Assert.Single(taken.Remarks).Reason.Code);
        Assert.Equal(right.Id, Assert.Single(_bench.Probe("main-ph").Trust.Pairs).CheckId);
        Assert.Equal(7.4, _bench.State.Pools[0].Manual[Measurand.Ph].Result.Value);
        Assert.Equal(2, _bench.Entries.Count(e => e.Body is CheckEntry));
    }

    [Fact]
    public void The_answer_says_of_each_probe_what_it_was_judged_to_be_and_why()
    {
        var check = _bench.CheckOf(Bench.Test(Measurand.Ph, 7.4), Bench.Test(Measurand.FreeChlorine, 1.5));
        var taken = Assert.IsType<Outcome.CheckTaken>(_bench.Check(check, Bench.Window("main-ph", check.SampledAt, 7.42)));
        Assert.Equal([("main-ph", Verdict.Agrees), ("main-orp", Verdict.NotComparable), ("main-chlorine", Verdict.NotComparable)], taken.Judgements.Select(j => (j.ProbeId, j.Verdict)));
        Assert.All(taken.Judgements, j => Assert.NotEmpty(j.Reasons));
    }

    private static ManualCheck Correction(ManualCheck wrong, params TestResult[] results) => wrong with
    {
        Id = TimeOrderedId.Derive(wrong.SampledAt, "correction"), Corrects = wrong.Id, CorrectionReason = "wrong line", Results = [.. results],
    };
}
