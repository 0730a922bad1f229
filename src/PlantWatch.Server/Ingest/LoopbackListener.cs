using System.Net;
using System.Net.Sockets;
using MQTTnet.Adapter;
using MQTTnet.Diagnostics.Logger;
using MQTTnet.Formatter;
using MQTTnet.Server;

namespace PlantWatch.Server.Ingest;

/// <summary>Accepts devices on this machine only, so many and no more. Whoever may publish here can make readings, and device accounts do not exist yet.</summary>
internal sealed class LoopbackListener(int port, int mostConnections, int mostPacketBytes, ILogger logger) : IMqttServerAdapter
{
    private readonly CancellationTokenSource _stopping = new();
    private readonly List<Socket> _sockets = [];
    private int _open;

    /// <summary>The port, chosen by the system where 0 was asked for. Valid once started.</summary>
    public int Port { get; private set; } = port;

    /// <summary>Connections now.</summary>
    public int Open => Volatile.Read(ref _open);

    public Func<IMqttChannelAdapter, Task>? ClientHandler { get; set; }

    public Task StartAsync(MqttServerOptions options, IMqttNetLogger mqttLogger)
    {
        Listen(IPAddress.Loopback, options, mqttLogger);
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
        finally
        {
            Interlocked.Decrement(ref _open);
        }
    }

    private async Task HandleAsync(Socket socket, Func<IMqttChannelAdapter, Task> handler, MqttServerOptions options, IMqttNetLogger mqttLogger)
    {
        socket.NoDelay = true;
        using var channel = new DeviceChannel(socket, mostPacketBytes, logger);
        var formatter = new MqttPacketFormatterAdapter(new MqttBufferWriter(options.WriterBufferSize, options.WriterBufferSizeMax));
        using var adapter = new DeviceAdapter(new MqttChannelAdapter(channel, formatter, mqttLogger));
        await handler(adapter);
    }
}
