using System.Collections.Concurrent;
using System.Threading.Channels;

namespace AutoSweep.Instruments.Links;

/// <summary>A link over an interface that carries whole messages, whose calls block.</summary>
/// <remarks>
/// One thread makes all the calls, so that none blocks the caller. It fetches an answer only after a message that has one. A message
/// that goes out while an answer is still owed begins with a device clear: the answer is given up, and the instrument does not report
/// -410 (query interrupted). Closing never waits for ever: a call that does not return is left to the end of the program.
/// </remarks>
public sealed class MessageLink : ILink
{
    // VI_ATTR_TMO_VALUE's default (VPP-4.3), and as long for what is still under way when the link is closed.
    private static readonly TimeSpan WriteTimeout = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan LongestClosing = 2 * WriteTimeout;

    // An interruption that comes when a read is about to begin is lost, and the read may last as long as a reading: so it is repeated.
    private static readonly TimeSpan InterruptAgain = TimeSpan.FromMilliseconds(100);

    private readonly IMessagePort _port;
    private readonly TimeProvider _time;
    private readonly AnswerFetcher _answers;
    private readonly BlockingCollection<PendingMessage> _messages = [];
    private readonly Lock _order = new();
    private long _number;
    private readonly AutoResetEvent _arrived = new(false);
    private readonly Channel<byte[]> _received = Channel.CreateUnbounded<byte[]>(new() { SingleWriter = true });
    private readonly Thread _thread;
    private volatile IOException? _break;
    private ReadOnlyMemory<byte> _left;

    /// <summary>A link over an open port, which it owns from now on.</summary>
    /// <param name="resource">The name that was opened.</param>
    /// <param name="port">The port.</param>
    /// <param name="replyTerminator">Added to an answer that ends without it.</param>
    /// <param name="time">The clock behind every wait but that of closing, which is for a thread.</param>
    public MessageLink(ResourceName resource, IMessagePort port, char replyTerminator, TimeProvider time)
    {
        (Resource, _port, _time) = (resource, port, time);
        _answers = new(port, (byte)replyTerminator, time, NextMessageWaits);
        _thread = new(Serve) { IsBackground = true, Name = $"messages {resource}" };
        _thread.Start();
    }

    /// <inheritdoc/>
    public ResourceName Resource { get; }

    /// <inheritdoc/>
    public ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken) =>
        SendAsync(bytes, null, cancellationToken);

    /// <inheritdoc/>
    public ValueTask WriteQueryAsync(ReadOnlyMemory<byte> bytes, TimeSpan answerWithin, CancellationToken cancellationToken) =>
        SendAsync(bytes, answerWithin, cancellationToken);

    /// <inheritdoc/>
    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        try
        {
            if (_left.IsEmpty)
                _left = await _received.Reader.ReadAsync(cancellationToken);
        }
        catch (ChannelClosedException exception)
        {
            throw Broken(exception.InnerException);
        }

        var count = Math.Min(buffer.Length, _left.Length);
        _left[..count].CopyTo(buffer);
        _left = _left[count..];
        return count;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        _messages.CompleteAdding();
        _arrived.Set();
        await Task.Run(Join);
    }

    private void Join()
    {
        for (var waited = TimeSpan.Zero; waited < LongestClosing; waited += InterruptAgain)
        {
            _answers.GiveUpBefore(long.MaxValue);
            if (_thread.Join(InterruptAgain))
                return;
        }
    }

    private async ValueTask SendAsync(ReadOnlyMemory<byte> bytes, TimeSpan? answerWithin, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var message = Add(bytes, answerWithin, cancellationToken);
        _arrived.Set();
        while (!message.Sent.IsCompleted && !cancellationToken.IsCancellationRequested)
        {
            _answers.GiveUpBefore(message.Number);
            await message.Sent.WaitAsync(InterruptAgain, _time, cancellationToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        await message.Sent.WaitAsync(cancellationToken);
    }

    private PendingMessage Add(ReadOnlyMemory<byte> bytes, TimeSpan? answerWithin, CancellationToken cancellationToken)
    {
        lock (_order)
        {
            var message = new PendingMessage(++_number, bytes.ToArray(), answerWithin, cancellationToken);
            try
            {
                _messages.Add(message, CancellationToken.None);
            }
            catch (InvalidOperationException)
            {
                throw Broken(_break);
            }

            return message;
        }
    }

    private void Serve()
    {
        try
        {
            while (Next() is { } message)
                Exchange(message);
        }
        catch (IOException exception)
        {
            _break = exception;
        }

        _messages.CompleteAdding();
        while (_messages.TryTake(out var unsent))
            unsent.Failed(Broken(_break));
        _received.Writer.TryComplete(_break);
        _port.Dispose();
    }

    // A stream is listened to all the time: what comes late must not be taken for the next answer.
    private PendingMessage? Next()
    {
        while (_port.IsStream && _messages.Count == 0 && !_messages.IsAddingCompleted)
            Publish(_answers.Listen());
        return _messages.TryTake(out var message, Timeout.Infinite) ? message : null;
    }

    private void Exchange(PendingMessage message)
    {
        if (message.Cancelled.IsCancellationRequested)
        {
            message.NotSent();
            return;
        }

        Write(message);
        if (!_port.IsStream && message.AnswerWithin is { } within)
            Publish(_answers.Fetch(message.Number, within));
    }

    private void Publish(byte[] bytes)
    {
        if (bytes.Length > 0)
            _received.Writer.TryWrite(bytes);
    }

    private void Write(PendingMessage message)
    {
        try
        {
            _port.Write(message.Bytes, WriteTimeout);
            message.Succeeded();
        }
        catch (Exception exception) when (exception is TimeoutException or IOException)
        {
            var cause = exception as IOException ?? new("the instrument takes no bytes.", exception);
            message.Failed(Broken(cause));
            throw cause;
        }
    }

    // Whether to go on waiting for an answer: until the next message comes, or the link is closed.
    private bool NextMessageWaits(TimeSpan pause)
    {
        if (_messages.Count == 0 && !_messages.IsAddingCompleted && pause > TimeSpan.Zero)
            _arrived.WaitOne(pause);
        return _messages.Count > 0 || _messages.IsAddingCompleted;
    }

    private IOException Broken(Exception? cause) => new($"{Resource}: the link broke. {cause?.Message ?? "It was closed."}", cause);
}
