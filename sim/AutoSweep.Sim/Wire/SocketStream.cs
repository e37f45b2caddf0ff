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
        catch (SocketException)
        {
            // A killed client resets its connection.
            return 0;
        }
    }

    public async ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        try
        {
            await socket.SendAsync(bytes, cancellationToken);
        }
        catch (SocketException)
        {
            // The reading side sees the same and ends the conversation.
        }
    }
}
