using System.Text;
using System.Threading.Channels;
using AutoSweep.Instruments.Links;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A link whose other end is the test.</summary>
public sealed class FakeLink : ILink
{
    private readonly Channel<string> _written = Channel.CreateUnbounded<string>();
    private readonly Channel<byte[]> _toHost = Channel.CreateUnbounded<byte[]>();
    private readonly Lock _lock = new();
    private readonly StringBuilder _line = new();
    private int _taken;
    private ReadOnlyMemory<byte> _left;
    private TaskCompletionSource _idle = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public ResourceName Resource { get; } = ResourceName.Parse("TCPIP::meter.test::5025::SOCKET");

    /// <summary>Set by a test that answers every line at once.</summary>
    public Func<string, string?>? Answer { get; init; }

    /// <summary>Into pieces of which lengths what is sent is cut; the rest comes in one.</summary>
    public byte[] Pieces { get; init; } = [];

    public List<string> Lines { get; } = [];

    public bool IsClosed { get; private set; }

    public void Send(string text)
    {
        var bytes = Encoding.Latin1.GetBytes(text);
        var at = 0;
        foreach (var piece in Pieces.Select(piece => 1 + (piece % 7)).TakeWhile(piece => at + piece < bytes.Length))
            SendBytes(bytes[at..(at += piece)]);
        SendBytes(bytes[at..]);
    }

    public void SendBytes(params byte[] bytes)
    {
        lock (_lock)
        {
            _idle = new(TaskCreationOptions.RunContinuationsAsynchronously);
            _toHost.Writer.TryWrite(bytes);
        }
    }

    /// <summary>Done when the host has taken all that was sent, and has come back for more.</summary>
    public Task AllReadAsync()
    {
        lock (_lock)
            return _idle.Task;
    }

    public void Break(string why) => _toHost.Writer.Complete(new IOException(why));

    public Task<string> NextLineAsync() => _written.Reader.ReadAsync().AsTask().WaitAsync(Patience.Limit);

    /// <summary>The line that follows the first so many.</summary>
    public async Task<string> LineAfterAsync(int count)
    {
        for (; _taken < count; _taken++)
            await NextLineAsync();
        _taken++;
        return await NextLineAsync();
    }

    public ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        foreach (var letter in Encoding.ASCII.GetString(bytes.Span))
        {
            if (letter != '\n')
                _line.Append(letter);
            else
                TakeLine();
        }

        return ValueTask.CompletedTask;
    }

    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        try
        {
            SayIdleIfEmpty();
            if (_left.IsEmpty)
                _left = await _toHost.Reader.ReadAsync(cancellationToken);
        }
        catch (ChannelClosedException exception)
        {
            throw exception.InnerException ?? new IOException("closed");
        }

        var count = Math.Min(buffer.Length, _left.Length);
        _left[..count].CopyTo(buffer);
        _left = _left[count..];
        return count;
    }

    public ValueTask DisposeAsync()
    {
        IsClosed = true;
        _toHost.Writer.TryComplete(new IOException("closed"));
        return ValueTask.CompletedTask;
    }

    private void SayIdleIfEmpty()
    {
        lock (_lock)
        {
            if (_left.IsEmpty && !_toHost.Reader.TryPeek(out _))
                _idle.TrySetResult();
        }
    }

    private void TakeLine()
    {
        var line = _line.ToString();
        _line.Clear();
        Lines.Add(line);
        _written.Writer.TryWrite(line);
        if (Answer?.Invoke(line) is { } answer)
            Send(answer);
    }
}
