namespace PlantWatch.Core.Chemistry;

/// <summary>The least cost of amounts that are not negative and keep to linear conditions: minimise c x, a x at least b for each row, x at least 0.</summary>
/// <remarks>Small and dense: a dozen products and two dozen conditions. The same program gives the same answer, always.</remarks>
/// <param name="variables">Number of amounts to find.</param>
public sealed class LinearProgram(int variables)
{
    private readonly List<(double[] Weights, double Least)> _rows = [];

    /// <summary>Number of variables.</summary>
    public int Variables => variables;

    /// <summary>Number of rows.</summary>
    public int Rows => _rows.Count;

    /// <summary>Asks that the weighted sum is at least so much.</summary>
    /// <param name="weights">One weight a variable.</param>
    /// <param name="least">The least the sum may be.</param>
    /// <exception cref="ArgumentException">The weights are not one a variable, or a figure is not finite.</exception>
    public void AtLeast(double[] weights, double least)
    {
        ArgumentNullException.ThrowIfNull(weights);
        if (weights.Length != variables) throw new ArgumentException($"{weights.Length} weights for {variables} variables", nameof(weights));
        if (!double.IsFinite(least) || !Array.TrueForAll(weights, double.IsFinite)) throw new ArgumentException("a row holds finite figures", nameof(weights));
        _rows.Add((weights, least));
    }

    /// <summary>Asks that the weighted sum is at most so much.</summary>
    public void AtMost(double[] weights, double most) => AtLeast(Array.ConvertAll(weights, w => -w), -most);

    /// <summary>Asks that one variable is at most so much.</summary>
    public void AtMost(int variable, double most)
    {
        var weights = new double[variables];
        weights[variable] = -1;
        AtLeast(weights, -most);
    }

    /// <summary>Solves for the least of the weighted sum.</summary>
    public LinearAnswer Minimise(double[] cost)
    {
        ArgumentNullException.ThrowIfNull(cost);
        if (cost.Length != variables || !Array.TrueForAll(cost, double.IsFinite)) throw new ArgumentException("one finite cost a variable", nameof(cost));
        return new Simplex(_rows, cost).Solve();
    }
}

/// <summary>How a linear program ended.</summary>
public enum LinearOutcome
{
    /// <summary>Not solved.</summary>
    NotSolved = 0,
    /// <summary>The least was found.</summary>
    Optimal,
    /// <summary>No amounts keep to all rows.</summary>
    Infeasible,
    /// <summary>The sum falls without end.</summary>
    Unbounded,
    /// <summary>The turns ran out; with Bland's rule this is a defect.</summary>
    OutOfTurns,
}

/// <summary>The answer of a linear program.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="At">The amounts; empty unless optimal.</param>
/// <param name="Cost">Their cost.</param>
public readonly record struct LinearAnswer(LinearOutcome Outcome, double[] At, double Cost);
