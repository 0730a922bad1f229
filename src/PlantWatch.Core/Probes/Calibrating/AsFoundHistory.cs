using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes.Calibrating;

/// <summary>A probe between two calibrations at the bench: how far it moved from as left to as found.</summary>
/// <param name="From">When it was left.</param>
/// <param name="To">When it was found.</param>
/// <param name="Left">Error as left, in the measurand's unit.</param>
/// <param name="Found">Error as found.</param>
/// <param name="PerDay">Rate between, unit a day.</param>
public readonly record struct DriftSpan(Instant From, Instant To, double Left, double Found, double PerDay);

/// <summary>What the bench has shown of a probe: its drift from calibration to calibration, and its slope over time.</summary>
public static class AsFoundHistory
{
    /// <summary>Standard uncertainty of an error at the bench: buffers of 0.01 to 0.02 pH and a reading of 0.01 (common practice).</summary>
    public const double BenchUncertainty = 0.02;

    // Two bench calibrations on one day tell the repeatability of the bench, not the drift of the probe.
    private static readonly TimeSpan Shortest = TimeSpan.FromDays(1);

    /// <summary>The spans between one sheet and the next, oldest first. A new electrode begins anew.</summary>
    /// <param name="calibrations">Calibrations; those of other probes are passed over.</param>
    /// <param name="probeId">The probe.</param>
    public static ImmutableArray<DriftSpan> Spans(ImmutableArray<Calibration> calibrations, string probeId)
    {
        var spans = ImmutableArray.CreateBuilder<DriftSpan>();
        Calibration? before = null;
        foreach (var next in Sheets(calibrations, probeId))
        {
            if (before?.Sheet?.LeftError is { } left && next.Sheet!.FoundError is { } found && FoundAt(next) - before.HoldsFrom is var days && days >= Shortest)
                spans.Add(new(before.HoldsFrom, FoundAt(next), left, found, (found - left) / days.TotalDays));
            before = next;
        }

        return spans.ToImmutable();
    }

    /// <summary>Mean drift over spans, each weighed by its length, unit a day; unknown without any.</summary>
    /// <remarks>All that a probe moved over all days: sum of moves over sum of days. Its uncertainty takes the scatter among spans, and never less than the bench allows.</remarks>
    public static Estimate Drift(ImmutableArray<DriftSpan> spans)
    {
        if (spans.IsEmpty) return default;
        var days = spans.Sum(Days);
        var rate = spans.Sum(s => s.Found - s.Left) / days;
        var bench = Math.Sqrt(2.0 * spans.Length) * BenchUncertainty / days;
        var scatter = spans.Length < 2 ? 0 : Math.Sqrt(spans.Sum(s => Days(s) * (s.PerDay - rate) * (s.PerDay - rate)) / ((spans.Length - 1) * days));
        return new(rate, Math.Max(bench, scatter));
    }

    /// <summary>Slope of a pH electrode as a share of the ideal, newest and its rate a day by the last two sheets of one electrode; unknown where they do not tell.</summary>
    public static (Estimate Slope, Estimate PerDay, Instant At) Slope(ImmutableArray<Calibration> calibrations, string probeId)
    {
        var sheets = Sheets(calibrations, probeId).Where(c => c.Sheet!.SlopeShare is not null).ToArray();
        if (sheets.Length == 0) return default;
        // Two readings of 0.02 pH over 3 pH between the usual buffers.
        const double U = BenchUncertainty * 1.41 / 3;
        var last = sheets[^1];
        var slope = new Estimate(last.Sheet!.SlopeShare!.Value, U);
        if (sheets.Length < 2 || last.Work.HasFlag(ProbeWork.ElectrodeReplaced)) return (slope, default, last.HoldsFrom);
        var (first, days) = (sheets[^2], (last.HoldsFrom - sheets[^2].HoldsFrom).TotalDays);
        return (slope, days < Shortest.TotalDays ? default : new((slope.Value - first.Sheet!.SlopeShare!.Value) / days, U * 1.41 / days), last.HoldsFrom);
    }

    private static IEnumerable<Calibration> Sheets(ImmutableArray<Calibration> calibrations, string probeId) =>
        calibrations.Where(c => c.ProbeId == probeId && c.Sheet is { Points.IsEmpty: false } && c.HoldsFrom.IsSet && !c.Objected).Order(CalibrationsInForce.ByTime);

    private static Instant FoundAt(Calibration calibration) => calibration.Sheet!.StartedAt.IsSet ? calibration.Sheet.StartedAt : calibration.HoldsFrom;

    private static double Days(DriftSpan span) => (span.To - span.From).TotalDays;
}
