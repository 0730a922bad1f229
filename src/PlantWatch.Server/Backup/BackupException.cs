namespace PlantWatch.Server.Backup;

/// <summary>A backup could not be made, or is not what it should be, in words for whoever looks after it.</summary>
internal sealed class BackupException(string words) : Exception(words);
