using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes.Calibrating;

/// <summary>What stands against a sheet before anything is computed from it.</summary>
internal static class BenchRefusal
{
    /// <summary>Points of one list that a sheet may have: an electrode is calibrated in two, and looked at in a third.</summary>
    public const int MostPoints = 3;

    private static readonly ValueRange Electrode = new(-700, 700);
    private static readonly ValueRange Bath = new(0, 50);

    /// <summary>The field and the reason; null when nothing stands against it.</summary>
    public static FieldRemark? Of(ProbePlan probe, ProbeWork work, BenchSheet sheet)
    {
        if (sheet.Points.IsEmpty && work == ProbeWork.None) return new("points", Reason.Of("bench.nothing_done"));
        if ((work & ~EveryWork) != 0) return new("work", Reason.Of("bench.work_unknown"));
        return List(probe, "asFound", sheet.AsFound) ?? List(probe, "points", sheet.Points) ?? List(probe, "asLeft", sheet.AsLeft)
            ?? (sheet.Points.Length > 2 ? new("points", Reason.Of("bench.too_many_points", 2)) : Span(probe, sheet));
    }

    private const ProbeWork EveryWork = ProbeWork.Cleaned | ProbeWork.ElectrodeReplaced | ProbeWork.Polished | ProbeWork.MembraneReplaced | ProbeWork.ElectrolyteRefilled;

    private static FieldRemark? List(ProbePlan probe, string list, ImmutableArray<BenchPoint> points)
    {
        if (points.Length > MostPoints) return new(list, Reason.Of("bench.too_many_points", MostPoints));
        for (var i = 0; i < points.Length; i++)
            if (Point(probe, points[i]) is { } why) return new($"{list}[{i}].{why.Field}", why.Reason);
        return points.Select(p => p.InMillivolts).Distinct().Count() > 1 ? new(list, Reason.Of("bench.mixed_units")) : null;
    }

    private static FieldRemark? Point(ProbePlan probe, BenchPoint point)
    {
        if (!Bath.Contains(point.Celsius)) return new("celsius", Reason.Of("bench.temperature", Bath.Low, Bath.High));
        var known = point.Known(probe.Measurand);
        if (!known.IsKnown) return new("solution", known.Why!);
        var range = point.InMillivolts && probe.Measurand == Measurand.Ph ? Electrode : probe.Range;
        return range.Contains(point.Reading) ? null : new("reading", Reason.Of("bench.reading_range", range.Low, range.High));
    }

    private static FieldRemark? Span(ProbePlan probe, BenchSheet sheet) =>
        probe.Measurand == Measurand.Ph && sheet.Points is [var a, var b] && !ElectrodeLine.TryOf(BenchResult.Place(a), BenchResult.Place(b), out _, out var why) ? new("points", why!) : null;
}
