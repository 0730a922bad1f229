namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>What a loop can be like before anything was learned of it: a grid of how much a stroke moves the value, how much the value wanders by itself, and how late the probe sees it.</summary>
internal sealed class LoopSetting
{
    private readonly double[] _falls, _prior, _wanders;

    // Five-minute bins from stroke to probe: pipes, and the first part of the mixing (common practice: minutes to half an hour).
    private readonly int[] _lags = [1, 3, 5];

    private LoopSetting(double[] falls, double[] prior, double[] wanders) => (_falls, _prior, _wanders) = (falls, prior, wanders);

    /// <summary>The longest lag in bins.</summary>
    public const int MostLag = 5;

    /// <summary>Number of cells.</summary>
    public int Cells => _falls.Length * _wanders.Length * _lags.Length;

    /// <summary>By how much a stroke lowers the value.</summary>
    public double Fall(int cell) => _falls[cell % _falls.Length];

    /// <summary>How much the value wanders, in its unit over the root of a minute.</summary>
    public double Wander(int cell) => _wanders[cell / _falls.Length % _wanders.Length];

    /// <summary>Bins from stroke to probe.</summary>
    public int Lag(int cell) => _lags[cell / _falls.Length / _wanders.Length];

    /// <summary>Log of how likely the cell is beforehand.</summary>
    public double Prior(int cell) => _prior[cell % _falls.Length];

    /// <summary>pH under acid. The closed carbonate system is the most that a stroke can do; carbon dioxide, plaster and concrete make it less, by a factor that only the pool knows.</summary>
    public static LoopSetting OfPh(PumpedPool pool)
    {
        var steps = Enumerable.Range(-6, 9).ToArray();
        const double spread = 1.1;
        return new(
            [.. steps.Select(k => pool.PhPerStroke * Math.Pow(1.5, k))], [.. steps.Select(k => -0.5 * Math.Pow(k * Math.Log(1.5) / spread, 2))], [0.0002, 0.0003, 0.00045, 0.0007, 0.001, 0.0015]);
    }

    /// <summary>What the chlorine controller asks for, under its own strokes: a stroke a minute lowers it by so much that the loop comes to rest within minutes to hours.</summary>
    public static LoopSetting OfNeed() => new([.. Enumerable.Range(0, 9).Select(k => 0.005 * Math.Pow(1.5, k))], new double[9], [0.05, 0.075, 0.11, 0.17, 0.25, 0.4]);
}
