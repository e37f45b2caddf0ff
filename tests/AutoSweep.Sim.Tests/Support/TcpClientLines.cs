using System.Net.Sockets;
using System.Text;

namespace AutoSweep.Sim.Tests.Support;

/// <summary>A client of a port that sends bytes as it is told and reads lines as they come.</summary>
internal sealed class TcpClientLines : IDisposable
{
    private readonly TcpClient client = new() { NoDelay = true };
    private readonly NetworkStream stream;

    public TcpClientLines(int port)
    {
        client.Connect("127.0.0.1", port);
        stream = client.GetStream();
    }

    public bool HasBytes => stream.DataAvailable;

    public Task SendAsync(string text) => stream.WriteAsync(Encoding.ASCII.GetBytes(text)).AsTask();

    /// <summary>The next line with its CR, without its LF.</summary>
    public async Task<string> LineAsync()
    {
        var line = new StringBuilder();
        var one = new byte[1];
        using var patience = new CancellationTokenSource(Patience.Limit, TimeProvider.System);
        while (await stream.ReadAsync(one, patience.Token) == 1 && one[0] != (byte)'\n') line.Append((char)one[0]);
        return line.ToString();
    }

    public void Dispose() => client.Dispose();
}
