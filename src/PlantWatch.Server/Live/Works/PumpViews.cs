using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Live;

/// <summary>A dosing pump as the page shows it: what it last said of itself and of its tank.</summary>
internal static class PumpViews
{
    /// <summary>Pumps speak when something changes and once in a while: an hour without a word is a silence (common practice), and the first gap worth drawing.</summary>
    public static readonly TimeSpan SilentAfter = TimeSpan.FromHours(1);

    public static PumpView Of(PumpPlan plan, PumpState pump, Instant now) => new(
        plan.Id, pump.Activity, pump.Since.OrNull(), pump.HeardAt.OrNull(),
        pump.Tank.Quality == Quality.NotReceived ? null : pump.Tank.Raw, pump.Tank.MeasuredAt.OrNull(),
        pump.HeardAt.IsSet && now - pump.HeardAt > SilentAfter);
}
