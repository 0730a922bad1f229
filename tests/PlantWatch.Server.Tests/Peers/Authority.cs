using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace PlantWatch.Server.Tests.Peers;

/// <summary>A certificate authority of a test's own, and what it signs, as PEM files in a folder.</summary>
internal sealed class Authority : IDisposable
{
    private readonly X509Certificate2 _certificate;
    private readonly string _folder;

    public Authority(string folder, string name = "Bramble Street Baths")
    {
        _folder = folder;
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={name}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: true, false, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign, critical: true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, false));
        _certificate = request.CreateSelfSigned(DateTimeOffset.UtcNow.AddYears(-3), DateTimeOffset.UtcNow.AddYears(3));
        File = Write($"{name.Replace(' ', '-')}.crt", _certificate.ExportCertificatePem());
    }

    /// <summary>The authority's own certificate.</summary>
    public string File { get; }

    /// <summary>Signs a certificate: for a server of these names, or for a client where there are none.</summary>
    public (string Certificate, string Key) Issue(string subject, IReadOnlyList<string> names, DateTimeOffset? from = null, DateTimeOffset? to = null)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={subject}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid(names.Count > 0 ? "1.3.6.1.5.5.7.3.1" : "1.3.6.1.5.5.7.3.2")], critical: false));
        if (names.Count > 0) request.CertificateExtensions.Add(Named(names));
        using var signed = request.Create(_certificate, from ?? DateTimeOffset.UtcNow.AddDays(-1), to ?? DateTimeOffset.UtcNow.AddYears(1), RandomNumberGenerator.GetBytes(12));
        return (Write($"{subject}.crt", signed.ExportCertificatePem()), Write($"{subject}.key", key.ExportPkcs8PrivateKeyPem()));
    }

    public void Dispose() => _certificate.Dispose();

    private static X509Extension Named(IEnumerable<string> names)
    {
        var builder = new SubjectAlternativeNameBuilder();
        foreach (var name in names)
            if (IPAddress.TryParse(name, out var address)) builder.AddIpAddress(address);
            else builder.AddDnsName(name);
        return builder.Build();
    }

    private string Write(string name, string pem)
    {
        var path = Path.Combine(_folder, name);
        System.IO.File.WriteAllText(path, pem);
        return path;
    }
}
