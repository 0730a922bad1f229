namespace PlantWatch.Simulator.Water;

/// <summary>The acid-base equilibrium of pool water at one temperature and salt content: carbonate, hypochlorite, water itself.</summary>
/// <remarks>
/// Made for the simulator alone and on other fits than the product's, so that an error in one shows against the other.
/// Sources, T in kelvin: pK1 = 3404.71/T + 0.032786 T - 14.8435 (Harned and Davis 1943, published);
/// pK2 = 2902.39/T + 0.02379 T - 6.4980 (Harned and Scholes 1941, published);
/// pKw = 4470.99/T - 6.0875 + 0.01706 T (as in Stumm and Morgan 1981, published);
/// pKa(HOCl) = 7.54 at 25 degC (US EPA listing of the O'Brien constants, published) moved by van 't Hoff with 13.8 kJ/mol (from memory).
/// The ion pair CaCO3 binds carbonate: log K = 3.22 at 25 degC (Plummer and Busenberg 1982, published), its change with temperature left out; weaker pairs are left out whole.
/// Activities after Davies with ionic strength = dissolved solids / 40000 (common practice). Range 5 to 40 degC, ionic strength under 0.1.
/// </remarks>
internal readonly struct Equilibrium
{
    private const double GasConstant = 8.314462618;
    private const double HypochlorousEnthalpy = 13_800;
    private const double CalciumCarbonatePair = 1660;

    private readonly double _pk1;
    private readonly double _pk2;
    private readonly double _pkw;
    private readonly double _pka;
    private readonly double _logGamma;

    /// <summary>Constants for water of a temperature in degC, dissolved solids in mg/L and calcium hardness in mg/L as CaCO3.</summary>
    public Equilibrium(double celsius, double solids, double hardness)
    {
        var t = celsius + 273.15;
        var root = Math.Sqrt(Math.Max(solids, 1) / 40_000);
        var debye = 1.82e6 * Math.Pow((87.74 - (0.40008 * celsius) + (9.398e-4 * celsius * celsius)) * t, -1.5);
        _logGamma = -debye * ((root / (1 + root)) - (0.3 * root * root));
        // pH is an activity, all else a concentration: a singly charged ion on the right lowers the constant by one log gamma.
        _pk1 = (3404.71 / t) + (0.032786 * t) - 14.8435 + _logGamma;
        var paired = CalciumCarbonatePair * Math.Pow(10, 8 * _logGamma) * hardness / 100_087;
        _pk2 = (2902.39 / t) + (0.02379 * t) - 6.4980 + (3 * _logGamma) - Math.Log10(1 + paired);
        _pkw = (4470.99 / t) - 6.0875 + (0.01706 * t) + _logGamma;
        _pka = 7.54 + (HypochlorousEnthalpy / (GasConstant * Math.Log(10)) * ((1 / t) - (1 / 298.15))) + _logGamma;
    }

    /// <summary>Alkalinity in mmol/L that water of this pH has, from inorganic carbon and hypochlorite (both mmol/L).</summary>
    public double Alkalinity(double ph, double carbon, double hypochlorite) => At(ph, carbon, hypochlorite).Alkalinity;

    /// <summary>The pH at which the charges balance.</summary>
    /// <param name="alkalinity">mmol/L, hypochlorite ion included.</param>
    /// <param name="carbon">Total inorganic carbon, mmol/L.</param>
    /// <param name="hypochlorite">HOCl and its ion together, mmol/L.</param>
    /// <param name="guess">Where to start; the last pH of the same water.</param>
    public double Ph(double alkalinity, double carbon, double hypochlorite, double guess)
    {
        var ph = guess;
        for (var i = 0; i < 60; i++)
        {
            var (found, buffer) = At(ph, carbon, hypochlorite);
            var step = Math.Clamp((alkalinity - found) / buffer, -0.5, 0.5);
            ph = Math.Clamp(ph + step, 1, 13);
            if (Math.Abs(step) < 1e-9) break;
        }
        return ph;
    }

    /// <summary>Share of the carbon that is dissolved carbon dioxide, 0 to 1.</summary>
    public double CarbonDioxideShare(double ph)
    {
        var first = Math.Pow(10, ph - _pk1);
        return 1 / (1 + first + (first * Math.Pow(10, ph - _pk2)));
    }

    /// <summary>Share of free chlorine that is hypochlorous acid, 0 to 1.</summary>
    public double HypochlorousShare(double ph) => 1 / (1 + Math.Pow(10, ph - _pka));

    // Alkalinity and its slope by pH (the buffer value of Van Slyke 1922).
    private (double Alkalinity, double Buffer) At(double ph, double carbon, double hypochlorite)
    {
        var first = Math.Pow(10, ph - _pk1);
        var second = first * Math.Pow(10, ph - _pk2);
        var sum = 1 + first + second;
        var (a0, a1, a2) = (1 / sum, first / sum, second / sum);
        var ion = 1 - HypochlorousShare(ph);
        var hydrogen = 1000 * Math.Pow(10, -ph - _logGamma);
        var hydroxide = 1000 * Math.Pow(10, ph - _pkw);
        var alkalinity = (carbon * (a1 + (2 * a2))) + (hypochlorite * ion) + hydroxide - hydrogen;
        var buffer = (carbon * ((a0 * a1) + (4 * a0 * a2) + (a1 * a2))) + (hypochlorite * ion * (1 - ion)) + hydrogen + hydroxide;
        return (alkalinity, Math.Log(10) * buffer);
    }
}
