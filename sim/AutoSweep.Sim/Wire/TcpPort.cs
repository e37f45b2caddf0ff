using System.Net;
using System.Net.Sockets;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Wire;

/// <summary>Serves an instrument on a TCP port of the loopback interface, for clients that come and go.</summary>
internal sealed class TcpPort : IDisposable
{
    private readonly TcpListener listener;
    private readonly IInstrument instrument;
    private readonly WireDefinition wire;
    private readonly SimulatedClock clock;

    public TcpPort(IInstrument instrument, WireDefinition wire, SimulatedClock clock, int port)
    {
        (this.instrument, this.wire, this.clock) = (instrument, wire, clock);
        listener = new(IPAddress.Loopback, port);
        listener.Start();
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    public string Resource => FormattableString.Invariant($"TCPIP::127.0.0.1::{Port}::SOCKET");

    /// <summary>How many clients are connected has changed: +1 or -1.</summary>
    public event Action<int>? Clients;

    public async Task RunAsync(CancellationToken cancellationToken)
    {
        while (!cancellationToken.IsCancellationRequested)
            _ = ServeAsync(await listener.AcceptSocketAsync(cancellationToken), cancellationToken);
    }

    public void Dispose() => listener.Dispose();

    private async Task ServeAsync(Socket socket, CancellationToken cancellationToken)
    {
        using var client = socket;
        client.NoDelay = true;
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
            Clients?.Invoke(-1);
        }
    }
}
