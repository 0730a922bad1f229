using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>What is in doubt takes no alarm back: neither a test that its probe speaks against, nor work under way, nor a sheet that waits.</summary>
public sealed class DoubtNeverMakesSafeTests
{
    private static readonly Guid Work = TimeOrderedId.Derive(Hall.Nine, "work");

    private readonly Bench _bench = new();

    [Fact, Evidence("R-013")]
    public void A_test_that_stands_alone_against_a_trusted_probe_clears_no_stop()
    {
        for (var i = 0; i < 6; i++) Beside(8.0, 8.0);
        Beside(8.35, 8.35);
        Assert.True(_bench.IsUp(RuleBook.TestOutsideStop, "main/ph"));
        Beside(8.35, 7.85);
        Assert.Equal(Verdict.CheckSuspect, _bench.Probe("main-ph").Trust.Verdict);
        Assert.True(_bench.IsUp(RuleBook.TestOutsideStop, "main/ph"));
        Beside(7.85, 7.85);
        Assert.False(_bench.IsUp(RuleBook.TestOutsideStop, "main/ph"));
    }

    [Fact, Evidence("R-021")]
    public void Work_on_a_probe_does_not_take_back_that_its_signal_failed()
    {
        _bench.Says(Hall.Flow, "1");
        _bench.Pass(TimeSpan.FromMinutes(10));
        for (var i = 0; i < 250; i++) _bench.Hold(TimeSpan.FromSeconds(10), (Hall.Ph, 7.4 + (i % 2 * 0.01)));
        _bench.Hold(TimeSpan.FromHours(3), (Hall.Ph, 7.4));
        Assert.Equal(Standing.Failure, _bench.Probe("main-ph").Signal.Standing);
        Assert.True(_bench.IsUp(RuleBook.ProbeNotTrusted, "main-ph"));
        _bench.Run(at => new ProbeWorkBegun(at, Work, "main-ph", "R. Example"));
        _bench.Hold(TimeSpan.FromMinutes(2), (Hall.Ph, 7.0));
        Assert.True(_bench.IsUp(RuleBook.ProbeNotTrusted, "main-ph"));
    }

    [Fact, Evidence("R-021")]
    public void A_sheet_that_waits_for_a_second_person_does_not_take_back_what_the_tests_said()
    {
        for (var i = 0; i < 6; i++) Beside(8.0, 7.4);
        Assert.True(_bench.IsUp(RuleBook.ProbeNotTrusted, "main-ph"));
        var sheet = new BenchSheet
        {
            Points = [new() { Buffer = PhBuffer.Technical7, Celsius = 25, Reading = 7.6 }, new() { Buffer = PhBuffer.Technical4, Celsius = 25, Reading = 5.2 }],
        };
        _bench.Run(at => new CalibrationProposed(at, new Calibration { Id = TimeOrderedId.Derive(at, "sheet"), ProbeId = "main-ph", ProposedBy = "R. Example", Work = ProbeWork.Cleaned, Sheet = sheet }));
        Assert.Equal(CalibrationStatus.Proposed, _bench.State.Calibrations.Single().Status);
        Assert.True(_bench.IsUp(RuleBook.ProbeNotTrusted, "main-ph"));
    }

    [Fact]
    public void No_value_of_the_record_is_calibrated_and_corrected_for_the_same_drift()
    {
        var (from, to) = (Hall.Nine - TimeSpan.FromDays(14), Hall.Nine - TimeSpan.FromDays(1));
        _bench.Run(at => new CorrectionMade(at, new RecordCorrection { Id = TimeOrderedId.Derive(at, "layer"), ProbeId = "main-ph", From = from, To = to, Drift = -0.3, GapU = 0.02, MadeBy = "R. Example", Why = "found in buffers" }));
        var id = TimeOrderedId.Derive(_bench.Now, "offset");
        _bench.Run(at => new CalibrationProposed(at, new Calibration { Id = id, ProbeId = "main-ph", Offset = -0.3, ProposedBy = "R. Example" }));
        var early = _bench.Run(at => new CalibrationDecided(at, id, CalibrationStatus.Approved, from + TimeSpan.FromDays(7), "J. Sample", null));
        Assert.Equal("correction.overlaps", Assert.IsType<Outcome.TurnedDown>(early).Remarks[0].Reason.Code);
        Assert.IsType<Outcome.Done>(_bench.Run(at => new CalibrationDecided(at, id, CalibrationStatus.Approved, to, "J. Sample", null)));
    }

    [Fact]
    public void A_panel_is_not_turned_twice_by_two_proposals_that_wait()
    {
        _bench.Load(Hall.Plan.With("main-ph", p => p with { Origin = Core.Plans.SignalOrigin.PanelScaled }));
        Outcome Propose(Guid id) => _bench.Run(at => new CalibrationProposed(at, new Calibration { Id = id, ProbeId = "main-ph", Kind = CalibrationKind.PanelAdjustment, Offset = -0.2, ProposedBy = "R. Example" }));
        var (one, other) = (TimeOrderedId.Derive(Hall.Nine, "one phone"), TimeOrderedId.Derive(Hall.Nine, "another phone"));
        Assert.IsType<Outcome.Done>(Propose(one));
        Assert.IsType<Outcome.AlreadyDone>(Propose(one));
        Assert.Equal("calibration.one_waits", Assert.IsType<Outcome.TurnedDown>(Propose(other)).Remarks[0].Reason.Code);
        Assert.IsType<Outcome.Done>(_bench.Run(at => new CalibrationDecided(at, one, CalibrationStatus.Adjusted, Instant.Never, "R. Example", null)));
        Assert.IsType<Outcome.Done>(Propose(other));
    }

    private void Beside(double read, double tested)
    {
        _bench.Skip(TimeSpan.FromHours(2));
        _bench.CheckBeside("main-ph", read, Bench.Test(Measurand.Ph, tested, TestMethod.Meter));
    }
}
