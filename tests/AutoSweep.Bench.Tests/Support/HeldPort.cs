using System.Net;
using System.Net.Sockets;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>A port at which nobody listens, and at which nobody else can as long as this holds it.</summary>
internal sealed class HeldPort : IDisposable
{
    // Bound but not listening: whoever connects is refused.
    private readonly Socket _socket = new(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);

    public HeldPort()
    {
        _socket.Bind(new IPEndPoint(IPAddress.Loopback, 0));
        Number = ((IPEndPoint)_socket.LocalEndPoint!).Port;
    }

    public int Number { get; }

    public void Dispose() => _socket.Dispose();
}
