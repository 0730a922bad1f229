namespace PlantWatch.Server.PlantFile;

/// <summary>What the watcher of the plant file says, ids 3000 to 3099.</summary>
internal static partial class PlantFileLog
{
    [LoggerMessage(3000, LogLevel.Information, "Plant file {Path} is in force, version {Version}")]
    public static partial void InForce(ILogger log, string path, string version);

    [LoggerMessage(3001, LogLevel.Warning, "Plant file {Path} has {Count} errors: the one in force stays")]
    public static partial void OldStays(ILogger log, string path, int count);

    [LoggerMessage(3002, LogLevel.Error, "Plant file {Path} has {Count} errors and none is in force: readings are kept as unclaimed")]
    public static partial void NoneInForce(ILogger log, string path, int count);

    [LoggerMessage(3003, LogLevel.Warning, "Plant file, {Error}")]
    public static partial void Wrong(ILogger log, PlantFileError error);

    [LoggerMessage(3010, LogLevel.Error, "Plant file {Path} is good but could not be brought into force; it is tried again")]
    public static partial void NotTaken(ILogger log, Exception error, string path);

    [LoggerMessage(3011, LogLevel.Warning, "Plant file {Path}: the file system does not notify; the content is looked at every {Seconds} s")]
    public static partial void NoNotifications(ILogger log, Exception error, string path, double seconds);

    [LoggerMessage(3012, LogLevel.Error, "A listener to changes of the plant file failed; the others were told")]
    public static partial void ListenerFailed(ILogger log, Exception error);

    [LoggerMessage(3013, LogLevel.Error, "A look at watched files failed; looking goes on")]
    public static partial void LookFailed(ILogger log, Exception error);

    [LoggerMessage(3004, LogLevel.Warning, "There is no plant file {Path} yet: the page #/start makes one")]
    public static partial void NoneYet(ILogger log, string path);

    [LoggerMessage(3005, LogLevel.Information, "Plant file {Path} was saved on the page by {By}")]
    public static partial void Saved(ILogger log, string path, string by);

    [LoggerMessage(3014, LogLevel.Error, "Plant file {Path} could not be saved from the page")]
    public static partial void NotSaved(ILogger log, Exception error, string path);
}
