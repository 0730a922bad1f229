using System.Net;
using System.Security.Cryptography.X509Certificates;
using MQTTnet.Adapter;
using MQTTnet.Formatter;
using MQTTnet.Packets;

namespace PlantWatch.Server.Ingest;

/// <summary>A device's connection that has a name even where the device gave none.</summary>
/// <remarks>
/// MQTT 3.1.1 lets a client send an empty id (section 3.1.3.1), and command-line publishers do; the library only names clients of
/// MQTT 5. A name given here means nothing after the connection, so packets are not identified by it.
/// </remarks>
internal sealed class DeviceAdapter(IMqttChannelAdapter inner) : IMqttChannelAdapter
{
    private const string NamelessPrefix = "nameless-";
    private bool _connected;

    /// <summary>A name for a device that gave none.</summary>
    public static string NewName() => NamelessPrefix + Guid.NewGuid().ToString("N");

    /// <summary>True for a name that was given here.</summary>
    public static bool IsNameless(string clientId) => clientId.StartsWith(NamelessPrefix, StringComparison.Ordinal);

    public long BytesReceived => inner.BytesReceived;

    public long BytesSent => inner.BytesSent;

    public X509Certificate2? ClientCertificate => inner.ClientCertificate;

    public EndPoint? RemoteEndPoint => inner.RemoteEndPoint;

    public EndPoint? LocalEndPoint => inner.LocalEndPoint;

    public bool IsSecureConnection => inner.IsSecureConnection;

    public MqttPacketFormatterAdapter PacketFormatterAdapter => inner.PacketFormatterAdapter;

    public Task ConnectAsync(CancellationToken cancellationToken) => inner.ConnectAsync(cancellationToken);

    public Task DisconnectAsync(CancellationToken cancellationToken) => inner.DisconnectAsync(cancellationToken);

    public Task<MqttPacket?> ReceivePacketAsync(CancellationToken cancellationToken) =>
        _connected ? inner.ReceivePacketAsync(cancellationToken)! : ReceiveConnectAsync(cancellationToken);

    public void ResetStatistics() => inner.ResetStatistics();

    public Task SendPacketAsync(MqttPacket packet, CancellationToken cancellationToken) => inner.SendPacketAsync(packet, cancellationToken);

    public void Dispose() => inner.Dispose();

    private async Task<MqttPacket?> ReceiveConnectAsync(CancellationToken cancellationToken)
    {
        var packet = await inner.ReceivePacketAsync(cancellationToken);
        _connected = true;
        // Only a session that ends with the connection may be nameless (3.1.1, MQTT-3.1.3-7); the library refuses the rest.
        if (packet is MqttConnectPacket { CleanSession: true } connect && string.IsNullOrEmpty(connect.ClientId)
            && PacketFormatterAdapter.ProtocolVersion != MqttProtocolVersion.V500)
            connect.ClientId = NewName();
        return packet;
    }
}
