using System.Collections.Immutable;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes.Correction;

/// <summary>How far off a service found a probe: what must be added to what was believed, at a pivot.</summary>
/// <param name="Drift">The part that calibration found.</param>
/// <param name="Fouling">The part that cleaning removed; 0 where it was not told apart.</param>
/// <param name="Slope">How much the whole grows for each unit above the pivot.</param>
/// <param name="IsAsFound">True when the probe was measured before anything was touched.</param>
internal readonly record struct FoundGap(double Drift, double Fouling, double Slope, bool IsAsFound)
{
    // Two points nearer together than this tell no slope; pH, as at the bench.
    private const double LeastSpan = ElectrodeLine.LeastSpan;

    /// <summary>What a service found; null when it found no figure for the probe as it had been.</summary>
    public static FoundGap? Of(Measurand measurand, double pivot, Calibration service, Calibration? held)
    {
        if (service.Sheet is { } sheet && InSolutions(measurand, pivot, service, sheet) is { } measured) return measured;
        if (IsAnotherProbe(service)) return null;
        if (service is { Kind: CalibrationKind.PanelAdjustment, Status: CalibrationStatus.Adjusted }) return new(service.Offset, 0, 0, false);
        if (!CalibrationsInForce.Corrects(service)) return null;
        // What the new calibration makes of a value that the old one let stand: new(raw) - old(raw), with raw = (value - old offset) / old slope.
        var (oldSlope, oldOffset) = (held?.Slope ?? 1, held?.Offset ?? 0);
        return new(service.Apply((pivot - oldOffset) / oldSlope) - pivot, 0, (service.Slope / oldSlope) - 1, false);
    }

    /// <summary>The new part has nothing to say of what the old one read.</summary>
    public static bool IsAnotherProbe(Calibration service) => (service.Work & (ProbeWork.ElectrodeReplaced | ProbeWork.MembraneReplaced | ProbeWork.Polished)) != 0;

    // Read before anything was touched it tells the whole gap; read again after cleaning, and only cleaning, also its two parts.
    private static FoundGap? InSolutions(Measurand measurand, double pivot, Calibration service, BenchSheet sheet)
    {
        var before = sheet.AsFound.IsEmpty && service.Work == ProbeWork.None ? sheet.Points : sheet.AsFound;
        if (At(measurand, pivot, sheet, before) is not { } whole) return null;
        var isTold = service.Work == ProbeWork.Cleaned && !sheet.AsFound.IsEmpty;
        return isTold && At(measurand, pivot, sheet, sheet.Points) is { } cleaned
            ? new(cleaned.Gap, whole.Gap - cleaned.Gap, whole.Slope, true)
            : new(whole.Gap, 0, whole.Slope, true);
    }

    private static (double Gap, double Slope)? At(Measurand measurand, double pivot, BenchSheet sheet, ImmutableArray<BenchPoint> points)
    {
        var gaps = new List<(double Believed, double Gap)>();
        foreach (var point in points)
        {
            if ((point.InMillivolts && measurand == Measurand.Ph) || point.Known(measurand).OrNull is not { } known) continue;
            var believed = (sheet.HeldSlope * point.Reading) + sheet.HeldOffset;
            gaps.Add((believed, known - believed));
        }

        if (gaps.Count == 0) return null;
        var (first, last) = (gaps.MinBy(g => g.Believed), gaps.MaxBy(g => g.Believed));
        if (measurand != Measurand.Ph || last.Believed - first.Believed < LeastSpan) return (gaps.Average(g => g.Gap), 0);
        var slope = (last.Gap - first.Gap) / (last.Believed - first.Believed);
        return (first.Gap + (slope * (pivot - first.Believed)), slope);
    }
}
