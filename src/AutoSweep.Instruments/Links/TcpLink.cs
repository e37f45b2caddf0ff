using System.Net.Sockets;
using AutoSweep.Core;

namespace AutoSweep.Instruments.Links;

/// <summary>A raw TCP socket to an instrument.</summary>
public sealed class TcpLink : ILink
{
    private readonly Socket _socket;

    private TcpLink(ResourceName resource, Socket socket) => (Resource, _socket) = (resource, socket);

    /// <inheritdoc/>
    public ResourceName Resource { get; }

    /// <summary>Connects.</summary>
    /// <exception cref="BenchFaultException">No such host, refused, or no answer within the time-out.</exception>
    public static async Task<ILink> OpenAsync(
        SocketResource resource, LinkSettings settings, TimeProvider time, CancellationToken cancellationToken)
    {
        var socket = NewSocket();
        using var timeout = new CancellationTokenSource(settings.ConnectTimeout, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(timeout.Token, cancellationToken);
        try
        {
            await socket.ConnectAsync(resource.Host, resource.Port, either.Token);
            return new TcpLink(resource, socket);
        }
        catch (Exception exception) when (exception is SocketException || timeout.IsCancellationRequested)
        {
            socket.Dispose();
            cancellationToken.ThrowIfCancellationRequested();
            throw NotReachable(resource, exception);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public async ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        try
        {
            while (bytes.Length > 0)
                bytes = bytes[await _socket.SendAsync(bytes, cancellationToken)..];
        }
        catch (Exception exception) when (exception is SocketException or ObjectDisposedException)
        {
            throw Broken(exception);
        }
    }

    /// <inheritdoc/>
    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        try
        {
            var count = await _socket.ReceiveAsync(buffer, cancellationToken);
            return count > 0 ? count : throw new IOException($"{Resource}: the other end has closed the connection.");
        }
        catch (Exception exception) when (exception is SocketException or ObjectDisposedException)
        {
            throw Broken(exception);
        }
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync()
    {
        _socket.Dispose();
        return ValueTask.CompletedTask;
    }

    // Commands are short lines that wait for an answer: sent at once (RFC 896's delay would add 40 ms to each). Keep-alive finds an
    // instrument that was switched off: probes after 10 s, every 3 s, 3 times (bench practice, no source).
    private static Socket NewSocket()
    {
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        socket.SetSocketOption(SocketOptionLevel.Socket, SocketOptionName.KeepAlive, true);
        socket.SetSocketOption(SocketOptionLevel.Tcp, SocketOptionName.TcpKeepAliveTime, 10);
        socket.SetSocketOption(SocketOptionLevel.Tcp, SocketOptionName.TcpKeepAliveInterval, 3);
        socket.SetSocketOption(SocketOptionLevel.Tcp, SocketOptionName.TcpKeepAliveRetryCount, 3);
        return socket;
    }

    private IOException Broken(Exception cause) => new($"{Resource}: the connection broke. {cause.Message}", cause);

    private static BenchFaultException NotReachable(SocketResource resource, Exception cause) => new(
        BenchFault.NotReachable,
        cause is SocketException socket
            ? $"{resource.Host} port {resource.Port}: {socket.Message}"
            : $"{resource.Host} port {resource.Port}: no answer to the connection",
        "an instrument that accepts a connection there",
        cause is SocketException { SocketErrorCode: SocketError.ConnectionRefused }
            ? "Check the port number (5025 is the usual one) and that no other program is connected: many meters take one at a time."
            : "Check that the instrument is on and on this network, and its address.",
        cause);
}
