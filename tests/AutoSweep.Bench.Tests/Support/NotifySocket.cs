using System.Net.Sockets;
using System.Text;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>systemd's end of sd_notify(3): a datagram socket whose path a service finds in NOTIFY_SOCKET.</summary>
/// <remarks>It listens all the time, as systemd does: a service that tells more than a queue's ten datagrams (net.unix.max_dgram_qlen) to nobody stands still.</remarks>
internal sealed class NotifySocket : IDisposable
{
    private const string Marker = "MARKER=";

    private readonly Socket _socket = new(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified);
    private readonly HeardLines _told = new();
    private int _markers;

    public NotifySocket(string path)
    {
        Path = path;
        _socket.Bind(new UnixDomainSocketEndPoint(path));
        _ = ListenAsync();
    }

    public string Path { get; }

    /// <summary>The assignments that have been told so far, in order.</summary>
    public IReadOnlyList<string> Told => [.. _told.Look().Lines.Where(line => !line.StartsWith(Marker, StringComparison.Ordinal))];

    /// <summary>Waits until an assignment that is looked for has been told.</summary>
    public async Task<string> UntilAsync(Func<string, bool> wanted)
    {
        while (true)
        {
            var (lines, more) = _told.Look();
            if (lines.FirstOrDefault(wanted) is { } found)
                return found;
            await more.WaitAsync(SystemdService.Patience, TimeProvider.System);
        }
    }

    /// <summary>Takes in what has been told already: datagrams come in the order in which they were sent, so all of it comes before one that is sent now.</summary>
    public async Task DrainAsync()
    {
        var marker = $"{Marker}{++_markers}";
        using var sender = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified);
        await sender.SendToAsync(Encoding.UTF8.GetBytes(marker), SocketFlags.None, new UnixDomainSocketEndPoint(Path));
        await UntilAsync(told => told == marker);
    }

    public void Dispose() => _socket.Dispose();

    // One datagram may hold several assignments, a line each.
    private async Task ListenAsync()
    {
        var buffer = new byte[4096];
        try
        {
            while (true)
            {
                var count = await _socket.ReceiveAsync(buffer, SocketFlags.None);
                foreach (var line in Encoding.UTF8.GetString(buffer, 0, count).Split('\n', StringSplitOptions.RemoveEmptyEntries))
                    _told.Add(line);
            }
        }
        catch (Exception fault) when (fault is SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }
}
