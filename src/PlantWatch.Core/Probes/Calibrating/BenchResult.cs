using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes.Calibrating;

/// <summary>What follows from a sheet: how it corrects, whether it holds at once, and the sheet filled in.</summary>
/// <param name="Kind">How it corrects; a verification corrects nothing.</param>
/// <param name="Status">Approved or adjusted when it holds by the signature alone; proposed when somebody else has to decide first.</param>
/// <param name="Basis">What it was measured against.</param>
/// <param name="Slope">Slope on the raw value.</param>
/// <param name="Offset">Offset on the raw value; of a panel what was added there.</param>
/// <param name="Sheet">The sheet with limits, errors, verdict and words.</param>
public sealed record BenchResult(CalibrationKind Kind, CalibrationStatus Status, CalibrationBasis Basis, double Slope, double Offset, BenchSheet Sheet)
{
    /// <summary>An electrode that nobody touched is left alone when the plant was no further off than this: what buffers and readings are good for (common practice).</summary>
    public const double LeaveWithinPh = 0.03;

    /// <summary>Computes; false with a field and a reason when the sheet cannot be.</summary>
    /// <param name="probe">The probe.</param>
    /// <param name="work">What was done to it.</param>
    /// <param name="sheet">The sheet as measured.</param>
    /// <param name="held">The calibration in force before; null when raw was taken as it is.</param>
    /// <param name="result">The result.</param>
    /// <param name="remark">What stands against it.</param>
    public static bool TryOf(ProbePlan probe, ProbeWork work, BenchSheet sheet, Calibration? held, out BenchResult? result, out FieldRemark? remark)
    {
        ArgumentNullException.ThrowIfNull(probe);
        ArgumentNullException.ThrowIfNull(sheet);
        remark = BenchRefusal.Of(probe, work, sheet);
        result = remark is null ? Of(probe, work, Begun(sheet, probe, held)) : null;
        return remark is null;
    }

    // The buffer, and what the probe read of it as pH: what the line is drawn through.
    internal static (double Known, double Reading, double Celsius) Place(BenchPoint point) => (
        point.Known(Measurand.Ph).OrNull ?? double.NaN, point.InMillivolts ? ElectrodeLine.PhOf(point.Reading, point.Celsius) : point.Reading, point.Celsius);

    private static BenchSheet Begun(BenchSheet sheet, ProbePlan probe, Calibration? held) => sheet with
    {
        Limits = probe.Care, HeldSlope = held?.Slope ?? 1, HeldOffset = held?.Offset ?? 0, SlopeShare = null, OffsetMillivolts = null, FoundError = null, LeftError = null,
        Verdict = BenchVerdict.Unknown, Why = [],
    };

    private static BenchResult Of(ProbePlan probe, ProbeWork work, BenchSheet sheet)
    {
        if (sheet.Points.IsEmpty) return new(CalibrationKind.Verification, CalibrationStatus.Approved, CalibrationBasis.Unknown, 1, 0, sheet with { Why = [Reason.Of("bench.only_work")] });
        var basis = probe.Measurand == Measurand.Ph ? CalibrationBasis.Buffers : CalibrationBasis.CheckSolution;
        sheet = probe.Measurand == Measurand.Ph ? BenchJudge.Ph(probe, sheet) : BenchJudge.Orp(probe, sheet);
        var errors = new BenchErrors(probe.Measurand, sheet);
        var found = sheet.AsFound.IsEmpty && work == ProbeWork.None ? sheet.Points : sheet.AsFound;
        sheet = sheet with { FoundError = errors.Held(found) };
        if (probe.Origin == SignalOrigin.PanelScaled) return OnPanel(basis, sheet, errors, found);
        var (kind, slope, offset) = Correction(probe, work, sheet);
        var status = kind != CalibrationKind.Verification && sheet.Verdict != BenchVerdict.Within ? CalibrationStatus.Proposed : CalibrationStatus.Approved;
        return new(kind, status, basis, slope, offset, Left(sheet, errors, kind, slope, offset, status));
    }

