namespace PlantWatch.Core.Chemistry;

/// <summary>One species of the water: how it is built from the components, its constant, and what its charge does to its activity.</summary>
/// <param name="Name">Formula.</param>
/// <param name="Charge">Charge number.</param>
/// <param name="Formation">log K of its formation from the components.</param>
/// <param name="Activity">Rule of its activity coefficient.</param>
/// <param name="Parts">How many of each component; negative where forming it sets one free.</param>
/// <param name="Water">Molecules of water that forming it sets free; negative where it takes them up.</param>
internal sealed record AqueousSpecies(string Name, int Charge, LogK Formation, ActivityRule Activity, (Component Component, int Count)[] Parts, int Water = 0);

/// <summary>How the activity coefficient of a species follows from ionic strength I: log g = -A z^2 sqrt I/(1 + B a sqrt I) + b I.</summary>
/// <param name="Kind">Which rule.</param>
/// <param name="A">Size parameter a in angstrom; 0 where the rule has none.</param>
/// <param name="B">Slope b.</param>
internal readonly record struct ActivityRule(ActivityKind Kind, double A, double B)
{
    /// <summary>Extended Debye-Hueckel with size and slope (Truesdell and Jones).</summary>
    public static ActivityRule Ion(double a, double b) => new(ActivityKind.Extended, a, b);

    /// <summary>Davies: size 1/B, slope 0.3 A z^2. For ions without parameters of their own.</summary>
    public static ActivityRule Davies { get; } = new(ActivityKind.Davies, 0, 0);

    /// <summary>A neutral species: log g = b I.</summary>
    public static ActivityRule Neutral(double b) => new(ActivityKind.Neutral, 0, b);

    /// <summary>Natural logarithm of the coefficient.</summary>
    public double LnGamma(int charge, double ionicStrength, double rootI, in DebyeHueckel water)
    {
        var z2 = charge * charge;
        var log = Kind switch
        {
            ActivityKind.Extended => (-water.A * z2 * rootI / (1 + (water.B * A * rootI))) + (B * ionicStrength),
            ActivityKind.Davies => -water.A * z2 * ((rootI / (1 + rootI)) - (0.3 * ionicStrength)),
            _ => B * ionicStrength,
        };
        return Ln10 * log;
    }

    private const double Ln10 = 2.302585092994046;
}

/// <summary>Rules of activity coefficients.</summary>
internal enum ActivityKind
{
    /// <summary>Uncharged.</summary>
    Neutral = 0,
    /// <summary>Extended Debye-Hueckel.</summary>
    Extended,
    /// <summary>Davies.</summary>
    Davies,
}
