using System.Net.Security;
using System.Security.Cryptography.X509Certificates;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Ingest.Links;

/// <summary>What is wrong with a broker's certificate, in the order in which it has to be mended.</summary>
internal static class CertificateVerdict
{
    private const X509ChainStatusFlags OnlyTime = X509ChainStatusFlags.NotTimeValid | X509ChainStatusFlags.CtlNotTimeValid;

    /// <summary>The failure and what its sentence needs; <see cref="BrokerFailure.None"/> only where there is no error at all.</summary>
    /// <param name="certificate">What the broker showed; null for nothing.</param>
    /// <param name="chain">Everything that the check of its chain found.</param>
    /// <param name="errors">What the platform objects to.</param>
    /// <param name="now">By our clock.</param>
    public static (BrokerFailure Failure, string Detail) Of(X509Certificate2? certificate, X509ChainStatusFlags chain, SslPolicyErrors errors, DateTimeOffset now)
    {
        if (errors == SslPolicyErrors.None) return (BrokerFailure.None, "");
        if (certificate is null) return (BrokerFailure.CertificateNotTrusted, "");
        // A stranger's certificate is a stranger's, in time or not.
        if ((chain & ~OnlyTime) != 0) return (BrokerFailure.CertificateNotTrusted, Named(certificate.Issuer));
        if (now > certificate.NotAfter) return (BrokerFailure.CertificateExpired, Moment(certificate.NotAfter));
        if (now < certificate.NotBefore) return (BrokerFailure.CertificateNotYetValid, Moment(certificate.NotBefore));
        // Neither is the certificate itself: the authority above it ran out.
        if (chain != 0) return (BrokerFailure.CertificateNotTrusted, Named(certificate.Issuer));
        if (errors.HasFlag(SslPolicyErrors.RemoteCertificateNameMismatch)) return (BrokerFailure.CertificateForOtherName, Names(certificate));
        return (BrokerFailure.CertificateNotTrusted, Named(certificate.Issuer));
    }

    private static string Moment(DateTime local) => BrokerWords.Moment(Instant.From(local));

    // What a stranger wrote into his certificate is shown short and plain.
    private static string Named(string name) => string.Concat(name.Where(c => !char.IsControl(c)).Take(120));

    private static string Names(X509Certificate2 certificate)
    {
        var named = certificate.Extensions.OfType<X509SubjectAlternativeNameExtension>().SelectMany(e => e.EnumerateDnsNames().Concat(e.EnumerateIPAddresses().Select(a => a.ToString())));
        var listed = string.Join(", ", named.Take(5));
        return Named(listed.Length > 0 ? listed : certificate.Subject);
    }
}
