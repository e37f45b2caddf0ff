using System.Net.Sockets;

namespace AutoSweep.Sim.Wire;

/// <summary>One client of a TCP port.</summary>
internal sealed class SocketStream(Socket socket) : IByteStream
{
    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        try
        {
            return await socket.ReceiveAsync(buffer, cancellationToken);
        }
        catch (Exception exception) when (exception is SocketException or ObjectDisposedException)
        {
            // A killed client resets its connection; a pulled plug closes this end.
            return 0;
        }
    }

    public async ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        try
        {
            await socket.SendAsync(bytes, cancellationToken);
        }
        catch (Exception exception) when (exception is SocketException or ObjectDisposedException)
        {
            // The reading side sees the same and ends the conversation.
        }
    }
}
