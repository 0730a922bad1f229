namespace PlantWatch.Core.Quantities;

/// <summary>The month that drifts and correction limits are said by.</summary>
public static class AMonth
{
    /// <summary>Days of it: a twelfth of the Gregorian year of 365.2425 days, rounded.</summary>
    public const double Days = 30.44;
}
