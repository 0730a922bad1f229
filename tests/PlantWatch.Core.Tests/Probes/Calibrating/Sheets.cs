using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes.Calibrating;

/// <summary>Probes and sheets of the bench for tests.</summary>
internal static class Sheets
{
    public static readonly Instant Noon = Instant.FromUtc(2026, 3, 1, 12);

    public static readonly ProbePlan Ph = new() { Id = "ph", Name = "pH", Measurand = Measurand.Ph, Topic = "ph", Range = new(0, 14) };

    public static readonly ProbePlan Orp = new() { Id = "orp", Name = "ORP", Measurand = Measurand.Orp, Topic = "orp", Range = new(0, 1000) };

    public static BenchPoint At7(double reading, double celsius = 25) => new() { Buffer = PhBuffer.Technical7, Celsius = celsius, Reading = reading, At = Noon };

    public static BenchPoint At4(double reading, double celsius = 25) => new() { Buffer = PhBuffer.Technical4, Celsius = celsius, Reading = reading, At = Noon };

    public static BenchSheet Of(params ImmutableArray<BenchPoint> points) => new() { Points = points };

    public static BenchResult Result(this BenchSheet sheet, ProbePlan probe, ProbeWork work = ProbeWork.None, Calibration? held = null)
    {
        Assert.True(BenchResult.TryOf(probe, work, sheet, held, out var result, out var remark), remark?.Reason.Code);
        return result!;
    }

    public static string Refused(this BenchSheet sheet, ProbePlan probe, ProbeWork work = ProbeWork.None)
    {
        Assert.False(BenchResult.TryOf(probe, work, sheet, null, out _, out var remark));
        return $"{remark!.Field} {remark.Reason.Code}";
    }

    public static Calibration Held(double slope, double offset) => new()
    {
        Id = TimeOrderedId.Derive(Noon, "held"), ProbeId = "ph", ProposedBy = "R. Example", Kind = CalibrationKind.TwoPoint, Status = CalibrationStatus.Approved, Slope = slope, Offset = offset, HoldsFrom = Noon,
    };
}
