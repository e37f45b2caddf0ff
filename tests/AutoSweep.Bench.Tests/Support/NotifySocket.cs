using System.Net.Sockets;
using System.Text;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>systemd's end of sd_notify(3): a datagram socket whose path a service finds in NOTIFY_SOCKET.</summary>
internal sealed class NotifySocket : IDisposable
{
    private readonly Socket _socket = new(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified);
    private readonly List<string> _told = [];

    public NotifySocket(string path)
    {
        Path = path;
        _socket.Bind(new UnixDomainSocketEndPoint(path));
    }

    public string Path { get; }

    /// <summary>The assignments that have been told so far, in order.</summary>
    public IReadOnlyList<string> Told => _told;

    /// <summary>Takes in what is told until an assignment comes that is looked for.</summary>
    public async Task<string> UntilAsync(Func<string, bool> wanted)
    {
        while (true)
        {
            var fresh = await NextAsync();
            if (fresh.FirstOrDefault(wanted) is { } found)
                return found;
        }
    }

    /// <summary>Takes in what has been told already and waits for nothing.</summary>
    public async Task DrainAsync()
    {
        while (_socket.Available > 0)
            await NextAsync();
    }

    public void Dispose() => _socket.Dispose();

    // One datagram may hold several assignments, a line each.
    private async Task<string[]> NextAsync()
    {
        var buffer = new byte[4096];
        var count = await _socket.ReceiveAsync(buffer, SocketFlags.None).WaitAsync(SystemdService.Patience, TimeProvider.System);
        var lines = Encoding.UTF8.GetString(buffer, 0, count).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        _told.AddRange(lines);
        return lines;
    }
}
