namespace PlantWatch.Server.WhatIf;

/// <summary>What the runs of the what-if say, ids 1200 to 1299.</summary>
internal static partial class WhatIfLog
{
    [LoggerMessage(1200, LogLevel.Information, "What-if {Run}: {Days} days replayed under other limits, {Readings} readings in {Seconds} s")]
    public static partial void Done(ILogger log, Guid run, double days, long readings, double seconds);

    [LoggerMessage(1201, LogLevel.Error, "What-if {Run} failed")]
    public static partial void Failed(ILogger log, Guid run, Exception fault);
}
