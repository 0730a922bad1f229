namespace PlantWatch.Server.Telling;

/// <summary>What telling people says, ids 6000 to 6099.</summary>
internal static partial class TellingLog
{
    [LoggerMessage(6000, LogLevel.Information, "Written down to be sent about circuit {Circuit}: {Count}")]
    public static partial void Queued(ILogger log, int count, string circuit);

    [LoggerMessage(6001, LogLevel.Information, "Message {Notice} was delivered by {Channel} at attempt {Attempt}")]
    public static partial void Delivered(ILogger log, Guid notice, string channel, int attempt);

    [LoggerMessage(6010, LogLevel.Warning, "Message {Notice} was not delivered by {Channel} at attempt {Attempt}: {Trouble}")]
    public static partial void NotDelivered(ILogger log, Guid notice, string channel, int attempt, string trouble);

    [LoggerMessage(6011, LogLevel.Error, "Message {Notice} by {Channel} is given up after {Attempt} attempts: {Trouble}")]
    public static partial void GivenUp(ILogger log, Guid notice, string channel, int attempt, string trouble);

    [LoggerMessage(6012, LogLevel.Warning, "What stands could not be said on the alarm topics: {Trouble}")]
    public static partial void StateNotSaid(ILogger log, string trouble);

    [LoggerMessage(6013, LogLevel.Warning, "The strip for message {Notice} could not be drawn; it goes without")]
    public static partial void NoPicture(ILogger log, Guid notice, Exception fault);

    [LoggerMessage(6014, LogLevel.Error, "Sending by {Channel} failed on our side; it rests for a minute")]
    public static partial void SendFailed(ILogger log, string channel, Exception fault);

    [LoggerMessage(6015, LogLevel.Warning, "Sheet {Notice} for {Channel} is dropped: {Trouble}")]
    public static partial void SheetDropped(ILogger log, Guid notice, string channel, string trouble);

    [LoggerMessage(6016, LogLevel.Error, "Sheet {Notice} could not be printed; it is tried again later")]
    public static partial void NotPrinted(ILogger log, Guid notice, Exception fault);

    [LoggerMessage(6020, LogLevel.Error, "A look at what is to be told failed; the next one goes on")]
    public static partial void LookFailed(ILogger log, Exception fault);
}
