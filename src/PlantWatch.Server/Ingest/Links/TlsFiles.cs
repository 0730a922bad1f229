using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace PlantWatch.Server.Ingest.Links;

/// <summary>A file of ours for TLS cannot be used; the message says which and why.</summary>
internal sealed class TlsFilesException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>Reads the PEM files that the settings name. They are read at every attempt: a renewed certificate needs no restart.</summary>
internal static class TlsFiles
{
    /// <summary>The authorities that are trusted; null where none is named and those of the machine hold.</summary>
    public static X509Certificate2Collection? Authorities(BrokerTlsOptions tls)
    {
        if (string.IsNullOrEmpty(tls.CaFile)) return null;
        var authorities = new X509Certificate2Collection();
        Read(tls.CaFile, () => authorities.ImportFromPemFile(tls.CaFile));
        return authorities.Count > 0 ? authorities : throw new TlsFilesException($"{tls.CaFile}: no certificate in it");
    }

    /// <summary>Our certificate with its key; null where none is named.</summary>
    public static X509Certificate2? Own(BrokerTlsOptions tls)
    {
        if (string.IsNullOrEmpty(tls.CertificateFile) && string.IsNullOrEmpty(tls.KeyFile)) return null;
        if (string.IsNullOrEmpty(tls.CertificateFile) || string.IsNullOrEmpty(tls.KeyFile)) throw new TlsFilesException("CertificateFile and KeyFile belong together; one of them is not set");
        X509Certificate2? own = null;
        Read($"{tls.CertificateFile}, {tls.KeyFile}", () => own = X509Certificate2.CreateFromPemFile(tls.CertificateFile, tls.KeyFile));
        return own;
    }

    private static void Read(string files, Action read)
    {
        try
        {
            read();
        }
        catch (Exception e) when (e is CryptographicException or IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new TlsFilesException($"{files}: {e.Message}", e);
        }
    }
}
