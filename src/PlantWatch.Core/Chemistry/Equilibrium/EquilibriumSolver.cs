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
    private readonly Span<double> _lnGamma;
    private readonly Stride _stride;
    private double _lnWater;

    /// <summary>Prepares a solution.</summary>
    /// <param name="tableau">Constants at the temperature.</param>
    /// <param name="totals">Total of each component in mol/kg; 0 leaves a component out, except hydrogen. With a free amount: what is there beside it.</param>
    /// <param name="chloride">Chloride in mol/kg, which only carries ionic strength.</param>
    /// <param name="condition">The condition, if any.</param>
    /// <param name="lnActivity">Where to start; the answer afterwards. Natural logarithms of the activities of the components.</param>
    /// <param name="molality">The answer: mol/kg of each species.</param>
    /// <param name="lnGamma">The answer: logarithm of each activity coefficient.</param>
    /// <param name="stride">How a step that is too long is shortened.</param>
    public EquilibriumSolver(
        Tableau tableau, ReadOnlySpan<double> totals, double chloride, Condition condition, Span<double> lnActivity, Span<double> molality, Span<double> lnGamma,
        Stride stride)
    {
        _stride = stride;
        _tableau = tableau;
        _totals = totals;
        _chloride = chloride;
        _condition = condition;
        _ln = lnActivity;
        _molality = molality;
        _lnGamma = lnGamma;
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
        Span<int> active = stackalloc int[Tableau.Components];
        active = active[..Active(active)];
        if (_condition.Given != ConditionKind.None) _condition.Brings(brings);
        var rested = false;
        for (Turns = 1; Turns <= MostTurns; Turns++)
        {
            Activities();
            Balances(active, matrix, residual, scale);
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
            if (c == (int)Hydrogen || _totals[c] > 0 || (c == (int)Carbonate && _condition.Given != ConditionKind.None)) active[n++] = c;
        return n;
    }

    private readonly bool Holds(ReadOnlySpan<sbyte> counts)
    {
        for (var c = 1; c < Tableau.Components; c++)
            if (counts[c] != 0 && _totals[c] <= 0 && !(c == (int)Carbonate && _condition.Given != ConditionKind.None)) return false;
        return true;
    }

    // Ionic strength, coefficients and molalities from the activities; coefficients lag one turn behind.
    private void Activities()
    {
        double ionic = _chloride, sum = _chloride;
        for (var i = 0; i < _molality.Length; i++)
        {
            ionic += SpeciesTable.All[i].Charge * SpeciesTable.All[i].Charge * _molality[i];
            sum += _molality[i];
        }

        // A first guess may be far out; no water the model is made for is stronger than 1 mol/kg.
        IonicStrength = Math.Min(ionic / 2, 1);
        var real = _tableau.Water.A > 0;
        _lnWater = real ? Math.Log(Math.Max(1 - (0.017 * sum), 0.9)) : 0;
        var root = Math.Sqrt(IonicStrength);
        for (var i = 0; i < _molality.Length; i++)
        {
            var counts = Tableau.Counts(i);
            if (!Holds(counts)) { _molality[i] = 0; continue; }
            var species = SpeciesTable.All[i];
            _lnGamma[i] = real ? species.Activity.LnGamma(species.Charge, IonicStrength, root, _tableau.Water) : 0;
            var ln = _tableau.LnK[i] - _lnGamma[i] - (species.Water * _lnWater);
            for (var c = 0; c < counts.Length; c++)
                if (counts[c] != 0) ln += counts[c] * _ln[c];
            _molality[i] = Math.Exp(ln);
        }
    }

    private readonly void Balances(ReadOnlySpan<int> active, Span<double> matrix, Span<double> residual, Span<double> scale)
    {
        var n = active.Length;
        matrix.Clear();
        for (var j = 0; j < n; j++) (residual[j], scale[j]) = (-_totals[active[j]], 0);
        for (var i = 0; i < _molality.Length; i++)
        {
            if (_molality[i] == 0) continue;
            var counts = Tableau.Counts(i);
            for (var j = 0; j < n; j++)
            {
                if (counts[active[j]] is 0) continue;
                var part = counts[active[j]] * _molality[i];
                residual[j] += part;
                scale[j] += Math.Abs(part);
                for (var k = 0; k <= j; k++) matrix[(j * n) + k] += part * counts[active[k]];
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
