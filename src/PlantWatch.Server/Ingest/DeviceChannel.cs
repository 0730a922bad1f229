using System.Buffers;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using MQTTnet.Channel;
using MQTTnet.Exceptions;

namespace PlantWatch.Server.Ingest;

/// <summary>One device's connection: buffered reading, and no packet above the bound.</summary>
internal sealed class DeviceChannel(Stream stream, Socket socket, bool secure, int mostPacketBytes, ILogger logger) : IMqttChannel
{
    private readonly byte[] _ahead = new byte[4096];
    private PacketSizeGuard _guard = new(mostPacketBytes);
    private int _aheadStart, _aheadEnd;

    public X509Certificate2? ClientCertificate => null;

    public bool IsSecureConnection => secure;

    public EndPoint? LocalEndPoint { get; } = socket.LocalEndPoint;

    public EndPoint? RemoteEndPoint { get; } = socket.RemoteEndPoint;

    public Task ConnectAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task DisconnectAsync(CancellationToken cancellationToken)
    {
        Dispose();
        return Task.CompletedTask;
    }

    /// <summary>Gives what is there, at least a byte; 0 when the device has closed. The library asks for headers byte by byte, hence the buffer.</summary>
    public async Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken)
    {
        try
        {
            if (_aheadStart == _aheadEnd)
            {
                if (count >= _ahead.Length) return Watched(buffer.AsSpan(offset, await stream.ReadAsync(buffer.AsMemory(offset, count), cancellationToken)));
                (_aheadStart, _aheadEnd) = (0, await stream.ReadAsync(_ahead, cancellationToken));
            }
        }
        catch (ObjectDisposedException)
        {
            return 0;
        }
        var part = Math.Min(count, _aheadEnd - _aheadStart);
        _ahead.AsSpan(_aheadStart, part).CopyTo(buffer.AsSpan(offset));
        _aheadStart += part;
        return Watched(buffer.AsSpan(offset, part));
    }

    public async Task WriteAsync(ReadOnlySequence<byte> buffer, bool isEndOfPacket, CancellationToken cancellationToken)
    {
        foreach (var part in buffer) await stream.WriteAsync(part, cancellationToken);
    }

    public void Dispose() => stream.Dispose();

    private int Watched(ReadOnlySpan<byte> bytes)
    {
        try
        {
            _guard.Watch(bytes);
        }
        catch (MqttProtocolViolationException)
        {
            IngestLog.PacketTooLarge(logger, RemoteEndPoint, _guard.Announced, mostPacketBytes);
            throw;
        }
        return bytes.Length;
    }
}
