using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing;

/// <summary>How old a test may be for a dose to rest on it (common practice): what moves within the hour is tested anew, what moves by the week may be a week old.</summary>
public static class TestAge
{
    /// <summary>The oldest a test may be.</summary>
    public static TimeSpan Oldest(Measurand measurand) => measurand switch
    {
        Measurand.Ph or Measurand.FreeChlorine or Measurand.TotalChlorine => TimeSpan.FromHours(4),
        Measurand.Temperature => TimeSpan.FromHours(24),
        Measurand.TotalAlkalinity => TimeSpan.FromDays(7),
        _ => TimeSpan.FromDays(31),
    };
}
