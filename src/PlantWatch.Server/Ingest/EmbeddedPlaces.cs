using System.Net;
using System.Net.Security;
using System.Security.Cryptography.X509Certificates;
using PlantWatch.Server.Ingest.Devices;
using PlantWatch.Server.Ingest.Links;

namespace PlantWatch.Server.Ingest;

/// <summary>The embedded broker was told to listen where strangers could come in.</summary>
internal sealed class BrokerNotSafeException(string message) : Exception(message);

/// <summary>Where the embedded broker listens.</summary>
/// <param name="Address">Null for this machine, by whichever version of the internet protocol it has.</param>
/// <param name="Port">0 lets the system choose.</param>
/// <param name="Certificate">With TLS; null for without.</param>
internal sealed record ListenAt(IPAddress? Address, int Port, SslStreamCertificateContext? Certificate);

/// <summary>Decides where the embedded broker listens: on this machine always; with TLS and accounts wherever it is told, and otherwise nowhere else.</summary>
internal static class EmbeddedPlaces
{
    /// <exception cref="BrokerNotSafeException">The settings would let strangers in.</exception>
    public static IReadOnlyList<ListenAt> Of(BrokerOptions options, DeviceAccounts? accounts)
    {
        var here = new ListenAt(null, options.Port, null);
        if (!IPAddress.TryParse(options.Listen, out var address)) throw new BrokerNotSafeException($"PlantWatch:Broker:Listen is no address in numbers: {options.Listen}");
        if (!options.Tls.On)
            return IPAddress.IsLoopback(address) ? [here] : throw new BrokerNotSafeException(
                $"the embedded broker listens at {address} only with TLS. Set PlantWatch:Broker:Tls:On, CertificateFile and KeyFile, or leave PlantWatch:Broker:Listen out.");
        if (accounts is not { Count: > 0 })
            throw new BrokerNotSafeException("the embedded broker speaks TLS only with devices that have accounts. Make them with add-device, and name the file in PlantWatch:Broker:Devices.");
        return [here, new(address, options.TlsPort, Shown(options.Tls))];
    }

    private static SslStreamCertificateContext Shown(BrokerTlsOptions tls)
    {
        var own = TlsFiles.Own(tls) ?? throw new BrokerNotSafeException("the embedded broker needs a certificate for TLS: PlantWatch:Broker:Tls:CertificateFile and KeyFile.");
        var between = new X509Certificate2Collection();
        between.ImportFromPemFile(tls.CertificateFile!);
        return SslStreamCertificateContext.Create(own, between, offline: true);
    }
}
