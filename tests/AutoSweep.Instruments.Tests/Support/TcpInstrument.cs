using System.Net;
using System.Net.Sockets;
using System.Text;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>Serves one connection over a real socket, and sends every reply in pieces of one byte.</summary>
public sealed class TcpInstrument : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly Func<string, string?> _answer;
    private readonly Task _served;

    public TcpInstrument(Func<string, string?> answer)
    {
        _answer = answer;
        _listener.Start();
        _served = ServeAsync();
    }

    public string Resource => $"TCPIP::127.0.0.1::{((IPEndPoint)_listener.LocalEndpoint).Port}::SOCKET";

    public async ValueTask DisposeAsync()
    {
        _listener.Stop();
        await _served;
    }

    private async Task ServeAsync()
    {
        try
        {
            using var client = await _listener.AcceptTcpClientAsync();
            client.NoDelay = true;
            using var reader = new StreamReader(client.GetStream(), Encoding.ASCII);
            while (await reader.ReadLineAsync() is { } line)
            {
                foreach (var letter in Encoding.ASCII.GetBytes(_answer(line) ?? ""))
                    await client.GetStream().WriteAsync(new[] { letter });
            }
        }
        catch (Exception exception) when (exception is IOException or SocketException or ObjectDisposedException)
        {
            // The other end has gone, or the test is over.
        }
    }
}
