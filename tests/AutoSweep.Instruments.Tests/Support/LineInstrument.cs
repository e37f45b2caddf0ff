using System.Net;
using System.Net.Sockets;
using System.Text;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>Answers lines, ended by LF or CR, on a socket, one connection after the other. An answer of null is silence.</summary>
public sealed class LineInstrument : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly Func<string, string?> _answer;
    private readonly Task _served;
    private Socket? _client;

    public LineInstrument(Func<string, string?> answer)
    {
        _answer = answer;
        _listener.Start();
        _served = ServeAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>The cable is pulled: the connection ends, and no other comes about.</summary>
    public void Unplug()
    {
        _listener.Stop();
        _client?.Dispose();
    }

    /// <summary>Sends something later over the connection that there is now, if there still is one.</summary>
    public Action<string> Later()
    {
        var client = _client!;
        return text =>
        {
            try
            {
                client.Send(Encoding.ASCII.GetBytes(text));
            }
            catch (Exception exception) when (exception is SocketException or ObjectDisposedException)
            {
                // A device clear has ended it.
            }
        };
    }

    public async ValueTask DisposeAsync()
    {
        Unplug();
        await _served;
    }

    private async Task ServeAsync()
    {
        try
        {
            while (true)
            {
                using var client = _client = await _listener.AcceptSocketAsync();
                await ServeAsync(client);
            }
        }
        catch (Exception exception) when (exception is SocketException or ObjectDisposedException or InvalidOperationException)
        {
            // The test is over, or the cable was pulled.
        }
    }

    private async Task ServeAsync(Socket client)
    {
        try
        {
            var (letter, line) = (new byte[1], new StringBuilder());
            while (await client.ReceiveAsync(letter) > 0)
            {
                if (letter[0] is not ((byte)'\n' or (byte)'\r'))
                    line.Append((char)letter[0]);
                else if (line.Length > 0 && Taken(line) is { } answer)
                    await client.SendAsync(Encoding.ASCII.GetBytes(answer));
            }
        }
        catch (Exception exception) when (exception is IOException or SocketException or ObjectDisposedException)
        {
            // This connection has ended.
        }
    }

    private string? Taken(StringBuilder line)
    {
        var text = line.ToString();
        line.Clear();
        return _answer(text);
    }
}
