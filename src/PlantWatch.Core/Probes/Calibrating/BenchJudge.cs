using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes.Calibrating;

/// <summary>What the limits of the plant file say of an electrode, and what to do about it.</summary>
internal static class BenchJudge
{
    // An electrode in use is worn before it is worn out: worth a spare on the shelf (common practice: new ones 95 to 102 %).
    private const double Worn = 90;

    /// <summary>A pH electrode by its slope and offset. The panel has calibrated its own number already: only mV tell its electrode.</summary>
    public static BenchSheet Ph(ProbePlan probe, BenchSheet sheet)
    {
        var line = sheet.Points is [var a, var b] && ElectrodeLine.TryOf(BenchResult.Place(a), BenchResult.Place(b), out var two, out _)
            ? two : ElectrodeLine.OfOne(BenchResult.Place(sheet.Points[0]));
        var (limits, percent, offset) = (probe.Care, 100 * line.SlopeShare, line.OffsetMillivolts);
        var why = ImmutableArray.CreateBuilder<Reason>();
        if (percent is { } low && low < limits.SlopePercent.Low) why.Add(Reason.Of("bench.slope_low", low, limits.SlopePercent.Low));
        if (percent is { } high && high > limits.SlopePercent.High) why.Add(Reason.Of("bench.slope_high", high, limits.SlopePercent.High));
        if (Math.Abs(offset) > limits.OffsetMillivolts) why.Add(Reason.Of("bench.offset_beyond", offset, limits.OffsetMillivolts));
        var verdict = why.Count > 0 ? BenchVerdict.Outside : BenchVerdict.Within;
        if (verdict == BenchVerdict.Within) why.Add(percent is { } slope ? Reason.Of("bench.sound", slope, offset) : Reason.Of("bench.one_buffer", offset));
        if (verdict == BenchVerdict.Within && percent < Worn) why.Add(Reason.Of("bench.worn", limits.SlopePercent.Low));
        if (Families(sheet) > 1) why.Add(Reason.Of("bench.mixed_families"));
        if (sheet.Points[0].InMillivolts) why.Add(Reason.Of("bench.millivolts_only"));
        if (probe.Origin == SignalOrigin.PanelScaled && !sheet.Points[0].InMillivolts) why.Add(Reason.Of("bench.by_the_panel"));
        return sheet with { SlopeShare = line.SlopeShare, OffsetMillivolts = offset, Verdict = verdict, Why = why.ToImmutable() };
    }

    /// <summary>An ORP electrode by its offset in the solution: it has no slope worth adjusting.</summary>
    public static BenchSheet Orp(ProbePlan probe, BenchSheet sheet)
    {
        var point = sheet.Points[^1];
        var deviation = (sheet.HeldSlope * point.Reading) + sheet.HeldOffset - point.Known(Measurand.Orp).Value;
        var limit = probe.Care.OrpMillivolts;
        var within = Math.Abs(deviation) <= limit;
        return sheet with
        {
            OffsetMillivolts = deviation, Verdict = within ? BenchVerdict.Within : BenchVerdict.Outside,
            Why = [Reason.Of(within ? "bench.orp_sound" : "bench.orp_beyond", deviation, limit)],
        };
    }

    private static int Families(BenchSheet sheet) =>
        sheet.Points.Where(p => p.Label is null).Select(p => PhBuffers.FamilyOf(p.Buffer)).Distinct().Count();
}
