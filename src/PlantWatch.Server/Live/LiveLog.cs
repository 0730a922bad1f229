namespace PlantWatch.Server.Live;

/// <summary>What the live side says, ids 1100 to 1199.</summary>
internal static partial class LiveLog
{
    [LoggerMessage(1100, LogLevel.Error, "A beat of the live connection failed; the next one goes on")]
    public static partial void BeatFailed(ILogger log, Exception fault);

    [LoggerMessage(1101, LogLevel.Warning, "Message {Method} was not taken by every browser in time")]
    public static partial void SendTooSlow(ILogger log, string method);

    [LoggerMessage(1102, LogLevel.Error, "The browsers could not be told that boards changed")]
    public static partial void BoardsNotTold(ILogger log, Exception fault);
}
