using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Boards;

/// <summary>What the watcher of the boards says, ids 3100 to 3199.</summary>
internal static partial class BoardLog
{
    [LoggerMessage(3100, LogLevel.Information, "Board {Board} is taken from {File}")]
    public static partial void Taken(ILogger log, string board, string file);

    [LoggerMessage(3101, LogLevel.Warning, "Board {Board} has {Count} errors; its last good version stays: {Stays}")]
    public static partial void Broken(ILogger log, string board, int count, bool stays);

    [LoggerMessage(3102, LogLevel.Warning, "Board, {Error}")]
    public static partial void Wrong(ILogger log, PlantFileError error);

    [LoggerMessage(3103, LogLevel.Warning, "Boards in {Folder} cannot be read: {Why}; what was taken from there stays")]
    public static partial void Unreadable(ILogger log, string folder, string why);

    [LoggerMessage(3104, LogLevel.Warning, "Boards in {Folder}: the first {Most} by name are read, {Beyond} beyond them are not")]
    public static partial void TooMany(ILogger log, string folder, int most, int beyond);

    [LoggerMessage(3110, LogLevel.Error, "Boards in {Folder}: the file system does not notify; they are looked at every {Seconds} s")]
    public static partial void NoNotifications(ILogger log, Exception error, string folder, double seconds);
}
