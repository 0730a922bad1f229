using PlantWatch.Server.Words;

namespace PlantWatch.Server.Units;

/// <summary>A unit and the smaller one under it, for amounts from a pinch to a tanker.</summary>
/// <param name="Unit">The larger unit as written.</param>
/// <param name="Size">Its size in the SI unit that amounts come in.</param>
/// <param name="SmallUnit">The smaller unit as written.</param>
/// <param name="SmallSize">Its size.</param>
/// <param name="Digits">Significant digits.</param>
internal sealed record UnitLadder(string Unit, double Size, string SmallUnit, double SmallSize, int Digits = 3)
{
    /// <summary>Said before an amount too small to measure.</summary>
    public const string Under = "under";

    // Nobody measures less than this many of the smaller unit.
    private const double Least = 0.01;

    /// <summary>The amount in the larger unit when there is one whole of it once rounded, else in the smaller.</summary>
    public string Say(double amount)
    {
        var large = Rounding.Significant(amount / Size, Digits);
        if (large >= 1 || amount == 0) return Written(large, Unit);
        var small = Rounding.Significant(amount / SmallSize, Digits);
        return small < Least ? Under + " " + Written(Least, SmallUnit) : Written(small, SmallUnit);
    }

    private static string Written(double value, string unit) => Rounding.Written(value) + Figures.After(unit);
}
