using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>Calibrations through the step: proposed by one, decided by another, in force from a time; raw is never touched, and nothing is corrected twice.</summary>
public sealed class CalibrationStepTests
{
    private readonly Bench _bench = new();

    [Fact]
    public void A_proposal_changes_nothing_until_it_is_approved_and_then_holds_from_its_time()
    {
        _bench.Says(Hall.Ph, "7.8");
        var id = Propose("main-ph", -0.3);
        _bench.Says(Hall.Ph, "7.8");
        Assert.Equal(7.8, _bench.Probe("main-ph").Last.Value);
        var from = _bench.Now;
        Assert.IsType<Outcome.Done>(Decide(id, CalibrationStatus.Approved, from));
        _bench.Says(Hall.Ph, "7.8");
        Assert.Equal((7.8, 7.5), (_bench.Probe("main-ph").Last.Raw, Math.Round(_bench.Probe("main-ph").Last.Value, 9)));
        Assert.All(_bench.Readings, r => Assert.Equal(7.8, r.Raw));
        var entry = Assert.IsType<CalibrationEntry>(_bench.Entries[^1].Body).Calibration;
        Assert.Equal((CalibrationStatus.Approved, "J. Sample", from), (entry.Status, entry.DecidedBy, entry.HoldsFrom));
        Assert.Equal(from, _bench.Entries[^1].HappenedAt);
    }

    [Fact]
    public void An_approval_judges_the_tests_anew_and_takes_the_alarm_back()
    {
        var checks = new List<Guid>();
        for (var i = 0; i < 4; i++)
        {
            _bench.CheckBeside("main-ph", 7.9, Bench.Test(Measurand.Ph, 7.4, TestMethod.Meter));
            _bench.Skip(TimeSpan.FromMinutes(30));
        }

        Assert.Equal(Standing.OutOfSpecification, _bench.Probe("main-ph").Trust.Standing);
        Assert.True(_bench.IsUp(RuleBook.ProbeNotTrusted, "main-ph"));
        var id = Propose("main-ph", -0.5, [.. _bench.Probe("main-ph").Trust.Pairs.Select(p => p.CheckId)]);
        Decide(id, CalibrationStatus.Approved, _bench.Now);
        Assert.Equal(0, _bench.Probe("main-ph").Trust.Bias.Value, 0.1);
        Assert.Equal(Standing.Good, _bench.Probe("main-ph").Trust.Standing);
        Assert.False(_bench.IsUp(RuleBook.ProbeNotTrusted, "main-ph"));
        Assert.All(_bench.Probe("main-ph").Trust.Pairs, p => Assert.Equal(7.9, p.Raw.Value));
    }

    [Fact]
    public void A_rejected_proposal_never_holds()
    {
        var id = Propose("main-ph", -0.3);
        Decide(id, CalibrationStatus.Rejected, _bench.Now);
        _bench.Says(Hall.Ph, "7.8");
        Assert.Equal(7.8, _bench.Probe("main-ph").Last.Value);
        Assert.Equal((CalibrationStatus.Rejected, Instant.Never), (_bench.State.Calibrations[0].Status, _bench.State.Calibrations[0].HoldsFrom));
    }

    [Fact]
    public void A_decision_is_made_once()
    {
        var id = Propose("main-ph", -0.3);
        Decide(id, CalibrationStatus.Approved, _bench.Now);
        Assert.IsType<Outcome.AlreadyDone>(Decide(id, CalibrationStatus.Approved, _bench.Now));
        Assert.Equal(TurnedDownKind.Conflict, Assert.IsType<Outcome.TurnedDown>(Decide(id, CalibrationStatus.Rejected, _bench.Now)).Kind);
        Assert.Equal(TurnedDownKind.NotFound, Assert.IsType<Outcome.TurnedDown>(Decide(Guid.CreateVersion7(), CalibrationStatus.Approved, _bench.Now)).Kind);
    }

    [Fact]
    public void A_panel_scaled_probe_is_adjusted_on_the_panel_and_never_corrected_here()
    {
        Assert.Equal("calibration.adjust_on_panel", Code(Proposal("main-chlorine", CalibrationKind.Offset, 0.4)));
        Assert.Equal("calibration.approve_here", Code(Proposal("main-ph", CalibrationKind.PanelAdjustment, 0.4)));
        var id = TimeOrderedId.Derive(_bench.Now, "panel");
        Assert.IsType<Outcome.Done>(Proposal("main-chlorine", CalibrationKind.PanelAdjustment, 0.4, id));
        Assert.Equal("calibration.adjust_on_panel", Code(Decide(id, CalibrationStatus.Approved, _bench.Now)));
        Assert.IsType<Outcome.Done>(Decide(id, CalibrationStatus.Adjusted, _bench.Now));
        _bench.Says(Hall.Chlorine, "1.6");
        Assert.Equal(1.6, _bench.Probe("main-chlorine").Last.Value);
        Assert.Equal(CalibrationStatus.Adjusted, _bench.State.Calibrations[0].Status);
    }

