using System.Text;
using AutoSweep.Instruments.Links;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Scpi;

/// <summary>Single exchanges on the wire, and how it comes back into step after trouble.</summary>
/// <remarks>Not safe from two threads: the session's gate stands before it.</remarks>
internal sealed class ScpiWire(ILink link, ScpiSessionOptions options, TimeProvider time, ILogger log) : IAsyncDisposable
{
    public const string IdentityQuery = "*IDN?";

    private readonly ReceivedBytes _received = new(link);
    private readonly ReplyFramer _framer = new(options.ReplyTerminator);
    private bool _outOfStep;
    private bool _lineCutShort;
    private int _identitiesOwed;

    /// <summary>The identity, as the instrument wrote it when it was opened; null before.</summary>
    public string? Identity { get; set; }

    /// <summary>Whether the last exchange ended in a way that lets its answer, or the rest of its line, still come.</summary>
    public bool IsOutOfStep => _outOfStep || _lineCutShort;

    /// <summary>Whether the wire came back into step since this was last set to false: the instrument may then report the query that was given up.</summary>
    public bool WasOutOfStep { get; set; }

    /// <summary>Sends a message without a reply.</summary>
    public async ValueTask SendAsync(string message, CancellationToken cancellationToken) =>
        await WriteLineAsync(message, null, cancellationToken);

    /// <summary>Sends a query and takes its reply, for which the caller waits so long.</summary>
    /// <exception cref="InvalidDataException">The reply holds bytes that are no text.</exception>
    public async ValueTask<string> AskAsync(string message, TimeSpan within, CancellationToken cancellationToken)
    {
        DropStaleBytes();
        _outOfStep = true; // until the reply is here, whatever throws in between
        await WriteLineAsync(message, within, cancellationToken);
        if (message == IdentityQuery)
            _identitiesOwed++;
        var reply = await ReplyAfterEchoAsync(message, cancellationToken);
        RequireText(message, reply);
        if (message == IdentityQuery)
            _identitiesOwed = 0;
        _outOfStep = false;
        return reply;
    }

    public ValueTask DisposeAsync() => _received.DisposeAsync();

    private async ValueTask WriteLineAsync(string message, TimeSpan? answerWithin, CancellationToken cancellationToken)
    {
        log.LogTrace("{Resource} > {Message}", link.Resource, message);
        _lineCutShort = true;
        var bytes = Encoding.ASCII.GetBytes(message + options.Terminator);
        await (answerWithin is { } within
            ? link.WriteQueryAsync(bytes, within, cancellationToken)
            : link.WriteAsync(bytes, cancellationToken));
        _lineCutShort = false;
    }

    // Half-duplex adapters and console ports send back what they were sent.
    private async ValueTask<string> ReplyAfterEchoAsync(string message, CancellationToken cancellationToken)
    {
        var reply = await ReplyAsync(cancellationToken);
        if (reply != message)
            return reply;
        log.LogInformation("{Resource} echoes what it is sent; the echo is dropped", link.Resource);
        return await ReplyAsync(cancellationToken);
    }

    private async ValueTask<string> ReplyAsync(CancellationToken cancellationToken)
    {
        string? reply;
        while ((reply = _framer.Take()) is null)
            _framer.Append(await _received.TakeAsync(cancellationToken));
        log.LogTrace("{Resource} < {Reply}", link.Resource, reply);
        return reply;
    }

    private void DropStaleBytes()
    {
        while (_received.TakeNow() is { } chunk)
            _framer.Append(chunk);
        if (_framer.Waiting > 0)
            log.LogWarning("{Resource}: dropped \"{Bytes}\", which came unasked", link.Resource, Visible(_framer.Clear()));
    }

    // Wrong parity or baud rate shows as bytes outside printable ASCII. Checked on the whole reply: replies are short.
    private static void RequireText(string message, string reply)
    {
        if (reply.Any(letter => letter is > '~' or (< ' ' and not '\t' and not '\r' and not '\n')))
            throw new InvalidDataException($"the answer to {message} is garbled: \"{Visible(reply)}\"");
    }

    /// <summary>Getting back into step, first: waits until nothing comes any more, and drops what came.</summary>
    public ValueTask BecomeQuietAsync(CancellationToken cancellationToken)
    {
        log.LogWarning("{Resource}: out of step with the instrument; waiting for quiet, then asking who it is", link.Resource);
        return QuietAsync(options.Exchange.QuietTime, cancellationToken);
    }

    /// <summary>Second: asks who the instrument is and drops every answer before that.</summary>
    /// <remarks>A stream has no device clear. An instrument answers in the order in which it was asked (IEEE 488.2, 6.3), so every late
    /// answer comes before the one to an <c>*IDN?</c> sent now.</remarks>
    public async ValueTask FindIdentityAsync(CancellationToken cancellationToken)
    {
        _identitiesOwed++;
        var message = _lineCutShort ? options.Terminator + IdentityQuery : IdentityQuery;
        await WriteLineAsync(message, options.Exchange.QueryTimeout, cancellationToken);
        await IdentityAsync(cancellationToken);
    }

    /// <summary>Third: where earlier <c>*IDN?</c> are owed their answers, which look the same, lets them come.</summary>
    public async ValueTask BecomeSureAsync(CancellationToken cancellationToken)
    {
        if (_identitiesOwed > 1)
            await QuietAsync(options.Exchange.QueryTimeout, cancellationToken);
        (_identitiesOwed, _outOfStep, WasOutOfStep) = (0, false, true);
    }

    private async ValueTask IdentityAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            var reply = await ReplyAsync(cancellationToken);
            if (Identity is null ? InstrumentIdentity.TryParse(reply) is not null : reply == Identity)
                return;
            log.LogWarning("{Resource}: dropped the late answer \"{Reply}\"", link.Resource, Visible(reply));
        }
    }

    // Waits until nothing has come for a while, and drops what came.
    private async ValueTask QuietAsync(TimeSpan quiet, CancellationToken cancellationToken)
    {
        var begin = time.GetTimestamp();
        var limit = quiet > options.Exchange.QuietLimit ? quiet : options.Exchange.QuietLimit;
        while (time.GetElapsedTime(begin) <= limit && await ComesWithinAsync(quiet, cancellationToken))
        {
        }

        DropStaleBytes();
    }

    private async ValueTask<bool> ComesWithinAsync(TimeSpan wait, CancellationToken cancellationToken)
    {
        using var timeout = new CancellationTokenSource(wait, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(timeout.Token, cancellationToken);
        try
        {
            _framer.Append(await _received.TakeAsync(either.Token));
            return true;
        }
        catch (OperationCanceledException) when (timeout.IsCancellationRequested && !cancellationToken.IsCancellationRequested)
        {
            return false;
        }
    }

    private static string Visible(string bytes) => string.Concat(bytes.Select(letter => letter is >= ' ' and <= '~'
        ? letter.ToString()
        : FormattableString.Invariant($"\\x{(int)letter:X2}")));
}
