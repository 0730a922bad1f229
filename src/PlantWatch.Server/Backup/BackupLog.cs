namespace PlantWatch.Server.Backup;

/// <summary>What the nightly backup says, ids 4200 to 4209.</summary>
internal static partial class BackupLog
{
    [LoggerMessage(4200, LogLevel.Information, "Backup {Folder}: {Bytes} bytes, {Readings} readings, in {Seconds} s; {Removed} older ones were removed")]
    public static partial void Made(ILogger log, string folder, long bytes, long readings, double seconds, int removed);

    [LoggerMessage(4201, LogLevel.Error, "No backup could be made: {Why}; it is tried again in {Minutes} minutes, and the older ones stay")]
    public static partial void Failed(ILogger log, string why, double minutes);

    [LoggerMessage(4202, LogLevel.Warning, "Older backups in {Folder} could not be removed: {Why}")]
    public static partial void NotRemoved(ILogger log, string folder, string why);
}
