using System.Net.Sockets;
using MQTTnet;

namespace PlantWatch.Server.Ingest.Links;

/// <summary>Finds the failure in what the platform says of an attempt that did not lead to a connection.</summary>
internal static class FailureOf
{
    /// <summary>The failure of an answer of the broker's.</summary>
    public static (BrokerFailure Failure, string Detail) Answer(MqttClientConnectResult answer) => answer.ResultCode switch
    {
        MqttClientConnectResultCode.Success => (BrokerFailure.None, ""),
        MqttClientConnectResultCode.BadUserNameOrPassword or MqttClientConnectResultCode.NotAuthorized => (BrokerFailure.AccountRefused, Coded(answer.ResultCode)),
        _ => (BrokerFailure.ConnectionRefused, Coded(answer.ResultCode)),
    };

    /// <summary>The failure of an attempt that got no answer.</summary>
    /// <param name="exception">What ended it.</param>
    /// <param name="tls">What was seen of TLS; null without it.</param>
    /// <param name="late">Our patience was at its end: the library gives other reasons for what it broke off itself.</param>
    public static (BrokerFailure Failure, string Detail) Attempt(Exception exception, TlsWatch? tls, bool late)
    {
        var all = Chain(exception).ToList();
        var said = all[^1].Message;
        if (all.OfType<TlsFilesException>().FirstOrDefault() is { } files) return (BrokerFailure.OwnFilesUnusable, files.Message);
        if (tls is { Verdict.Failure: not BrokerFailure.None }) return tls.Verdict;
        if (all.OfType<SocketException>().Select(Socket).FirstOrDefault(f => f != BrokerFailure.None) is var failure and not BrokerFailure.None) return (failure, said);
        if (late || all.Any(e => e is OperationCanceledException or TimeoutException)) return (BrokerFailure.NoAnswer, said);
        if (tls is null) return (BrokerFailure.ClosedUnanswered, said);
        // With version 1.3 the broker's objection to our certificate comes after the handshake, as the end of the connection.
        if (tls is { Taken: true, Asked: true }) return (tls.HasOurs ? BrokerFailure.ClientCertificateRefused : BrokerFailure.ClientCertificateWanted, said);
        return (tls.Seen ? BrokerFailure.TlsFailed : BrokerFailure.NoTlsThere, said);
    }

    private static BrokerFailure Socket(SocketException e) => e.SocketErrorCode switch
    {
        SocketError.HostNotFound or SocketError.TryAgain or SocketError.NoData or SocketError.NoRecovery => BrokerFailure.NameNotFound,
        SocketError.ConnectionRefused => BrokerFailure.NothingListens,
        SocketError.TimedOut or SocketError.HostUnreachable or SocketError.NetworkUnreachable or SocketError.HostDown or SocketError.NetworkDown => BrokerFailure.NoAnswer,
        _ => BrokerFailure.None,
    };

    private static string Coded(MqttClientConnectResultCode code) => $"0x{(int)code:X2} {code}";

    private static IEnumerable<Exception> Chain(Exception? exception)
    {
        for (; exception is not null; exception = exception.InnerException) yield return exception;
    }
}
