using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Wire;

/// <summary>Serves an instrument on a TCP port of the loopback interface, for clients that come and go.</summary>
internal sealed class TcpPort : IDisposable
{
    private readonly ConcurrentDictionary<Socket, bool> clients = [];
    private readonly IInstrument instrument;
    private readonly WireDefinition wire;
    private readonly SimulatedClock clock;
    private volatile Socket listener;
    private volatile Task plugged = Task.CompletedTask;
    private volatile TaskCompletionSource pushedIn = new();

    public TcpPort(IInstrument instrument, WireDefinition wire, SimulatedClock clock, int port)
    {
        (this.instrument, this.wire, this.clock) = (instrument, wire, clock);
        listener = Held(port);
        listener.Listen();
        Port = ((IPEndPoint)listener.LocalEndPoint!).Port;
    }

    public int Port { get; }

    public string Resource => FormattableString.Invariant($"TCPIP::127.0.0.1::{Port}::SOCKET");

    /// <summary>How many clients are connected has changed: +1 or -1.</summary>
    public event Action<int>? Clients;

    public async Task RunAsync(CancellationToken cancellationToken)
    {
        while (!cancellationToken.IsCancellationRequested)
        {
            await plugged;
            var open = listener;
            try
            {
                _ = ServeAsync(await open.AcceptAsync(cancellationToken), open, cancellationToken);
            }
            catch (Exception exception) when (exception is SocketException or ObjectDisposedException or InvalidOperationException
                && (open != listener || !plugged.IsCompleted))
            {
                // The plug was pulled.
            }
        }
    }

    /// <summary>Pulls the plug for a while, or until it is pushed in: every client is cut off, even in the middle of an answer, and nobody is let in. Nothing happens while it is out already.</summary>
    public Task UnplugAsync(TimeSpan gap, CancellationToken cancellationToken)
    {
        if (!plugged.IsCompleted) return Task.CompletedTask;
        var back = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        pushedIn = new(TaskCreationOptions.RunContinuationsAsynchronously);
        plugged = back.Task;
        listener.Dispose();
        // Nobody listens, but the port stays taken: one that is let go may be given to another program before the plug is in again.
        var next = Held(Port);
        // Reset, not closed: the port is free again at once, and it is what a client sees of a meter without mains.
        foreach (var client in clients.Keys) client.Close(0);
        return ReturnAsync(back, next, gap, cancellationToken);
    }

    /// <summary>Pushes the plug in again before its time; nothing happens while it is in.</summary>
    public void PushIn() => pushedIn.TrySetResult();

    public void Dispose() => listener.Dispose();

    private static Socket Held(int port)
    {
        var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        socket.Bind(new IPEndPoint(IPAddress.Loopback, port));
        return socket;
    }

    private async Task ReturnAsync(TaskCompletionSource back, Socket next, TimeSpan gap, CancellationToken cancellationToken)
    {
        await Task.WhenAny(Task.Delay(gap, clock, cancellationToken), pushedIn.Task);
        cancellationToken.ThrowIfCancellationRequested();
        next.Listen();
        listener = next;
        back.SetResult();
    }

    private async Task ServeAsync(Socket socket, Socket accepting, CancellationToken cancellationToken)
    {
        using var client = socket;
        client.NoDelay = true;
        clients[client] = true;
        if (accepting != listener || !plugged.IsCompleted) client.Close(0); // the plug was pulled as it came
        Clients?.Invoke(1);
        try
        {
            var stream = new SocketStream(client);
            await new Conversation(stream, instrument, new(stream, wire, clock)).RunAsync(cancellationToken);
        }
        catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
        {
        }
        finally
        {
            clients.TryRemove(client, out _);
            Clients?.Invoke(-1);
        }
    }
}
