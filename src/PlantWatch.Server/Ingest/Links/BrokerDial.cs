using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;
using MQTTnet;
using MQTTnet.Formatter;

namespace PlantWatch.Server.Ingest.Links;

/// <summary>How an external broker is called, the same for every connection of ours: address, account, TLS.</summary>
/// <param name="Options">To be completed by who connects.</param>
/// <param name="Tls">What TLS says of this one attempt; null without TLS.</param>
internal sealed record BrokerDial(MqttClientOptionsBuilder Options, TlsWatch? Tls)
{
    /// <summary>One attempt.</summary>
    /// <exception cref="TlsFilesException">A file of ours cannot be used.</exception>
    public static BrokerDial To(BrokerOptions broker, TimeProvider time)
    {
        var builder = new MqttClientOptionsBuilder().WithTcpServer(broker.Host, broker.Port).WithProtocolVersion(MqttProtocolVersion.V500);
        if (!string.IsNullOrEmpty(broker.UserName)) builder.WithCredentials(broker.UserName, broker.Password);
        return new(builder, broker.Tls.On ? Encrypt(builder, broker, time) : null);
    }

    private static TlsWatch Encrypt(MqttClientOptionsBuilder builder, BrokerOptions broker, TimeProvider time)
    {
        var (authorities, own) = (TlsFiles.Authorities(broker.Tls), TlsFiles.Own(broker.Tls));
        var watch = new TlsWatch(own, time);
        builder.WithTlsOptions(tls =>
        {
            tls.UseTls().WithSslProtocols(SslProtocols.Tls12 | SslProtocols.Tls13).WithTargetHost(NameOf(broker))
                // A plant's own authority publishes no list of what it revoked, and the plant's network need not reach any.
                .WithRevocationMode(X509RevocationMode.NoCheck)
                .WithCertificateValidationHandler(watch.Judge).WithCertificateSelectionHandler(watch.Select);
            if (authorities is not null) tls.WithTrustChain(authorities);
            if (own is not null) tls.WithClientCertificates(new X509Certificate2Collection(own));
        });
        return watch;
    }

    private static string NameOf(BrokerOptions broker) => string.IsNullOrEmpty(broker.Tls.ServerName) ? broker.Host : broker.Tls.ServerName;
}
