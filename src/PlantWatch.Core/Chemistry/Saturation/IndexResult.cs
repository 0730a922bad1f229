using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What a saturation index means for the plant.</summary>
public enum BalanceWord
{
    /// <summary>No index.</summary>
    Unknown = 0,
    /// <summary>Dissolves calcium carbonate: grout, render, concrete.</summary>
    Corrosive,
    /// <summary>Within the tolerance band.</summary>
    Balanced,
    /// <summary>Deposits calcium carbonate: filters, heaters, cloudy water.</summary>
    ScaleForming,
}

/// <summary>A saturation index with what it may claim, or the reason why there is none. The default is not computed.</summary>
public readonly record struct IndexResult
{
    /// <summary>Half the width of the tolerance band: -0.5 to +0.5 is balanced (10 CRR-NY 6-1.30, which aims slightly positive).</summary>
    public const double Tolerance = 0.5;

    // Sums of table figures carry binary dust: an index printed as 0.50 is on the edge and inside.
    private const double Dust = 1e-9;

    private readonly Figure _figure;

    internal IndexResult(Figure figure, double claim, double measured = 0)
    {
        _figure = figure;
        Claim = claim;
        Measured = measured;
    }

    /// <summary>True when there is an index.</summary>
    public bool IsKnown => _figure.IsKnown;

    /// <summary>Why there is none; null when there is one.</summary>
    public Reason? Why => _figure.Why;

    /// <summary>The index: below 0 the water dissolves calcium carbonate, above 0 it deposits it.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public double Value => _figure.Value;

    /// <summary>What the method itself may claim, +- at k = 2.</summary>
    public double Claim { get; }

    /// <summary>Standard uncertainty that the tests bring in; 0 when their uncertainty was not given.</summary>
    public double Measured { get; }

    /// <summary>Expanded uncertainty U at k = 2: method and tests together (GUM).</summary>
    public double Expanded => Math.Sqrt((Claim * Claim) + (4 * Measured * Measured));

    /// <summary>The index in a word.</summary>
    public BalanceWord Word => IsKnown ? WordOf(Value) : BalanceWord.Unknown;

    /// <summary>True when the word would be the same anywhere within the uncertainty.</summary>
    public bool WordIsSure => IsKnown && WordOf(Value - Expanded) == WordOf(Value + Expanded);

    internal IndexResult With(double measured) => new(_figure, Claim, measured);

    internal static IndexResult Of(double value, double claim) => new(Figure.Of(value), claim);

    internal static IndexResult Not(Reason why, double claim) => new(Figure.Not(why), claim);

    private static BalanceWord WordOf(double value) =>
        value < -Tolerance - Dust ? BalanceWord.Corrosive : value > Tolerance + Dust ? BalanceWord.ScaleForming : BalanceWord.Balanced;
}
