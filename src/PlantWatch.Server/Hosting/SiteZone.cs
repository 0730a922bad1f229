using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Hosting;

/// <summary>The site's clock, which decides what a day of the record is.</summary>
internal static class SiteZone
{
    public static TimeZoneInfo Of(PlantWatchOptions options)
    {
        var plan = PlantFileSource.Read(options.PlantFile).Understand().Plan ?? LastGoodPlan.Find(options);
        return plan is not null && TimeZoneInfo.TryFindSystemTimeZoneById(plan.Site.TimeZone, out var zone) ? zone : TimeZoneInfo.Utc;
    }
}
