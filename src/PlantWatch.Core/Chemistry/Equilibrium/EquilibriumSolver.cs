using static PlantWatch.Core.Chemistry.Component;

namespace PlantWatch.Core.Chemistry;

/// <summary>Finds the activities at which every balance closes: mass action of all species at once, by Newton's method on the logarithms.</summary>
/// <remarks>
/// With fixed activity coefficients the balances are the slope of a convex function of the logarithms, so that the matrix is symmetric and positive and one Cholesky factor serves each turn; a condition
/// costs a second right-hand side and no second matrix. Coefficients and the activity of water follow from the turn before. The number of turns is bounded.
/// </remarks>
internal ref struct EquilibriumSolver
{
    /// <summary>Turns after which the solver says no.</summary>
    public const int MostTurns = 200;

    // A balance is closed when it is off by less than this part of what stands in it; asked of the result is 1e-9.
    private const double Closed = 1e-10;
    private const double LongestStep = 2;

    private readonly Tableau _tableau;
    private readonly Condition _condition;
    private readonly double _chloride;
    private readonly ReadOnlySpan<double> _totals;
    private readonly Span<double> _ln;
    private readonly Span<double> _molality;
    private readonly Stride _stride;

    /// <summary>Prepares a solution.</summary>
    /// <param name="tableau">Constants at the temperature.</param>
    /// <param name="totals">Total of each component in mol/kg; 0 leaves a component out, except hydrogen. With a free amount: what is there beside it.</param>
    /// <param name="chloride">Chloride in mol/kg, which only carries ionic strength.</param>
    /// <param name="condition">The condition, if any.</param>
    /// <param name="lnActivity">Where to start; the answer afterwards. Natural logarithms of the activities of the components.</param>
    /// <param name="molality">The answer: mol/kg of each species.</param>
    /// <param name="stride">How a step that is too long is shortened.</param>
    public EquilibriumSolver(
        Tableau tableau, ReadOnlySpan<double> totals, double chloride, Condition condition, Span<double> lnActivity, Span<double> molality,
        Stride stride)
    {
        _stride = stride;
        _tableau = tableau;
        _totals = totals;
        _chloride = chloride;
        _condition = condition;
        _ln = lnActivity;
        _molality = molality;
    }

    /// <summary>The amount that the condition set free, in mol/kg.</summary>
    public double Freed { get; private set; }

    /// <summary>Ionic strength in mol/kg.</summary>
    public double IonicStrength { get; private set; }

    /// <summary>Turns used.</summary>
    public int Turns { get; private set; }

    /// <summary>Solves; false when the turns run out or numbers leave the finite.</summary>
    public bool Solve()
    {
        Span<double> matrix = stackalloc double[Tableau.Components * Tableau.Components];
        Span<double> residual = stackalloc double[Tableau.Components], scale = stackalloc double[Tableau.Components], brings = stackalloc double[Tableau.Components];
        Span<int> active = stackalloc int[Tableau.Components], species = stackalloc int[Tableau.Species];
        Span<sbyte> counts = stackalloc sbyte[Tableau.Components * Tableau.Species];
        active = active[..Active(active)];
        species = species[..Present(active, species, counts)];
        if (_condition.Given != ConditionKind.None) _condition.Brings(brings);
        var rested = false;
        for (Turns = 1; Turns <= MostTurns; Turns++)
        {
            Activities(active, species, counts);
            Balances(active, species, counts, matrix, residual, scale);
            if (!Cholesky.Factor(matrix, active.Length)) return false;
            var longest = Step(active, matrix, residual, brings);
            if (!double.IsFinite(longest)) return false;
            // Twice in a row, so that the activity coefficients have come to rest as well.
            var closed = IsClosed(active, residual, scale, brings);
            if (closed && rested) return true;
            rested = closed;
        }

        return false;
    }

    private readonly int Active(Span<int> active)
    {
        var n = 0;
        for (var c = 0; c < Tableau.Components; c++)
            if (IsThere(c)) active[n++] = c;
        return n;
    }

    private readonly bool IsThere(int component) =>
        component == (int)Hydrogen || _totals[component] > 0 || (component == (int)Carbonate && _condition.Given != ConditionKind.None);

    // The species that can be there at all, and how many of each component that is there they hold.
    private readonly int Present(scoped ReadOnlySpan<int> active, Span<int> species, Span<sbyte> counts)
    {
        var n = 0;
        for (var i = 0; i < Tableau.Species; i++)
        {
            var all = Tableau.Counts(i);
            var there = true;
            for (var c = 0; c < all.Length; c++) there &= all[c] == 0 || IsThere(c);
            if (!there)
            {
                _molality[i] = 0;
                continue;
            }

            for (var j = 0; j < active.Length; j++) counts[(n * active.Length) + j] = all[active[j]];
            species[n++] = i;
        }

        return n;
    }

    // Ionic strength, coefficients and molalities from the activities; coefficients lag one turn behind.
    private void Activities(scoped ReadOnlySpan<int> active, scoped ReadOnlySpan<int> species, scoped ReadOnlySpan<sbyte> counts)
    {
        double ionic = _chloride, sum = _chloride;
        foreach (var i in species)
        {
            ionic += Tableau.Charges[i] * Tableau.Charges[i] * _molality[i];
            sum += _molality[i];
        }

        // A first guess may be far out; no water the model is made for is stronger than 1 mol/kg.
        IonicStrength = Math.Min(ionic / 2, 1);
        var real = _tableau.Water.A > 0;
        var lnWater = real ? Math.Log(Math.Max(1 - (0.017 * sum), 0.9)) : 0;
        var root = Math.Sqrt(IonicStrength);
        for (var s = 0; s < species.Length; s++)
        {
            var i = species[s];
            var ln = _tableau.LnK[i] - (Tableau.WaterFreed[i] * lnWater);
            if (real) ln -= Tableau.Rules[i].LnGamma(Tableau.Charges[i], IonicStrength, root, _tableau.Water);
            var held = counts.Slice(s * active.Length, active.Length);
            for (var j = 0; j < held.Length; j++)
                if (held[j] != 0) ln += held[j] * _ln[active[j]];
            _molality[i] = Math.Exp(ln);
        }
    }

    private readonly void Balances(
        scoped ReadOnlySpan<int> active, scoped ReadOnlySpan<int> species, scoped ReadOnlySpan<sbyte> counts, Span<double> matrix, Span<double> residual, Span<double> scale)
    {
        var n = active.Length;
        matrix[..(n * n)].Clear();
        for (var j = 0; j < n; j++) (residual[j], scale[j]) = (-_totals[active[j]], 0);
        for (var s = 0; s < species.Length; s++)
        {
            var held = counts.Slice(s * n, n);
            var molality = _molality[species[s]];
            for (var j = 0; j < n; j++)
            {
                if (held[j] == 0) continue;
                var part = held[j] * molality;
                residual[j] += part;
                scale[j] += Math.Abs(part);
                for (var k = 0; k <= j; k++) matrix[(j * n) + k] += part * held[k];
            }
        }
    }

    // One step of Newton: the activities move, the freed amount is found; returns the longest move wanted.
    private double Step(scoped ReadOnlySpan<int> active, scoped ReadOnlySpan<double> factor, scoped ReadOnlySpan<double> residual, scoped ReadOnlySpan<double> brings)
    {
        var n = active.Length;
        Span<double> move = stackalloc double[n], extra = stackalloc double[n], weights = stackalloc double[Tableau.Components];
        for (var j = 0; j < n; j++) (move[j], extra[j]) = (-residual[j], brings[active[j]]);
        Cholesky.Solve(factor, n, move);
        if (_condition.Given != ConditionKind.None)
        {
            Cholesky.Solve(factor, n, extra);
            _condition.Weights(weights);
            var (off, gain) = (_condition.LnActivity, 0.0);
            for (var j = 0; j < n; j++)
            {
                off -= weights[active[j]] * (_ln[active[j]] + move[j]);
                gain += weights[active[j]] * extra[j];
            }

            Freed = off / gain;
            for (var j = 0; j < n; j++) move[j] += Freed * extra[j];
        }

        var longest = 0.0;
        for (var j = 0; j < n; j++)
        {
            if (double.IsNaN(move[j])) return double.NaN;
            longest = Math.Max(longest, Math.Abs(move[j]));
        }

        // Together, the direction stays Newton's; each for itself, one amount that has far to go does not hold the others back.
        var part = _stride == Stride.Together && longest > LongestStep ? LongestStep / longest : 1;
        for (var j = 0; j < n; j++) _ln[active[j]] += Math.Clamp(part * move[j], -LongestStep, LongestStep);
        return longest;
    }

    private readonly bool IsClosed(ReadOnlySpan<int> active, ReadOnlySpan<double> residual, ReadOnlySpan<double> scale, ReadOnlySpan<double> brings)
    {
        for (var j = 0; j < active.Length; j++)
            if (Math.Abs(residual[j] - (Freed * brings[active[j]])) > Closed * (scale[j] + Math.Abs(Freed))) return false;
        return true;
    }
}

/// <summary>How a step that is too long is shortened.</summary>
internal enum Stride
{
    /// <summary>All moves by the same part.</summary>
    Together = 0,
    /// <summary>Each move for itself.</summary>
    Apart,
}