    // The controller holds the calibration: what was turned there is logged, and nothing is corrected a second time.
    private static BenchResult OnPanel(CalibrationBasis basis, BenchSheet sheet, BenchErrors errors, ImmutableArray<BenchPoint> found)
    {
        var last = sheet.AsLeft.IsEmpty ? sheet.Points : sheet.AsLeft;
        var (before, after) = (errors.Mean(found), errors.Mean(last));
        var left = sheet with { LeftError = errors.Held(last) };
        return before is { } b && after is { } a && Math.Abs(a - b) > 0.005
            ? new(CalibrationKind.PanelAdjustment, CalibrationStatus.Adjusted, basis, 1, a - b, left with { Why = [.. left.Why, Reason.Of("bench.panel_turned", a - b)] })
            : new(CalibrationKind.Verification, CalibrationStatus.Approved, basis, 1, 0, left);
    }

    private static (CalibrationKind Kind, double Slope, double Offset) Correction(ProbePlan probe, ProbeWork work, BenchSheet sheet)
    {
        var none = (CalibrationKind.Verification, 1.0, 0.0);
        // mV judge the electrode. What the transmitter makes of them is its own affair, so no correction of its numbers follows.
        if (sheet.Points[0].InMillivolts) return none;
        if (probe.Measurand == Measurand.Orp)
            return sheet.Verdict == BenchVerdict.Within ? none : (CalibrationKind.Offset, 1, sheet.Points[0].Known(Measurand.Orp).Value - sheet.Points[0].Reading);
        if (work == ProbeWork.None && Math.Abs(sheet.FoundError ?? double.MaxValue) <= LeaveWithinPh) return none;
        // One buffer tells no slope: that of the same electrode stays, that of another begins as ideal.
        var slope = 1 / (sheet.SlopeShare ?? (work.HasFlag(ProbeWork.ElectrodeReplaced) ? 1 : 1 / sheet.HeldSlope));
        var (known, reading, _) = Place(sheet.Points[0]);
        return (slope == 1 ? CalibrationKind.Offset : CalibrationKind.TwoPoint, slope, known - (slope * reading));
    }

    private static BenchSheet Left(BenchSheet sheet, BenchErrors errors, CalibrationKind kind, double slope, double offset, CalibrationStatus status)
    {
        var measured = sheet.AsLeft.IsEmpty ? sheet.Points : sheet.AsLeft;
        var left = kind == CalibrationKind.Verification || status == CalibrationStatus.Proposed ? errors.Held(measured) : errors.Under(measured, slope, offset);
        var why = kind == CalibrationKind.Verification && !sheet.Points[0].InMillivolts && sheet.Verdict == BenchVerdict.Within ? sheet.Why.Add(Reason.Of("bench.left_as_it_was")) : sheet.Why;
        return sheet with { LeftError = left, Why = status == CalibrationStatus.Proposed ? why.Add(Reason.Of("bench.waits_for_another")) : why };
    }
}

/// <summary>Errors of points: what the probe would be believed to read, less what the solution is.</summary>
internal readonly record struct BenchErrors(Measurand Measurand, BenchSheet Sheet)
{
    public double? Held(ImmutableArray<BenchPoint> points) => Under(points, Sheet.HeldSlope, Sheet.HeldOffset);

    /// <summary>The largest in size; null without a point in the probe's own unit.</summary>
    public double? Under(ImmutableArray<BenchPoint> points, double slope, double offset)
    {
        double? worst = null;
        foreach (var error in Each(points, slope, offset))
            if (worst is not { } held || Math.Abs(error) > Math.Abs(held)) worst = error;
        return worst;
    }

    public double? Mean(ImmutableArray<BenchPoint> points) => Each(points, Sheet.HeldSlope, Sheet.HeldOffset) is { Count: > 0 } errors ? errors.Average() : null;

    private List<double> Each(ImmutableArray<BenchPoint> points, double slope, double offset)
    {
        var errors = new List<double>();
        foreach (var point in points)
            if (!(point.InMillivolts && Measurand == Measurand.Ph) && point.Known(Measurand).OrNull is { } known) errors.Add((slope * point.Reading) + offset - known);
        return errors;
    }
}
