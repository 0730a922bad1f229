using System.Net;
using System.Net.Sockets;

namespace PlantWatch.Demo;

/// <summary>Finds a port on this machine that nobody listens on.</summary>
internal static class FreePort
{
    private const int Tries = 50;

    /// <summary>The wanted port, or the next free one above it.</summary>
    public static int From(int wanted)
    {
        for (var port = wanted; port < wanted + Tries; port++)
            if (IsFree(IPAddress.Loopback, port) && (!Socket.OSSupportsIPv6 || IsFree(IPAddress.IPv6Loopback, port))) return port;
        throw new IOException($"no free port between {wanted} and {wanted + Tries - 1}");
    }

    private static bool IsFree(IPAddress address, int port)
    {
        using var socket = new Socket(address.AddressFamily, SocketType.Stream, ProtocolType.Tcp);
        try
        {
            socket.Bind(new IPEndPoint(address, port));
            return true;
        }
        catch (SocketException e)
        {
            // A machine without an address of this kind has nobody listening on it.
            return e.SocketErrorCode == SocketError.AddressNotAvailable;
        }
    }
}