    [Theory]
    [InlineData(CalibrationKind.Offset, 1.1, 0.0, "calibration.slope_is_one")]
    [InlineData(CalibrationKind.TwoPoint, 0.5, 0.0, "calibration.slope_range")]
    [InlineData(CalibrationKind.TwoPoint, double.NaN, 0.0, "calibration.slope_range")]
    [InlineData(CalibrationKind.Offset, 1.0, 14.5, "calibration.offset_range")]
    [InlineData(CalibrationKind.Offset, 1.0, double.PositiveInfinity, "calibration.offset_range")]
    public void What_no_electrode_can_need_is_turned_down(CalibrationKind kind, double slope, double offset, string code) =>
        Assert.Equal(code, Code(_bench.Run(at => new CalibrationProposed(at, new Calibration { Id = TimeOrderedId.Derive(at, "c"), ProbeId = "main-ph", Kind = kind, Slope = slope, Offset = offset, ProposedBy = "R. Example" }))));

    [Fact]
    public void A_calibration_cannot_hold_from_a_time_to_come()
    {
        var id = Propose("main-ph", -0.3);
        Assert.Equal("calibration.not_in_future", Code(Decide(id, CalibrationStatus.Approved, _bench.Now + TimeSpan.FromHours(1))));
    }

    [Fact]
    public void The_same_proposal_twice_is_one_and_another_under_its_id_a_conflict()
    {
        var id = TimeOrderedId.Derive(_bench.Now, "c");
        Proposal("main-ph", CalibrationKind.Offset, -0.3, id);
        Assert.IsType<Outcome.AlreadyDone>(Proposal("main-ph", CalibrationKind.Offset, -0.3, id));
        Assert.Equal("id.taken", Code(Proposal("main-ph", CalibrationKind.Offset, -0.2, id)));
        Assert.Single(_bench.State.Calibrations);
    }

    [Fact]
    public void A_wild_calibration_of_orp_does_not_stop_the_next_check()
    {
        var id = Propose("main-orp", 900);
        Decide(id, CalibrationStatus.Approved, _bench.Now);
        _bench.Says(Hall.Orp, "700");
        Assert.IsType<Outcome.CheckTaken>(_bench.Check(Bench.Test(Measurand.FreeChlorine, 1.5)));
    }

    [Fact]
    public void A_calibration_follows_a_probe_that_is_renamed_and_ends_with_one_that_means_something_else()
    {
        Decide(Propose("main-ph", -0.3), CalibrationStatus.Approved, _bench.Now);
        _bench.Load(Hall.Plan.With("main-ph", p => p with { Id = "main-ph-2", Was = "main-ph" }));
        _bench.Says(Hall.Ph, "7.8");
        Assert.Equal(7.5, _bench.Probe("main-ph-2").Last.Value, 9);
        _bench.Load(Hall.Plan.With("main-ph", p => p with { Id = "main-ph-2", Origin = SignalOrigin.PanelScaled }));
        _bench.Says(Hall.Ph, "7.8");
        Assert.Equal(7.8, _bench.Probe("main-ph-2").Last.Value);
    }

    private Guid Propose(string probe, double offset, params Guid[] checks)
    {
        var id = TimeOrderedId.Derive(_bench.Now, $"proposal {_bench.Events.Count}");
        Assert.IsType<Outcome.Done>(Proposal(probe, CalibrationKind.Offset, offset, id, checks));
        return id;
    }

    private Outcome Proposal(string probe, CalibrationKind kind, double offset, Guid id = default, params Guid[] checks) => _bench.Run(at => new CalibrationProposed(at, new Calibration
    {
        Id = id == default ? TimeOrderedId.Derive(at, "other") : id, ProbeId = probe, Kind = kind, Offset = offset, ProposedBy = "R. Example", Checks = [.. checks],
    }));

    private Outcome Decide(Guid id, CalibrationStatus decision, Instant from) => _bench.Run(at => new CalibrationDecided(at, id, decision, from, "J. Sample", "agreed"));

    private static string Code(Outcome outcome) => Assert.IsType<Outcome.TurnedDown>(outcome).Remarks[0].Reason.Code;
}
