using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Probes;

/// <summary>One invented pool with a probe and an operator who tests it: each check is a test value and what the probe read then.</summary>
internal sealed class TestPool(Measurand measurand, SignalOrigin origin = SignalOrigin.Raw)
{
    public static readonly Instant Start = Instant.FromUtc(2026, 5, 4, 7);

    private int _made;

    public ProbePlan Probe { get; init; } = new()
    {
        Id = "probe", Name = "Probe", PoolId = "main", Measurand = measurand, Origin = origin, Topic = "t", Range = measurand.Possible(),
        SampleDelay = TimeSpan.FromMinutes(2),
    };

    public Disinfectant Disinfectant { get; init; } = Disinfectant.Chlorine;

    /// <summary>Whether the signal was followed all the while, so that a leap of it would have been seen.</summary>
    public bool Watched { get; init; } = true;

    public ProbeTrust Trust { get; private set; } = ProbeTrust.New;

    public ImmutableArray<Calibration> Calibrations { get; private set; } = [];

    public static Instant After(double hours) => Start + TimeSpan.FromHours(hours);

    /// <summary>A pH check at an hour: the test, and the probe beside it.</summary>
    public Judgement Check(double hour, double test, double probe, bool suspect = false, TestMethod method = TestMethod.Photometer) =>
        Judge(CheckOf(hour, new TestResult(Probe.Measurand, test, method)), probe, suspect ? [Probe.Measurand] : []);

    /// <summary>A check with chlorine, pH and temperature, and the ORP beside it.</summary>
    public Judgement CheckOrp(double hour, double chlorine, double ph, double millivolts) => Judge(OrpCheckOf(hour, chlorine, ph), millivolts, []);

    public ManualCheck OrpCheckOf(double hour, double chlorine, double ph) => CheckOf(hour,
        new(Measurand.FreeChlorine, chlorine, TestMethod.Photometer), new(Measurand.Ph, ph, TestMethod.Photometer), new(Measurand.Temperature, 28, TestMethod.Meter));

    public ManualCheck CheckOf(double hour, params TestResult[] results) =>
        Checks.At(After(hour), results) with { Id = TimeOrderedId.Derive(After(hour), $"check {_made++}") };

    public Judgement Judge(ManualCheck check, double probe, ImmutableArray<Measurand> suspect) => Judge(InputOf(check, probe) with { Suspect = suspect });

    public Judgement Judge(ProbeCheck input)
    {
        var result = Reconciliation.Judge(Trust, input) ?? throw new InvalidOperationException("the check does not concern the probe");
        Trust = result.Trust;
        return result.Judgement;
    }

    public ProbeCheck InputOf(ManualCheck check, double probe) => new()
    {
        Plan = new() { Id = "c", Name = "C", TimeZone = "UTC", Pools = [new PoolPlan { Id = "main", Name = "Main", Disinfectant = Disinfectant }], Probes = [Probe] },
        Probe = Probe, Check = check, Now = check.SampledAt + TimeSpan.FromDays(20), Window = WindowOf(check, probe), Calibrations = Calibrations,
        WatchedSince = Watched ? After(-24) : Instant.Never,
    };

    public ProbeWindow WindowOf(ManualCheck check, double probe)
    {
        var (from, to) = Reconciliation.WindowAround(Probe, check);
        return new(Probe.Id, from, to, 30, 0, probe, Probe.Measurand == Measurand.Orp ? 1.5 : 0.01, 0);
    }

    public void Calibrate(double hour, double slope, double offset, params Guid[] checks) => Approve(new()
    {
        Id = TimeOrderedId.Derive(After(hour), "calibration"), ProbeId = Probe.Id, Kind = slope == 1 ? CalibrationKind.Offset : CalibrationKind.TwoPoint,
        Status = CalibrationStatus.Approved, Slope = slope, Offset = offset, Checks = [.. checks], ProposedBy = "R. Example", HoldsFrom = After(hour), DecidedAt = After(hour),
    });

    public void AdjustPanel(double hour, double amount) => Approve(new()
    {
        Id = TimeOrderedId.Derive(After(hour), "panel"), ProbeId = Probe.Id, Kind = CalibrationKind.PanelAdjustment,
        Status = CalibrationStatus.Adjusted, Offset = amount, ProposedBy = "R. Example", HoldsFrom = After(hour), DecidedAt = After(hour),
    });

    public void Leap(double hour, double by) => Trust = Reconciliation.Leapt(Trust, Probe, Calibrations, new(After(hour), by));

    private void Approve(Calibration calibration)
    {
        Calibrations = Calibrations.Add(calibration);
        Trust = Reconciliation.Refold(Trust, Probe, Calibrations, calibration.DecidedAt);
    }
}
