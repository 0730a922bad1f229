namespace PlantWatch.Core.Chemistry;

/// <summary>What keeps a water from being worked out.</summary>
public enum EquilibriumFailure
{
    /// <summary>Nothing was computed.</summary>
    NotComputed = 0,
    /// <summary>None: there is a result.</summary>
    None,
    /// <summary>Water colder or warmer than <see cref="Equilibrium.ValidCelsius"/>.</summary>
    TemperatureOutsideRange,
    /// <summary>pH outside <see cref="Equilibrium.ValidPh"/>.</summary>
    PhOutsideRange,
    /// <summary>Saltier than the activity model is good for: <see cref="Equilibrium.MostSolids"/>.</summary>
    TooSalty,
    /// <summary>An impossible water: at this pH, water, cyanurate and borate alone hold more alkalinity than was measured, which leaves less than no carbonate.</summary>
    NegativeCarbon,
    /// <summary>An amount of the composition is negative or not a number.</summary>
    NegativeAmount,
    /// <summary>The balances found no common answer.</summary>
    NoAnswer,
}

/// <summary>A speciated water, or the name of what keeps it from being one. The default is not computed.</summary>
public readonly record struct EquilibriumResult
{
    private readonly Speciation? _value;

    private EquilibriumResult(Speciation? value, EquilibriumFailure failure)
    {
        _value = value;
        Failure = failure;
    }

    /// <summary>Why there is no result; <see cref="EquilibriumFailure.None"/> when there is one.</summary>
    public EquilibriumFailure Failure { get; }

    /// <summary>True when there is a result.</summary>
    public bool IsKnown => Failure == EquilibriumFailure.None;

    /// <summary>The result.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public Speciation Value => _value ?? throw new InvalidOperationException($"no equilibrium: {Failure}");

    internal static EquilibriumResult Of(Speciation value) => new(value, EquilibriumFailure.None);

    internal static EquilibriumResult Failed(EquilibriumFailure failure) => new(null, failure);
}
