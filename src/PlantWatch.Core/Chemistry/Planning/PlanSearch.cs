namespace PlantWatch.Core.Chemistry;

/// <summary>Amounts of each means, and the water they lead to.</summary>
/// <param name="Units">Units of each means.</param>
/// <param name="Water">The water by the equilibrium itself.</param>
/// <param name="Price">Cost in mean prices.</param>
/// <param name="Shortfall">How far the margins inside the bands are missed, in steps of the figures.</param>
/// <param name="Missed">Bands that are not reached.</param>
internal sealed record PlanFind(double[] Units, Speciation Water, double Price, double Shortfall, IReadOnlyList<(Aim Aim, bool IsLow)> Missed);

/// <summary>Finds the cheapest amounts that bring a water inside every band: successive linear programming about the equilibrium, in a region that shrinks until the equilibrium agrees.</summary>
/// <remarks>
/// Figures that are amounts are exact. pH is written in the carbon that a pH asks for, which is all but linear; saturation is linearised at the last water. Every band may be missed at a price that no
/// product reaches, so that there is always an answer, and what is missed is named.
/// </remarks>
internal sealed class PlanSearch(WaterModel model, Composition start, Means[] means, IReadOnlyList<Aim> aims)
{
    private const double MissedMargin = 50, MissedBand = 1e6;
    private const int MostTurns = 25;

    // Less than the hair by which the ends are drawn in: what the linear conditions miss by is not to outweigh what is spared.
    private const double Dust = 0.002;

    // More than that is a new filling, not a dilution.
    private const double MostDiluted = 0.9;
    private readonly PlanRows _rows = new(model, start, means);
    private readonly Aim? _ph = aims.FirstOrDefault(a => a.Figure == PlannedFigure.Ph && a.Now is not null);
    private readonly Aim? _index = aims.FirstOrDefault(a => a.Figure == PlannedFigure.SaturationIndex && a.Now is not null);

    /// <summary>The composition after so many units of each means.</summary>
    public Composition After(double[] units)
    {
        var c = start;
        for (var j = 0; j < means.Length; j++) c += units[j] * means[j].PerUnit;
        // What was used up to the last is nothing, not less.
        return c with { Chlorine = Math.Max(0, c.Chlorine), Carbon = Math.Max(0, c.Carbon) };
    }

    /// <summary>Searches; null only where the equilibrium has no answer anywhere near.</summary>
    public PlanFind? Find()
    {
        PlanRow[] amounts = [.. _rows.OfAmounts(aims)];
        var centre = Centre();
        var ph = _ph is null ? [] : _rows.OfPh(_ph, centre);
        // Saturation has a bent upper end: two ways in, and the better of both.
        var without = Descend(amounts, ph, []);
        if (_index is null || (without is not null && without.Missed.Count == 0 && without.Shortfall == 0)) return without;
        var with = model.At(centre) is { } middle ? Descend(amounts, ph, _rows.OfSaturation(_index, middle)) : null;
        return without is null || (with is not null && Merit(with.Units, with.Water) < Merit(without.Units, without.Water) - 1e-6) ? with ?? without : without;
    }

    private PlanFind? Descend(PlanRow[] amounts, IReadOnlyList<PlanRow> ph, IReadOnlyList<PlanRow> index)
    {
        var best = Solve([.. amounts, .. ph, .. index], null, 0);
        var water = best is null ? null : model.At(After(best));
        if (best is null || water is null) { best = new double[means.Length]; water = model.Start; }
        var (merit, reach, moved) = (Merit(best, water), 1e9, true);
        for (var turn = 0; turn < MostTurns && reach > 1e-5; turn++)
        {
            if (moved)
            {
                if (_ph is not null && _rows.OfPh(_ph, water.Composition) is { Count: > 0 } fresh) ph = fresh;
                if (_index is not null) index = _rows.OfSaturation(_index, water);
            }

            if (Solve([.. amounts, .. ph, .. index], best, reach) is not { } next) break;
            var step = Distance(next, best);
            if (step < 1e-7) break;
            var there = model.At(After(next));
            var worth = there is null ? double.PositiveInfinity : Merit(next, there);
            moved = worth < merit - 1e-9;
            if (moved)
            {
                var gain = merit - worth;
                (best, water, merit, reach) = (next, there!, worth, reach < 1e9 ? 2 * reach : reach);
                if (gain < 1e-7 * (1 + Math.Abs(merit))) break;
            }
            else
            {
                reach = 0.3 * step;
            }
        }

        return new(best, water, Price(best), Margins(water), Misses(water));
    }

