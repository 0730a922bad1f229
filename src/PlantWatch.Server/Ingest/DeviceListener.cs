using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using MQTTnet.Adapter;
using MQTTnet.Diagnostics.Logger;
using MQTTnet.Formatter;
using MQTTnet.Server;

namespace PlantWatch.Server.Ingest;

/// <summary>Accepts devices at one place, so many and no more, with TLS or without.</summary>
internal sealed class DeviceListener(ListenAt at, int mostConnections, int mostPacketBytes, ILogger logger) : IMqttServerAdapter
{
    private static readonly TimeSpan HandshakePatience = TimeSpan.FromSeconds(15);

    private readonly CancellationTokenSource _stopping = new();
    private readonly List<Socket> _sockets = [];
    private int _open;

    /// <summary>The port, chosen by the system where 0 was asked for. Valid once started.</summary>
    public int Port { get; private set; } = at.Port;

    /// <summary>Connections now.</summary>
    public int Open => Volatile.Read(ref _open);

    public Func<IMqttChannelAdapter, Task>? ClientHandler { get; set; }

    public Task StartAsync(MqttServerOptions options, IMqttNetLogger mqttLogger)
    {
        Listen(at.Address ?? IPAddress.Loopback, options, mqttLogger);
        if (at.Address is not null) return Task.CompletedTask;
        // A name such as localhost may lead to either; without IPv6 on the machine the first is enough.
        try
        {
            Listen(IPAddress.IPv6Loopback, options, mqttLogger);
        }
        catch (SocketException)
        {
        }
        return Task.CompletedTask;
    }

    public Task StopAsync()
    {
        Dispose();
        return Task.CompletedTask;
    }

    public void Dispose()
    {
        if (_stopping.IsCancellationRequested) return;
        _stopping.Cancel();
        foreach (var socket in _sockets) socket.Dispose();
    }

    private void Listen(IPAddress address, MqttServerOptions options, IMqttNetLogger mqttLogger)
    {
        var socket = new Socket(address.AddressFamily, SocketType.Stream, ProtocolType.Tcp);
        try
        {
            if (address.Equals(IPAddress.IPv6Any)) socket.DualMode = true;
            socket.Bind(new IPEndPoint(address, Port));
            socket.Listen(512);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
        Port = ((IPEndPoint)socket.LocalEndPoint!).Port;
        _sockets.Add(socket);
        _ = AcceptAsync(socket, options, mqttLogger);
    }

    private async Task AcceptAsync(Socket listener, MqttServerOptions options, IMqttNetLogger mqttLogger)
    {
        while (!_stopping.IsCancellationRequested)
        {
            try
            {
                _ = ServeAsync(await listener.AcceptAsync(_stopping.Token), options, mqttLogger);
            }
            catch (Exception) when (_stopping.IsCancellationRequested)
            {
                return;
            }
            catch (SocketException e)
            {
                // Out of file handles, most of all: take a breath instead of spinning.
                IngestLog.AcceptFailed(logger, e);
                await Task.Delay(200, CancellationToken.None);
            }
        }
    }

    private async Task ServeAsync(Socket socket, MqttServerOptions options, IMqttNetLogger mqttLogger)
    {
        await Task.Yield();
        using var owned = socket;
        try
        {
            if (Interlocked.Increment(ref _open) > mostConnections) IngestLog.TooManyConnections(logger, socket.RemoteEndPoint, mostConnections);
            else if (ClientHandler is { } handler) await HandleAsync(socket, handler, options, mqttLogger);
        }
        catch (Exception e) when (e is SocketException or IOException or ObjectDisposedException or OperationCanceledException)
        {
            // A device that is gone is no news; its session says so.
        }
        catch (AuthenticationException e)
        {
            IngestLog.HandshakeFailed(logger, socket.RemoteEndPoint, e.InnerException?.Message ?? e.Message);
        }
        finally
        {
            Interlocked.Decrement(ref _open);
        }
    }

    private async Task HandleAsync(Socket socket, Func<IMqttChannelAdapter, Task> handler, MqttServerOptions options, IMqttNetLogger mqttLogger)
    {
        socket.NoDelay = true;
        await using var stream = await StreamAsync(socket);
        using var channel = new DeviceChannel(stream, socket, at.Certificate is not null, mostPacketBytes, logger);
        var formatter = new MqttPacketFormatterAdapter(new MqttBufferWriter(options.WriterBufferSize, options.WriterBufferSizeMax));
        using var adapter = new DeviceAdapter(new MqttChannelAdapter(channel, formatter, mqttLogger));
        await handler(adapter);
    }

    private async Task<Stream> StreamAsync(Socket socket)
    {
        var plain = new NetworkStream(socket, ownsSocket: true);
        if (at.Certificate is not { } certificate) return plain;
        var tls = new SslStream(plain);
        try
        {
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(_stopping.Token);
            patience.CancelAfter(HandshakePatience);
            await tls.AuthenticateAsServerAsync(new SslServerAuthenticationOptions { ServerCertificateContext = certificate, EnabledSslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13 }, patience.Token);
            return tls;
        }
        catch
        {
            await tls.DisposeAsync();
            throw;
        }
    }
}
