namespace PlantWatch.Core.Chemistry;

/// <summary>What keeps a saturation index from being computed.</summary>
public enum IndexFailure
{
    /// <summary>Nothing was computed.</summary>
    NotComputed = 0,
    /// <summary>None: there is an index.</summary>
    None,
    /// <summary>Water temperature outside the method's table.</summary>
    TemperatureOutsideTable,
    /// <summary>Calcium hardness outside the method's table.</summary>
    CalciumOutsideTable,
    /// <summary>Alkalinity outside the method's table.</summary>
    AlkalinityOutsideTable,
}

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

/// <summary>A saturation index with what its method may claim, or why there is none. The default is not computed.</summary>
public readonly record struct IndexResult
{
    /// <summary>Half the width of the tolerance band: -0.5 to +0.5 is balanced (10 CRR-NY 6-1.30, which aims slightly positive).</summary>
    public const double Tolerance = 0.5;

    // Sums of table figures carry binary dust: an index printed as 0.50 is on the edge and inside.
    private const double Dust = 1e-9;

    private readonly double _value;

    private IndexResult(double value, double claim, IndexFailure failure, bool cyanurateIgnored)
    {
        _value = value;
        Claim = claim;
        Failure = failure;
        CyanurateIgnored = cyanurateIgnored;
    }

    /// <summary>Why there is no index; <see cref="IndexFailure.None"/> when there is one.</summary>
    public IndexFailure Failure { get; }

    /// <summary>True when there is an index.</summary>
    public bool IsKnown => Failure == IndexFailure.None;

    /// <summary>The index: below 0 the water dissolves calcium carbonate, above 0 it deposits it.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public double Value => IsKnown ? _value : throw new InvalidOperationException($"no index: {Failure}");

    /// <summary>What the method may claim, +-.</summary>
    public double Claim { get; }

    /// <summary>True when the water holds cyanurate and its share of the alkalinity was not taken off: the index is then too high.</summary>
    public bool CyanurateIgnored { get; }

    /// <summary>The index in a word.</summary>
    public BalanceWord Word => !IsKnown ? BalanceWord.Unknown
        : _value < -Tolerance - Dust ? BalanceWord.Corrosive
        : _value > Tolerance + Dust ? BalanceWord.ScaleForming : BalanceWord.Balanced;

    internal static IndexResult Of(double value, double claim, bool cyanurateIgnored) => new(value, claim, IndexFailure.None, cyanurateIgnored);

    internal static IndexResult Failed(IndexFailure failure, double claim) => new(0, claim, failure, false);
}
