namespace PlantWatch.Core.Chemistry;

/// <summary>Writes the ends of the bands as linear conditions: those of amounts once and exactly, those of pH and saturation about a water.</summary>
internal sealed class PlanRows(WaterModel model, Composition start, Means[] means)
{
    // pH is bought with carbon: mol/kg that a tenth of pH costs near each end, found once.
    private readonly Dictionary<double, double> _carbonPerStep = [];

    /// <summary>Alkalinity, hardness, chlorine, cyanurate and solids; and that no amount runs out.</summary>
    public IEnumerable<PlanRow> OfAmounts(IReadOnlyList<Aim> aims)
    {
        var all = new List<PlanRow>();
        all.Add(Stock(c => c.Chlorine));
        all.Add(Stock(c => c.Carbon));
        foreach (var aim in aims.Where(a => PlannedFigures.IsLinear(a.Figure)))
        {
            var step = PlannedFigures.Step(aim.Figure);
            var now = PlannedFigures.Of(start, aim.Figure) / step;
            var slopes = Array.ConvertAll(means, m => PlannedFigures.Of(m.PerUnit, aim.Figure) / step);
            foreach (var (end, isLow, must) in Ends(aim))
                all.Add(isLow ? new(aim, true, must, now - (end / step), slopes) : new(aim, false, must, (end / step) - now, Array.ConvertAll(slopes, s => -s)));
        }
        return all;
    }

    /// <summary>Both ends of pH about a water; empty where the water cannot be linearised.</summary>
    public IReadOnlyList<PlanRow> OfPh(Aim aim, Composition about)
    {
        var rows = new List<PlanRow>();
        foreach (var (end, isLow, must) in Ends(aim))
        {
            if (model.CarbonAt(about, end) is not { } carbon || WaterModel.Slope(c => model.CarbonAt(c, end), carbon, about) is not { } slope) return [];
            // The carbon itself does not enter the carbon that would be needed.
            slope = slope with { Carbon = 0 };
            var step = CarbonPerStep(about, end, carbon);
            // Too much carbon is too low a pH: room at the low end is what is needed less what is there.
            var sign = isLow ? 1 : -1;
            var value = sign * (carbon + WaterModel.Along(slope, start - about) - start.Carbon) / step;
            rows.Add(new(aim, isLow, must, value, Array.ConvertAll(means, m => sign * (WaterModel.Along(slope, m.PerUnit) - m.PerUnit.Carbon) / step)));
        }

        return rows;
    }

    /// <summary>Both ends of saturation about a water; empty where it has none.</summary>
    public IReadOnlyList<PlanRow> OfSaturation(Aim aim, Speciation about)
    {
        double? Index(Composition c) => model.At(c)?.SaturationIndex is { } index && double.IsFinite(index) ? index : null;
        var here = about.SaturationIndex;
        if (!double.IsFinite(here) || WaterModel.Slope(Index, here, about.Composition) is not { } slope) return [];
        var step = PlannedFigures.Step(aim.Figure);
        var value = here + WaterModel.Along(slope, start - about.Composition);
        var slopes = Array.ConvertAll(means, m => WaterModel.Along(slope, m.PerUnit) / step);
        return [.. Ends(aim).Select(e => e.IsLow
            ? new PlanRow(aim, true, e.Must, (value - e.End) / step, slopes)
            : new PlanRow(aim, false, e.Must, (e.End - value) / step, Array.ConvertAll(slopes, s => -s)))];
    }

    /// <summary>The ends of a band that mean something, drawn in by a hair so that the equilibrium itself confirms them.</summary>
    public static IEnumerable<(double End, bool IsLow, bool Must)> Ends(Aim aim)
    {
        var all = new List<(double End, bool IsLow, bool Must)>();
        var hair = aim.Band is { Low: { } l, High: { } h } ? Math.Min(Hair * PlannedFigures.Step(aim.Figure), (h - l) / 4) : Hair * PlannedFigures.Step(aim.Figure);
        if (aim.Low is { } low)
        {
            if (double.IsFinite(low.Must)) all.Add((DrawnIn(low.Must, hair, aim.Now!.Value.Value), true, true));
            if (low.Wants > low.Must) all.Add((low.Wants, true, false));
        }

        if (aim.High is { } high)
        {
            if (double.IsFinite(high.Must)) all.Add((-DrawnIn(-high.Must, hair, -aim.Now!.Value.Value), false, true));
            if (high.Wants < high.Must) all.Add((high.Wants, false, false));
        }
        return all;
    }

    private const double Hair = 0.004;

    // A figure that stands on the very end of its band is not dosed for to gain the hair.
    private static double DrawnIn(double end, double hair, double now) => now >= end ? Math.Min(end + hair, now) : end + hair;

    private PlanRow Stock(Func<Composition, double> amount) =>
        new(null, true, true, 1e4 * (amount(start) - 1e-12), Array.ConvertAll(means, m => 1e4 * amount(m.PerUnit)));

    private double CarbonPerStep(Composition about, double ph, double carbon)
    {
        if (_carbonPerStep.TryGetValue(ph, out var known)) return known;
        return _carbonPerStep[ph] = Math.Max(1e-6, Math.Abs((model.CarbonAt(about, ph + 0.1) ?? (0.95 * carbon)) - carbon));
    }
}
