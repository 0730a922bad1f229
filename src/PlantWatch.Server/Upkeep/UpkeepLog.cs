namespace PlantWatch.Server.Upkeep;

/// <summary>What the upkeep of the record says, ids 4300 to 4309.</summary>
internal static partial class UpkeepLog
{
    [LoggerMessage(4300, LogLevel.Information, "Retention: {Readings} single readings and {Minutes} minutes were let go")]
    public static partial void LetGo(ILogger log, long readings, long minutes);

    [LoggerMessage(4301, LogLevel.Error, "Retention: {Why}")]
    public static partial void Kept(ILogger log, string why);

    [LoggerMessage(4302, LogLevel.Warning, "Retention failed and is tried again: {Why}")]
    public static partial void Failed(ILogger log, string why);

    [LoggerMessage(4303, LogLevel.Warning, "Retention: {Name} is {Asked} in the configuration, held at the least of {Held}")]
    public static partial void Raised(ILogger log, string name, int asked, int held);
}
