using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>What kind of filtration a rate is (common practice, UK words).</summary>
public enum FilterRateKind
{
    /// <summary>Not computed.</summary>
    Unknown = 0,
    /// <summary>Up to 10 m/h.</summary>
    Low,
    /// <summary>10 to 25 m/h, usual for public pools.</summary>
    Medium,
    /// <summary>25 to 50 m/h.</summary>
    High,
    /// <summary>Above 50 m/h: faster than sand filters are run.</summary>
    TooHigh,
}

/// <summary>Water through a filter: flow through area, in m/h.</summary>
public static class FilterRate
{
    private static readonly ValueRange Area = new(0.01, 10_000);
    private static readonly ValueRange Diameter = new(0.1, 20);
    private static readonly ValueRange Count = new(1, 100);

    /// <summary>The rate in m/h.</summary>
    /// <param name="cubicMetresPerHour">Flow through all filters, m3/h.</param>
    /// <param name="squareMetres">Area of all filters in work, m2.</param>
    public static Figure Of(double cubicMetresPerHour, double squareMetres) => new InputCheck()
        .Within("flow", cubicMetresPerHour, Turnover.ValidFlow, "m3/h").Within("filter_area", squareMetres, Area, "m2")
        .Then(() => cubicMetresPerHour / squareMetres);

    /// <summary>Area in m2 of round filters.</summary>
    /// <param name="count">How many.</param>
    /// <param name="metres">Diameter of each in m.</param>
    public static Figure AreaOf(int count, double metres) => new InputCheck()
        .Within("filters", count, Count, "").Within("filter_diameter", metres, Diameter, "m")
        .Then(() => count * Math.PI * metres * metres / 4);

    /// <summary>What kind of filtration a rate in m/h is.</summary>
    public static FilterRateKind Kind(double metresPerHour) => metresPerHour switch
    {
        > 50 => FilterRateKind.TooHigh,
        > 25 => FilterRateKind.High,
        > 10 => FilterRateKind.Medium,
        > 0 => FilterRateKind.Low,
        _ => FilterRateKind.Unknown,
    };
}
