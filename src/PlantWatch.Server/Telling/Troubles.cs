using System.Net.Sockets;
using MailKit.Net.Smtp;
using MailKit.Security;

namespace PlantWatch.Server.Telling;

/// <summary>What a peer did to us, in words for the page: whose fault it is, and in the peer's own words where it had any.</summary>
internal static class Troubles
{
    private const int Longest = 300;

    public static string Say(Exception fault)
    {
        var words = fault switch
        {
            OperationCanceledException or TimeoutException => "no answer in time",
            SmtpCommandException refused => $"the mail server refuses: {refused.Message}",
            AuthenticationException denied => $"the mail server does not let us in: {denied.Message}",
            SslHandshakeException tls => $"no trusted connection: {tls.GetBaseException().Message}",
            _ when fault.GetBaseException() is SocketException socket => $"cannot be reached: {socket.Message}",
            _ => fault.GetBaseException().Message,
        };
        var line = words.ReplaceLineEndings(" ").Trim();
        return line.Length <= Longest ? line : string.Concat(line.AsSpan(0, Longest), "\u2026");
    }
}
