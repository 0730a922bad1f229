using System.Globalization;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Series;

/// <summary>The state of the feed for whoever runs the server.</summary>
internal static class FeedWords
{
    /// <summary>Why the server did not take lines, and what to do about it.</summary>
    public static string Say(WriteAnswer answer, InfluxPlace place) => answer.Taking switch
    {
        Taking.NotAllowed => $"InfluxDB refuses the token ({answer.Words}): set PlantWatch__Influx__Token or TokenFile",
        Taking.NotThere => $"InfluxDB has no database or bucket \"{place.Database}\" ({answer.Words}): make it",
        _ => $"InfluxDB cannot be written ({answer.Words})",
    };

    /// <summary>What wants attention; null when nothing does.</summary>
    public static string? WhatIsWrong(FeedView feed)
    {
        if (!feed.IsOn) return null;
        if (feed.Trouble.Length > 0) return $"{feed.Trouble}; since {feed.TroubleSince}, {HowFar(feed)}";
        if (feed.Differing > 0) return $"the nightly comparison found {Number(feed.Differing)} days of series that InfluxDB holds otherwise (log 4113); they are written again; {HowFar(feed)}";
        return feed.Owed.Parked > 0 ? $"InfluxDB refused {Number(feed.Owed.Parked)} lines for good{(feed.LastRefusal.Length > 0 ? $" ({feed.LastRefusal})" : "")}: free the way, then rebuild-series; {HowFar(feed)}" : null;
    }

    /// <summary>How far it is.</summary>
    public static string HowFar(FeedView feed) => feed.IsOn ? OwedOf(feed) + TooOldOf(feed) : "not set up";

    private static string OwedOf(FeedView feed) => feed.Owed.Readings == 0 ? "nothing is owed" : $"{Number(feed.Owed.Readings)} readings are owed, the oldest for {Number((long)feed.Lag.TotalSeconds)} s";

    private static string TooOldOf(FeedView feed) => feed.Owed.TooOld == 0 ? "" : $"; {Number(feed.Owed.TooOld)} lines were older than InfluxDB keeps";

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
