using System.Text;
using AutoSweep.Instruments.Links.Usbtmc;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A USBTMC instrument behind the kernel's driver, as drivers/usb/class/usbtmc.c behaves: a read asks the instrument to speak, a
/// time-out leaves the transfer open until it is aborted, an answer of an open transfer is read as nothing.</summary>
public sealed class FakeUsbtmcFile(Func<string, string?> answer) : IUsbtmcFile
{
    private const int NoDevice = -19;
    private const int NoSuchRequest = -25;
    private const int TimedOut = -110;

    private readonly Lock _lock = new();
    private readonly Queue<byte> _answer = [];
    private readonly SemaphoreSlim _something = new(0);
    private readonly TaskCompletionSource _cleared = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private TimeSpan _timeout = TimeSpan.FromSeconds(5);
    private bool _transferOpen;
    private bool _unplugged;

    /// <summary>USB488 capabilities as GET_CAPS gives them; null on a kernel before 4.19.</summary>
    public uint? Capabilities { get; init; }

    /// <summary>Done when the instrument has been cleared.</summary>
    public Task Cleared => _cleared.Task;

    /// <summary>How many bytes a transfer carries at most.</summary>
    public int Transfer { get; init; } = 4096;

    /// <summary>Whether the driver tells the end mark (kernel 4.20 on).</summary>
    public bool TellsEnds { get; init; } = true;

    public List<UsbtmcRequest> Requests { get; } = [];

    public List<string> Messages { get; } = [];

    public List<TimeSpan> Timeouts { get; } = [];

    public int UnaskedReads { get; private set; }

    public int Interrupted { get; private set; }

    public bool IsClosed { get; private set; }

    public void Unplug()
    {
        lock (_lock)
            _unplugged = true;
        _something.Release();
    }

    /// <summary>The next read finds an answer that belongs to another request.</summary>
    public void FallOutOfStep()
    {
        lock (_lock)
            _transferOpen = true;
    }

    public int Write(ReadOnlySpan<byte> bytes)
    {
        lock (_lock)
        {
            if (_unplugged)
                return NoDevice;
            if (_answer.Count > 0)
                Interrupted++;
            _answer.Clear();
            var message = Encoding.ASCII.GetString(bytes);
            Messages.Add(message);
            foreach (var letter in Encoding.ASCII.GetBytes(answer(message.TrimEnd('\n')) ?? ""))
                _answer.Enqueue(letter);
            if (_answer.Count > 0)
                _something.Release();
            return bytes.Length;
        }
    }

    public int Read(Span<byte> buffer)
    {
        lock (_lock)
        {
            if (!_unplugged && _answer.Count == 0 && !(Messages.LastOrDefault() ?? "").Contains('?'))
                UnaskedReads++;
        }

        while (true)
        {
            lock (_lock)
            {
                if (_unplugged)
                    return NoDevice;
                if (_answer.Count > 0)
                    return _transferOpen ? 0 : Take(buffer);
            }

            if (_something.Wait(_timeout))
                continue;
            lock (_lock)
                _transferOpen = true;
            return TimedOut;
        }
    }

    public int Control(UsbtmcRequest request, ref uint value)
    {
        lock (_lock)
        {
            Requests.Add(request);
            if (_unplugged)
                return NoDevice;
            switch (request)
            {
                case UsbtmcRequest.SetTimeout:
                    Timeouts.Add(_timeout = TimeSpan.FromMilliseconds(value));
                    return 0;
                case UsbtmcRequest.Get488Capabilities when Capabilities is { } capabilities:
                    value = capabilities;
                    return 0;
                case UsbtmcRequest.ReadStatusByte when Capabilities is not null:
                    value = _answer.Count > 0 ? 0x10u : 0;
                    return 0;
                case UsbtmcRequest.MessageInAttributes when TellsEnds:
                    value = _answer.Count == 0 ? 1u : 0;
                    return 0;
                case UsbtmcRequest.AbortBulkIn:
                    _transferOpen = false;
                    return 0;
                case UsbtmcRequest.Clear:
                    _answer.Clear();
                    _cleared.TrySetResult();
                    return _transferOpen ? -1 : 0; // EPERM
                case UsbtmcRequest.RemoteEnable or UsbtmcRequest.GoToLocal:
                    return 0;
                default:
                    return NoSuchRequest;
            }
        }
    }

    public void Dispose() => IsClosed = true;

    private int Take(Span<byte> buffer)
    {
        var count = Math.Min(Math.Min(buffer.Length, Transfer), _answer.Count);
        for (var at = 0; at < count; at++)
            buffer[at] = _answer.Dequeue();
        return count;
    }
}
