namespace PlantWatch.Server.Paper;

/// <summary>What printing says, ids 7000 to 7099.</summary>
internal static partial class PaperLog
{
    [LoggerMessage(7000, LogLevel.Information, "{By} printed sheet {Kind} of {Pools}, {First} to {Last}, as {Format}; the record's digest is {Digest}")]
    public static partial void Printed(ILogger log, string by, string kind, string pools, DateOnly first, DateOnly last, string format, string digest);
}
