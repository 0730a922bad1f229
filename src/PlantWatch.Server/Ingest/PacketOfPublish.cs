using MQTTnet.Packets;
using MQTTnet.Protocol;
using MQTTnet.Server;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Ingest;

/// <summary>
/// Finds the packet that a publish came in. The library shows the publish without its packet identifier; the packet itself passes by just before,
/// on the same connection, and is kept in the session's items in between.
/// </summary>
internal static class PacketOfPublish
{
    private static readonly object Key = new();

    /// <summary>Keeps a PUBLISH for the event that follows.</summary>
    public static Task NoteAsync(InterceptingPacketEventArgs e)
    {
        if (e.Packet is MqttPublishPacket publish) e.SessionItems[Key] = publish;
        return Task.CompletedTask;
    }

    /// <summary>The message with what identifies its packet. Packet id 0 where nothing can be told: QoS 0, a will, a device without a name of its own.</summary>
    /// <remarks>
    /// Never marked as retained: RETAIN on a publish asks the broker to remember the value for later subscribers. The value itself is new,
    /// and we are the broker it is new to.
    /// </remarks>
    public static IncomingMessage MessageOf(InterceptingPublishEventArgs e)
    {
        var packet = e.SessionItems[Key] as MqttPublishPacket;
        e.SessionItems.Remove(Key);
        var identified = packet is not null && IsOf(packet, e) && packet.QualityOfServiceLevel != MqttQualityOfServiceLevel.AtMostOnce && !DeviceAdapter.IsNameless(e.ClientId);
        return new(
            e.ApplicationMessage.Topic ?? "", IncomingPayload.Copy(e.ApplicationMessage.Payload), Retained: false,
            e.ClientId, identified ? packet!.PacketIdentifier : 0, identified && packet!.Dup);
    }

    // Two connections of one client id share a session while one takes over from the other; the same bytes in memory are the same packet.
    private static bool IsOf(MqttPublishPacket packet, InterceptingPublishEventArgs e) =>
        packet.Topic == e.ApplicationMessage.Topic && packet.Payload.Start.Equals(e.ApplicationMessage.Payload.Start);
}
