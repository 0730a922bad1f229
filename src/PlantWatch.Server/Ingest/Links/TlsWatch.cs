using System.Net.Security;
using System.Security.Cryptography.X509Certificates;
using MQTTnet;

namespace PlantWatch.Server.Ingest.Links;

/// <summary>Checks the broker's certificate in one attempt to connect, and remembers what was seen of TLS, so that a failure can be said in words.</summary>
/// <param name="ours">The certificate that we show when asked; null for none.</param>
/// <param name="time">Our clock.</param>
internal sealed class TlsWatch(X509Certificate2? ours, TimeProvider time)
{
    private volatile bool _seen, _taken, _asked;

    /// <summary>What is wrong with the broker's certificate.</summary>
    public (BrokerFailure Failure, string Detail) Verdict { get; private set; }

    /// <summary>The broker showed a certificate: TLS is spoken there.</summary>
    public bool Seen => _seen;

    /// <summary>The broker's certificate is good.</summary>
    public bool Taken => _taken;

    /// <summary>The broker asked for a certificate of ours.</summary>
    public bool Asked => _asked;

    /// <summary>There is one to show.</summary>
    public bool HasOurs => ours is not null;

    /// <summary>True only when the platform has no objection at all: neither to chain, nor time, nor name.</summary>
    public bool Judge(MqttClientCertificateValidationEventArgs e)
    {
        _seen = true;
        var found = e.Chain?.ChainStatus.Aggregate(X509ChainStatusFlags.NoError, (all, one) => all | one.Status) ?? X509ChainStatusFlags.NoError;
        Verdict = CertificateVerdict.Of(e.Certificate as X509Certificate2, found, e.SslPolicyErrors, time.GetUtcNow());
        return _taken = e.SslPolicyErrors == SslPolicyErrors.None;
    }

    /// <summary>Gives ours when the broker asks. The platform asks once before anything is said, and again, with the broker's certificate, when the broker does; given at once, the second would not come.</summary>
    public X509Certificate Select(MqttClientCertificateSelectionEventArgs e)
    {
        if (e.RemoveCertificate is null && e.AcceptableIssuers is not { Length: > 0 }) return null!;
        _asked = true;
        return ours!;
    }
}