    // Every row may be missed at its price, so that the program always has an answer.
    private double[]? Solve(IReadOnlyList<PlanRow> rows, double[]? about, double reach)
    {
        var n = means.Length;
        var program = new LinearProgram(n + rows.Count);
        var cost = new double[n + rows.Count];
        for (var j = 0; j < n; j++) cost[j] = means[j].Price + 1e-6;
        var lowest = new double[n];
        if (about is not null)
            for (var j = 0; j < n; j++) lowest[j] = Math.Max(0, about[j] - reach);
        for (var i = 0; i < rows.Count; i++)
        {
            var weights = new double[n + rows.Count];
            var value = rows[i].Value;
            for (var j = 0; j < n; j++) { weights[j] = rows[i].Slopes[j]; value += rows[i].Slopes[j] * lowest[j]; }
            weights[n + i] = 1;
            cost[n + i] = rows[i].Must ? MissedBand : MissedMargin;
            program.AtLeast(weights, -value);
        }

        for (var j = 0; j < n; j++)
        {
            var most = means[j].Kind == MeansKind.Dilute ? MostDiluted : double.PositiveInfinity;
            if (about is not null && reach < 1e8) most = Math.Min(most, about[j] + reach);
            if (double.IsFinite(most)) program.AtMost(j, most - lowest[j]);
        }

        var answer = program.Minimise(cost);
        if (answer.Outcome != LinearOutcome.Optimal) return null;
        var units = answer.At[..n];
        for (var j = 0; j < n; j++) units[j] += lowest[j];
        return units;
    }

    private double Merit(double[] units, Speciation water)
    {
        var merit = Price(units);
        foreach (var aim in aims)
            foreach (var (end, isLow, must) in PlanRows.Ends(aim))
                merit += Math.Max(0, Miss(aim, water, end, isLow) - Dust) * (must ? MissedBand : MissedMargin);
        return merit;
    }

    private double Margins(Speciation water) =>
        aims.Sum(aim => PlanRows.Ends(aim).Where(e => !e.Must).Sum(e => Math.Max(0, Miss(aim, water, e.End, e.IsLow) - 1e-3)));

    private double Price(double[] units)
    {
        var price = 0.0;
        for (var j = 0; j < units.Length; j++) price += units[j] * (means[j].Price + 1e-6);
        return price;
    }

    private List<(Aim Aim, bool IsLow)> Misses(Speciation water)
    {
        var missed = new List<(Aim, bool)>();
        foreach (var aim in aims)
        {
            var tolerance = PlannedFigures.Tolerance(aim.Figure) / PlannedFigures.Step(aim.Figure);
            foreach (var (end, isLow, must) in PlanRows.Ends(aim))
                if (must && Miss(aim, water, end, isLow) > tolerance) missed.Add((aim, isLow));
        }

        return missed;
    }

    private static double Miss(Aim aim, Speciation water, double end, bool isLow)
    {
        var value = PlannedFigures.Of(water, aim.Figure);
        return (isLow ? end - value : value - end) / PlannedFigures.Step(aim.Figure);
    }

    private static double Distance(double[] a, double[] b)
    {
        var longest = 0.0;
        for (var j = 0; j < a.Length; j++) longest = Math.Max(longest, Math.Abs(a[j] - b[j]));
        return longest;
    }

    // A water in the middle of its bands: where the conditions are written first. With more alkalinity where cyanurate would otherwise leave no carbon.
    private Composition Centre()
    {
        var c = start;
        foreach (var aim in aims)
        {
            var (low, high) = (aim.Low?.Wants ?? aim.High?.Wants ?? 0, aim.High?.Wants ?? aim.Low?.Wants ?? 0);
            if ((aim.Low ?? aim.High) is null) continue;
            var target = (low + high) / 2;
            if (aim.Figure == PlannedFigure.CalciumHardness) c = To(c, aim.Figure, target, new(Calcium: 1, Chloride: 2));
            if (aim.Figure == PlannedFigure.FreeChlorine) c = To(c, aim.Figure, target, new(Sodium: 1, Chlorine: 1));
            if (aim.Figure == PlannedFigure.CyanuricAcid) c = To(c, aim.Figure, target, new(Sodium: 1, Cyanurate: 1));
            if (aim.Figure == PlannedFigure.TotalAlkalinity) c = To(c, aim.Figure, target, new(Sodium: 1, Carbon: 1));
        }

        var ph = _ph is { } aimed ? ((aimed.Low?.Wants ?? model.Start.Ph) + (aimed.High?.Wants ?? model.Start.Ph)) / 2 : model.Start.Ph;
        for (var more = 0; more < 6; more++, c += new Composition(Sodium: 1e-3))
            if (model.CarbonAt(c, ph) is { } carbon) return c with { Carbon = carbon };
        return start;
    }

    private static Composition To(Composition c, PlannedFigure figure, double target, Composition by)
    {
        var moved = c + ((target - PlannedFigures.Of(c, figure)) / PlannedFigures.Of(by, figure) * by);
        return moved with { Sodium = Math.Max(0, moved.Sodium), Chloride = Math.Max(0, moved.Chloride), Carbon = Math.Max(0, moved.Carbon) };
    }
}
