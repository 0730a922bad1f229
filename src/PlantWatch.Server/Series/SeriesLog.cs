namespace PlantWatch.Server.Series;

/// <summary>What the feed of InfluxDB says, ids 4100 to 4199.</summary>
internal static partial class SeriesLog
{
    [LoggerMessage(4100, LogLevel.Information, "Series are fed to InfluxDB at {Url}, {Database}; {Owed} readings are owed")]
    public static partial void Begun(ILogger log, string url, string database, long owed);

    [LoggerMessage(4101, LogLevel.Information, "InfluxDB takes lines again, after {Attempts} attempts")]
    public static partial void Recovered(ILogger log, int attempts);

    [LoggerMessage(4102, LogLevel.Information, "Series {Former} is written to InfluxDB as {Circuit}/{Probe} from now on; what was written before stays there under the old name, and rebuild-series writes it under the new one too")]
    public static partial void Renamed(ILogger log, string former, string circuit, string probe);

    [LoggerMessage(4104, LogLevel.Information, "InfluxDB at {Url}, {Database} is another one than was fed before: everything is written to it, from the first reading on")]
    public static partial void OtherServer(ILogger log, string url, string database);

    [LoggerMessage(4105, LogLevel.Information, "Readings of {Circuit}/{Probe}, up to {Last} at least, are older than InfluxDB keeps: they are counted and not written, without another line here")]
    public static partial void TooOld(ILogger log, string circuit, string probe, string last);

    [LoggerMessage(4110, LogLevel.Warning, "{Trouble}; tried again in {Delay}. The record keeps what is owed")]
    public static partial void NotTaken(ILogger log, string trouble, TimeSpan delay);

    [LoggerMessage(4111, LogLevel.Error, "InfluxDB refuses {Lines} lines of {Circuit}/{Probe} from {First} to {Last} for good: {Words}. They are parked, later ones of this series and reason without another line here; where the way is free, rebuild-series writes them")]
    public static partial void Parked(ILogger log, long lines, string circuit, string probe, string first, string last, string words);

    [LoggerMessage(4103, LogLevel.Information, "The counts of {Compared} days of series in the last {Days} days were compared with InfluxDB: {Differ} differ")]
    public static partial void Compared(ILogger log, int compared, int days, int differ);

    [LoggerMessage(4113, LogLevel.Warning, "InfluxDB holds another number of {Circuit}/{Probe} on the day from {From}: the record has {Record}, InfluxDB {Copy}. The day is written again; what InfluxDB has too much stays there")]
    public static partial void Differs(ILogger log, string circuit, string probe, string from, long record, long copy);

    [LoggerMessage(4114, LogLevel.Warning, "The nightly comparison with InfluxDB could not be made and is tried again in an hour: {Trouble}")]
    public static partial void NotCompared(ILogger log, string trouble);

    [LoggerMessage(4112, LogLevel.Error, "The feed of InfluxDB failed on our side; it is tried again in {Delay}")]
    public static partial void Failed(ILogger log, TimeSpan delay, Exception fault);
}
