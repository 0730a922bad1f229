using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>The bench as the page shows it.</summary>
internal static class BenchViews
{
    private static readonly double[] Temperatures = [0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50];

    private static readonly ImmutableArray<BufferView> Buffers = [.. Enum.GetValues<PhBuffer>().Where(b => b != PhBuffer.Unknown).Select(b => new BufferView(
        b, PhBuffers.FamilyOf(b), PhBuffers.Value(b, 25).Value, Table(celsius => PhBuffers.Value(b, celsius))))];

    private static readonly ImmutableArray<CheckSolutionView> Solutions = [.. Enum.GetValues<QuinhydroneBuffer>().Where(q => q != QuinhydroneBuffer.Unknown).Select(q => new CheckSolutionView(
        q, Table(celsius => OrpCheckSolution.Expected(q, celsius))))];

    public static BenchView Of(CircuitState state, int index, Settled? settled, Instant now, Wording words)
    {
        var (plan, probe) = (state.Plan.Probes[index], state.Probes[index]);
        var held = CalibrationsInForce.At(state.Calibrations, plan.Id, now);
        var spans = AsFoundHistory.Spans(state.Calibrations, plan.Id);
        var due = CalibrationDue.Of(plan, state.Calibrations, probe.ExpectedSince);
        return new(
            SiteApi.Probe(plan), Care(plan.Care), due, due < now, Work(probe.Work, now), held?.Slope ?? 1, held?.Offset ?? 0, settled, probe.Last.MeasuredAt.OrNull(),
            plan.Measurand == Measurand.Ph ? Buffers : [], plan.Measurand == Measurand.Orp ? Solutions : [], spans, AsFoundHistory.Drift(spans).OrNull(), BySlope(state, plan, words));
    }

    public static CareView Care(CarePlan care) =>
        new(care.Every.TotalDays, care.SlopePercent.Low, care.SlopePercent.High, care.OffsetMillivolts, care.OrpMillivolts, care.SecondPerson);

    public static WorkView? Work(WorkWindow window, Instant now) =>
        window.Since.IsSet ? new(window.Id, window.By ?? "", window.Since, window.Until, window.IsOpen && window.Holds(now)) : null;

    public static SheetView? Sheet(BenchSheet? sheet, Measurand measurand, Wording words) => sheet is null ? null : new(
        sheet.StartedAt.OrNull(), sheet.EndedAt.OrNull(), Points(sheet.AsFound, measurand), Points(sheet.Points, measurand), Points(sheet.AsLeft, measurand), Care(sheet.Limits), sheet.HeldSlope, sheet.HeldOffset,
        100 * sheet.SlopeShare, sheet.OffsetMillivolts, sheet.FoundError, sheet.LeftError, sheet.Verdict, words.Say(sheet.Why));

    /// <summary>What was done, one by one.</summary>
    public static IReadOnlyList<ProbeWork> WorkDone(ProbeWork work) => [.. Enum.GetValues<ProbeWork>().Where(w => w != ProbeWork.None && work.HasFlag(w))];

    private static OutlookView? BySlope(CircuitState state, ProbePlan plan, Wording words)
    {
        var (slope, perDay, at) = AsFoundHistory.Slope(state.Calibrations, plan.Id);
        if (!slope.IsKnown) return null;
        var outlook = ServiceForecast.BySlope(slope, perDay, new(plan.Care.SlopePercent.Low / 100, plan.Care.SlopePercent.High / 100), at);
        return new(words.Say(outlook.Why), outlook.Earliest, outlook.Likely, outlook.Latest);
    }

    private static ImmutableArray<PointView> Points(ImmutableArray<BenchPoint> points, Measurand measurand) => [.. points.Select(p => new PointView(
        p.Buffer, p.Quinhydrone, p.Label, p.Known(measurand).OrNull, p.Celsius, p.Reading, p.InMillivolts, p.Source, p.At.OrNull(), p.Lot, p.Expires))];

    private static ImmutableArray<PointOfTable> Table(Func<double, Figure> value) =>
        [.. Temperatures.Select(celsius => (Celsius: celsius, Value: value(celsius).OrNull)).Where(row => row.Value is not null).Select(row => new PointOfTable(row.Celsius, row.Value!.Value))];
}
