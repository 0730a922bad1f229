namespace PlantWatch.Core.Chemistry;

/// <summary>The simplex method in a dense table, in two phases (Dantzig 1951; rule against cycling: Bland, Math. Oper. Res. 2:103, 1977).</summary>
/// <remarks>
/// Columns: variables, one surplus a row, one artificial for each row that zero amounts do not keep. The steepest column enters at first, and after a number of turns the first one that helps,
/// which cannot go round in circles.
/// </remarks>
internal sealed class Simplex
{
    private const double Zero = 1e-10;
    private const int TurnsOfTheSteepest = 200;
    private const int MostTurns = 5000;

    private readonly int _variables, _rows, _artificial, _columns, _width;
    private readonly double[] _table;
    private readonly int[] _basis;
    private readonly double[] _cost;
    private int _turns;

    public Simplex(List<(double[] Weights, double Least)> rows, double[] cost)
    {
        (_variables, _rows, _cost) = (cost.Length, rows.Count, cost);
        _artificial = _variables + _rows;
        _basis = new int[_rows];
        var alone = Alone(rows);
        var start = new int[_rows];
        var next = _artificial;
        // Where zero amounts keep a row its surplus can start; else a variable that stands in this row only; else an artificial one.
        for (var i = 0; i < _rows; i++) start[i] = rows[i].Least <= 0 ? _variables + i : alone[i] >= 0 ? alone[i] : next++;
        _columns = next;
        _width = _columns + 1;
        // The last row is the cost, the last column the right-hand side.
        _table = new double[(_rows + 1) * _width];
        for (var i = 0; i < _rows; i++)
        {
            var row = Row(i);
            // a x - s = b, or turned round so that the right-hand side is not negative.
            var sign = rows[i].Least > 0 ? 1 : -1;
            for (var j = 0; j < _variables; j++) row[j] = sign * rows[i].Weights[j];
            row[_variables + i] = -sign;
            row[_columns] = sign * rows[i].Least;
            if (start[i] >= _artificial) row[start[i]] = 1;
            _basis[i] = start[i];
        }
    }

    // A variable with weight 1 in one row and none in any other.
    private static int[] Alone(List<(double[] Weights, double Least)> rows)
    {
        var alone = new int[rows.Count];
        Array.Fill(alone, -1);
        for (var j = 0; rows.Count > 0 && j < rows[0].Weights.Length; j++)
        {
            var (only, count) = (-1, 0);
            for (var i = 0; i < rows.Count && count < 2; i++)
                if (rows[i].Weights[j] != 0) (only, count) = (i, count + 1);
            if (count == 1 && rows[only].Weights[j] == 1) alone[only] = j;
        }

        return alone;
    }

    public LinearAnswer Solve()
    {
        var cost = Row(_rows);
        if (_columns > _artificial)
        {
            cost[_artificial.._columns].Fill(1);
            TakeOutBasis(j => j >= _artificial ? 1 : 0);
            if (Run(_columns) is not LinearOutcome.Optimal and var broken) return new(broken, [], double.NaN);
            if (-cost[_columns] > 1e-7) return new(LinearOutcome.Infeasible, [], double.NaN);
            DriveOutArtificials();
        }

        cost.Clear();
        _cost.CopyTo(cost);
        TakeOutBasis(j => j < _variables ? _cost[j] : 0);
        var outcome = Run(_artificial);
        return outcome == LinearOutcome.Optimal ? new(outcome, Amounts(), -cost[_columns]) : new(outcome, [], double.NaN);
    }

    private Span<double> Row(int i) => _table.AsSpan(i * _width, _width);

    private double[] Amounts()
    {
        var at = new double[_variables];
        for (var i = 0; i < _rows; i++)
            if (_basis[i] < _variables) at[_basis[i]] = Math.Max(0, Row(i)[_columns]);
        return at;
    }

    // The cost row counts from the basis: what stands in it costs nothing more.
    private void TakeOutBasis(Func<int, double> costOf)
    {
        for (var i = 0; i < _rows; i++)
            if (costOf(_basis[i]) is var cost and not 0) Subtract(Row(_rows), cost, Row(i));
    }

    private LinearOutcome Run(int columns)
    {
        for (var turn = 0; ; turn++, _turns++)
        {
            if (_turns > MostTurns) return LinearOutcome.OutOfTurns;
            var entering = Entering(columns, turn < TurnsOfTheSteepest);
            if (entering < 0) return LinearOutcome.Optimal;
            var leaving = Leaving(entering);
            if (leaving < 0) return LinearOutcome.Unbounded;
            Pivot(leaving, entering);
        }
    }

    private int Entering(int columns, bool steepest)
    {
        var (best, least) = (-1, -1e-9);
        var cost = Row(_rows);
        for (var j = 0; j < columns; j++)
        {
            if (cost[j] >= least) continue;
            if (!steepest) return j;
            (best, least) = (j, cost[j]);
        }

        return best;
    }

    private int Leaving(int entering)
    {
        var (best, least) = (-1, double.PositiveInfinity);
        for (var i = 0; i < _rows; i++)
        {
            var row = Row(i);
            if (row[entering] <= Zero) continue;
            var ratio = row[_columns] / row[entering];
            if (ratio < least - Zero || (ratio < least + Zero && best >= 0 && _basis[i] < _basis[best])) (best, least) = (i, Math.Min(ratio, least));
        }

        return best;
    }

    private void Pivot(int at, int column)
    {
        var row = Row(at);
        var pivot = row[column];
        for (var j = 0; j < row.Length; j++) row[j] /= pivot;
        for (var i = 0; i <= _rows; i++)
            if (i != at && Row(i)[column] is var times and not 0) Subtract(Row(i), times, row);
        _basis[at] = column;
    }

    private static void Subtract(Span<double> from, double times, ReadOnlySpan<double> what)
    {
        for (var j = 0; j < from.Length && j < what.Length; j++) from[j] -= times * what[j];
    }

    // An artificial that stands at zero gives its place to any column that can take it; a row where none can says nothing new.
    private void DriveOutArtificials()
    {
        for (var i = 0; i < _rows; i++)
        {
            if (_basis[i] < _artificial) continue;
            for (var j = 0; j < _artificial; j++)
                if (Math.Abs(Row(i)[j]) > 1e-9) { Pivot(i, j); break; }
        }
    }
}
