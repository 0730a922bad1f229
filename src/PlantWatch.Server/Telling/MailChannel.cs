using MailKit.Net.Smtp;
using MailKit.Security;
using PlantWatch.Core.Plans.Telling;

namespace PlantWatch.Server.Telling;

/// <summary>Tells a person by a letter, handed in at the plant's mail server. Taken when the server has said that it will see to it.</summary>
internal sealed class MailChannel(ChannelPlan plan, ChannelSecrets secrets, LetterWriter letters) : IChannel
{
    private readonly MailPlan _mail = plan.Mail ?? throw new ArgumentException("a channel of e-mail has a mail server", nameof(plan));

    public async Task<Delivery> SendAsync(Outgoing outgoing, CancellationToken cancellation)
    {
        if (outgoing.Person is not { Email: { } address } person) return Delivery.Impossible("the plant file has no e-mail address for whom it was written to");
        if (_mail.User is not null && secrets.Find(plan) is null) return Delivery.Failed("no password is set for this channel");
        using var letter = letters.Write(outgoing, person.Name, address, _mail.Sender);
        using var client = new SmtpClient { CheckCertificateRevocation = false };
        await client.ConnectAsync(_mail.Host, _mail.Port, Security(_mail.Security), cancellation);
        if (_mail.User is { } user) await client.AuthenticateAsync(user, secrets.Find(plan)!, cancellation);
        await client.SendAsync(letter, cancellation);
        // It is handed in: what goes wrong with the farewell must not have it sent again.
        await client.DisconnectAsync(true, CancellationToken.None).WaitAsync(TimeSpan.FromSeconds(2), CancellationToken.None).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        return Delivery.Done;
    }

    private static SecureSocketOptions Security(MailSecurity security) => security switch
    {
        MailSecurity.Tls => SecureSocketOptions.SslOnConnect,
        MailSecurity.Plain => SecureSocketOptions.None,
        _ => SecureSocketOptions.StartTls,
    };
}
