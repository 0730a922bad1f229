using System.Collections.Immutable;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What of a test lies outside what the figure holds for.</summary>
internal static class HoldBounds
{
    private const string Residual = "residual";
    private const string Acidity = "ph";
    private const string Warmth = "temperature";

    /// <summary>Each value that was measured and lies outside what the figure holds for.</summary>
    public static ImmutableArray<(string What, Reason Reason)> Outside(HoldFigure figure, HoldTest test)
    {
        var found = ImmutableArray.CreateBuilder<(string, Reason)>();
        if (test.Residual is { } residual && residual < figure.Floor) found.Add((Residual, Reason.Of("incident.residual_low", residual, figure.Floor, "mg/L")));
        if (test.Ph is { } high && high > figure.HighestPh) found.Add((Acidity, Reason.Of("incident.ph_high", high, figure.HighestPh, "pH")));
        if (test.Ph is { } low && low < figure.LowestPh) found.Add((Acidity, Reason.Of("incident.ph_low", low, figure.LowestPh.Value, "pH")));
        if (test.Celsius is { } celsius && celsius < figure.LowestCelsius) found.Add((Warmth, Reason.Of("incident.too_cold", celsius, figure.LowestCelsius, "degC")));
        return found.ToImmutable();
    }

    /// <summary>True when the test measured this.</summary>
    public static bool Measures(HoldTest test, string what) => what switch
    {
        Residual => test.Residual is not null,
        Acidity => test.Ph is not null,
        _ => test.Celsius is not null,
    };
}
