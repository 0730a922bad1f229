using System.Net;

namespace PlantWatch.Server.Ingest;

/// <summary>The log lines of ingest, 2000 to 2099. An id once given keeps its meaning.</summary>
internal static partial class IngestLog
{
    [LoggerMessage(2000, LogLevel.Information, "Embedded broker listens on {Address}:{Port}, this machine only")]
    public static partial void EmbeddedListening(ILogger logger, IPAddress address, int port);

    [LoggerMessage(2001, LogLevel.Critical, "Embedded broker cannot listen on port {Port}: {Why}. Is another broker running? Set PlantWatch:Broker:Port, or Mode External to use that one")]
    public static partial void EmbeddedCannotListen(ILogger logger, int port, string why);

    [LoggerMessage(2002, LogLevel.Information, "Device {ClientId} connected")]
    public static partial void DeviceConnected(ILogger logger, string clientId);

    [LoggerMessage(2003, LogLevel.Information, "Device {ClientId} disconnected ({How})")]
    public static partial void DeviceDisconnected(ILogger logger, string clientId, string how);

    [LoggerMessage(2004, LogLevel.Warning, "A message of {ClientId} on {Topic} could not be committed: not acknowledged, connection closed, the device will send it again")]
    public static partial void NotCommitted(ILogger logger, Exception? exception, string clientId, string topic);

    [LoggerMessage(2005, LogLevel.Warning, "Device {ClientId} published to {Topic}, which is no topic name: connection closed")]
    public static partial void TopicRefused(ILogger logger, string clientId, string topic);

    [LoggerMessage(2006, LogLevel.Warning, "{Remote} announced a packet of {Bytes} bytes, the most taken is {Most}: connection closed")]
    public static partial void PacketTooLarge(ILogger logger, EndPoint? remote, long bytes, int most);

    [LoggerMessage(2007, LogLevel.Warning, "{Remote} turned away: {Most} connections are open already")]
    public static partial void TooManyConnections(ILogger logger, EndPoint? remote, int most);

    [LoggerMessage(2008, LogLevel.Warning, "A connection could not be accepted")]
    public static partial void AcceptFailed(ILogger logger, Exception exception);

    [LoggerMessage(2010, LogLevel.Warning, "Device {ClientId} published to {Topic}, where the plant itself tells of alarms: nobody is handed it")]
    public static partial void OwnTopicRefused(ILogger logger, string clientId, string topic);

    [LoggerMessage(2009, LogLevel.Information, "Embedded broker stopped")]
    public static partial void EmbeddedStopped(ILogger logger);

    [LoggerMessage(2020, LogLevel.Information, "Connected to broker {Host}:{Port} as {ClientId}, session {Session} {Resumed}")]
    public static partial void Connected(ILogger logger, string host, int port, string clientId, string session, string resumed);

    [LoggerMessage(2021, LogLevel.Warning, "Broker {Host}:{Port} refused the connection: {Code} {Reason}")]
    public static partial void Refused(ILogger logger, string host, int port, string code, string? reason);

    [LoggerMessage(2022, LogLevel.Warning, "Broker {Host}:{Port} cannot be reached: {Why}")]
    public static partial void Unreachable(ILogger logger, string host, int port, string why);

    [LoggerMessage(2023, LogLevel.Warning, "Connection to broker {Host}:{Port} ended: {Why}")]
    public static partial void ConnectionEnded(ILogger logger, string host, int port, string why);

    [LoggerMessage(2024, LogLevel.Information, "Next attempt in {Delay}")]
    public static partial void NextAttempt(ILogger logger, TimeSpan delay);

    [LoggerMessage(2025, LogLevel.Error, "The broker lost session {Session}: what it queued since {Since} is gone")]
    public static partial void SessionLost(ILogger logger, string session, string since);

    [LoggerMessage(2026, LogLevel.Information, "Subscribed to {Count} topic filters, {Dropped} dropped")]
    public static partial void Subscribed(ILogger logger, int count, int dropped);

    [LoggerMessage(2027, LogLevel.Error, "The broker refused the topic filter {Filter}: {Code}")]
    public static partial void FilterRefused(ILogger logger, string filter, string code);

    [LoggerMessage(2028, LogLevel.Warning, "A message on {Topic} could not be committed: not acknowledged, connecting anew, the broker will send it again")]
    public static partial void ExternalNotCommitted(ILogger logger, Exception? exception, string topic);

    [LoggerMessage(2029, LogLevel.Information, "Disconnected from broker {Host}:{Port}; the session stays there and goes on queueing")]
    public static partial void LeftBroker(ILogger logger, string host, int port);

    [LoggerMessage(2030, LogLevel.Error, "The session file {Path} cannot be used: {Why}. A new session is begun")]
    public static partial void SessionFileUnusable(ILogger logger, string path, string why);

    [LoggerMessage(2031, LogLevel.Error, "The external broker client failed and goes on")]
    public static partial void LoopFailed(ILogger logger, Exception exception);

    [LoggerMessage(2032, LogLevel.Warning, "Nobody can be shown what is heard at the broker: {Why}; it is tried again")]
    public static partial void EarDeaf(ILogger logger, string why);

    [LoggerMessage(2033, LogLevel.Warning, "Another client connected to broker {Host}:{Port} as {ClientId} and took over our session: each server needs a client id of its own")]
    public static partial void TakenOver(ILogger logger, string host, int port, string clientId);

    [LoggerMessage(2011, LogLevel.Warning, "{Remote} was turned away as {Who}: {Answer}; further ones are counted at the connection view")]
    public static partial void DeviceTurnedAway(ILogger logger, string remote, string who, string answer);

    [LoggerMessage(2012, LogLevel.Warning, "Device {ClientId} (account {User}) published to {Topic}, where it has no right to: refused; further ones are counted at the connection view")]
    public static partial void PublishOutside(ILogger logger, string clientId, string user, string topic);

    [LoggerMessage(2013, LogLevel.Warning, "{ClientId} connected from {Remote} and took the place of the one that was connected from {Before}")]
    public static partial void DeviceTookOver(ILogger logger, string clientId, EndPoint? remote, EndPoint? before);

    [LoggerMessage(2014, LogLevel.Information, "{Path} has {Count} device accounts")]
    public static partial void DevicesRead(ILogger logger, string path, int count);

    [LoggerMessage(2015, LogLevel.Error, "The device accounts cannot be used, those from before hold: {Why}")]
    public static partial void DevicesUnusable(ILogger logger, string why);

    [LoggerMessage(2016, LogLevel.Information, "Embedded broker listens with TLS on {Address}:{Port} for {Count} device accounts")]
    public static partial void EmbeddedListeningTls(ILogger logger, string address, int port, int count);

    [LoggerMessage(2017, LogLevel.Warning, "TLS with {Remote} was not agreed on: {Why}")]
    public static partial void HandshakeFailed(ILogger logger, EndPoint? remote, string why);
}
