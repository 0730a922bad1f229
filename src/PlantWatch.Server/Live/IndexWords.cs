using PlantWatch.Core.Chemistry;

namespace PlantWatch.Server.Live;

/// <summary>A saturation index in a word.</summary>
internal static class IndexWords
{
    public static BalanceWord Of(double index) => index switch
    {
        double.NaN => BalanceWord.Unknown,
        < -IndexResult.Tolerance => BalanceWord.Corrosive,
        > IndexResult.Tolerance => BalanceWord.ScaleForming,
        _ => BalanceWord.Balanced,
    };
}
