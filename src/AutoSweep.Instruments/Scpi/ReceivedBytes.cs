using System.Threading.Channels;
using AutoSweep.Instruments.Links;

namespace AutoSweep.Instruments.Scpi;

/// <summary>Takes bytes off a link all the time, so that what came unasked can be told from an answer, and a cancelled wait loses
/// none.</summary>
internal sealed class ReceivedBytes : IAsyncDisposable
{
    private readonly ILink _link;
    private readonly Channel<byte[]> _chunks = Channel.CreateUnbounded<byte[]>(new() { SingleReader = true, SingleWriter = true });
    private readonly CancellationTokenSource _closing = new();
    private readonly Task _pump;
    private bool _closed;

    public ReceivedBytes(ILink link)
    {
        _link = link;
        _pump = PumpAsync();
    }

    /// <summary>Whether the link has broken; then nothing more will come.</summary>
    public bool IsBroken => _chunks.Reader.Completion.IsCompleted;

    /// <summary>What has come already, if anything.</summary>
    public byte[]? TakeNow() => _chunks.Reader.TryRead(out var chunk) ? chunk : null;

    /// <summary>What has come, or comes next.</summary>
    /// <exception cref="IOException">The link broke.</exception>
    public async ValueTask<byte[]> TakeAsync(CancellationToken cancellationToken)
    {
        try
        {
            return await _chunks.Reader.ReadAsync(cancellationToken);
        }
        catch (ChannelClosedException exception)
        {
            throw new IOException(exception.InnerException?.Message ?? $"{_link.Resource} is closed.", exception.InnerException);
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref _closed, true))
            return;
        await _closing.CancelAsync();
        await _link.DisposeAsync();
        await _pump;
        _closing.Dispose();
    }

    private async Task PumpAsync()
    {
        var buffer = new byte[4096];
        Exception? cause = null;
        try
        {
            while (true)
            {
                var count = await _link.ReadAsync(buffer, _closing.Token);
                _chunks.Writer.TryWrite(buffer[..count]);
            }
        }
        catch (Exception exception) when (exception is IOException or OperationCanceledException or ObjectDisposedException)
        {
            cause = exception as IOException;
        }

        _chunks.Writer.Complete(cause);
    }
}
