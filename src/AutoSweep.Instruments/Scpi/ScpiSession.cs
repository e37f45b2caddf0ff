using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Scpi;

/// <summary>Messages and replies of one SCPI instrument over one link.</summary>
/// <remarks>
/// One exchange at a time: a reply is read wholly before the next message goes out (IEEE 488.2, 6.3). After a time-out, a garbled reply
/// or a
/// cancelled wait the link is resynchronised before its next use, so that a late answer is never taken for the next one. Safe
/// from several threads; closing closes the link.
/// </remarks>
public sealed class ScpiSession : IAsyncDisposable
{
    // A broken firmware repeats its last error for ever; real queues hold 10 to 30 entries (makers' manuals).
    private const int MostErrors = 50;

    private readonly ScpiSessionOptions _options;
    private readonly ExchangePolicy _policy;
    private readonly ScpiWire _wire;
    private readonly SemaphoreSlim _gate = new(1, 1);
    private readonly TimeProvider _time;
    private readonly ILogger _log;
    private long _endOfExchange;

    /// <summary>A session over an open link, which it owns from now on.</summary>
    /// <param name="link">The link.</param>
    /// <param name="options">How this instrument's wire behaves.</param>
    /// <param name="time">The clock behind every wait.</param>
    /// <param name="log">Takes every exchange (trace), retry and resynchronisation (warning).</param>
    public ScpiSession(ILink link, ScpiSessionOptions options, TimeProvider time, ILogger log)
    {
        (_options, _time, _log, Resource) = (options, time, log, link.Resource);
        _policy = new(options.Exchange, link.Resource.Text, time, log);
        _wire = new(link, options, time, log);
        LastExchange = _endOfExchange = time.GetTimestamp();
    }

    /// <summary>The resource at the other end.</summary>
    public ResourceName Resource { get; }

    /// <summary>How long the instrument may take to answer an ordinary query.</summary>
    public TimeSpan QueryTimeout => _options.Exchange.QueryTimeout;

    /// <summary>When a message last went out, as a timestamp of the session's clock.</summary>
    public long LastExchange { get; private set; }

    /// <summary>Sends a message that has no reply. Never repeated.</summary>
    /// <param name="message">One or more commands, joined by <c>;</c>; no query.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <exception cref="BenchFaultException">The link broke or takes no bytes.</exception>
    public Task SendAsync(string message, CancellationToken cancellationToken) =>
        ExclusiveAsync(async () => { await _policy.SendAsync(_wire, message, cancellationToken); return ""; }, cancellationToken);

    /// <summary>Sends a message with one query and waits for its reply; asks again after silence or a reply that cannot be read.</summary>
    /// <param name="message">A message whose repetition changes nothing at the instrument.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <param name="timeout">How long the instrument may take; the options' time when null.</param>
    /// <returns>The reply without its terminator.</returns>
    /// <exception cref="BenchFaultException">No usable answer after all the tries, or the link broke.</exception>
    public Task<string> QueryAsync(string message, CancellationToken cancellationToken, TimeSpan? timeout = null) =>
        ExclusiveAsync(() => _policy.QueryAsync(_wire, message, timeout, cancellationToken), cancellationToken);

    /// <summary>Asks for the identity and remembers it for resynchronisations.</summary>
    /// <exception cref="BenchFaultException">No answer, or none that is an identity.</exception>
    public async Task<InstrumentIdentity> IdentifyAsync(CancellationToken cancellationToken)
    {
        var reply = await QueryAsync(ScpiWire.IdentityQuery, cancellationToken);
        var identity = InstrumentIdentity.TryParse(reply) ?? throw new BenchFaultException(
            BenchFault.NoAnswer,
            $"the instrument at {Resource} answers {ScpiWire.IdentityQuery} with \"{reply}\"",
            "maker, model, serial number and firmware, with commas between",
            "Check that this is the instrument's SCPI port and not a console, and that no other program talks to it.");
        _wire.Identity = reply;
        return identity;
    }

    /// <summary>Reads the error queue until it is empty.</summary>
    /// <remarks>What an instrument says of a query that was given up (-410 and its kin) is logged and left out: no command is at fault for it.</remarks>
    /// <returns>The errors, oldest first; empty when there were none, or when the instrument has no queue.</returns>
    public async Task<IReadOnlyList<ScpiError>> DrainErrorsAsync(CancellationToken cancellationToken)
    {
        List<ScpiError> errors = [];
        while (_options.ErrorQuery is { } query && errors.Count < MostErrors)
        {
            var reply = await QueryAsync(query, cancellationToken);
            var error = ScpiError.TryParse(reply) ?? throw NotAnError(query, reply);
            if (error.Number == 0)
                break;
            errors.Add(error);
        }

        return WithoutGivenUp(errors);
    }

    /// <summary>Sends a message that has no reply and reads what the error queue says about it.</summary>
    /// <returns>The errors; empty when the instrument took the message.</returns>
    public async Task<IReadOnlyList<ScpiError>> SendAndCheckAsync(string message, CancellationToken cancellationToken)
    {
        await SendAsync(message, cancellationToken);
        var errors = await DrainErrorsAsync(cancellationToken);
        foreach (var error in errors)
            _log.LogInformation("{Resource}: after {Message} the instrument reports {Error}", Resource, message, error);
        return errors;
    }

    private List<ScpiError> WithoutGivenUp(List<ScpiError> errors)
    {
        if (!_wire.WasOutOfStep)
            return errors;
        _wire.WasOutOfStep = false;
        foreach (var error in errors.Where(error => error.IsQueryError))
            _log.LogInformation("{Resource}: of a query that was given up the instrument reports {Error}", Resource, error);
        return [.. errors.Where(error => !error.IsQueryError)];
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync() => await _wire.DisposeAsync();

    private async Task<string> ExclusiveAsync(Func<Task<string>> exchange, CancellationToken cancellationToken)
    {
        await _gate.WaitAsync(cancellationToken);
        try
        {
            await PauseAsync(cancellationToken);
            LastExchange = _time.GetTimestamp();
            return await exchange();
        }
        finally
        {
            _endOfExchange = _time.GetTimestamp();
            _gate.Release();
        }
    }

    private async Task PauseAsync(CancellationToken cancellationToken)
    {
        var left = _options.Pause - _time.GetElapsedTime(_endOfExchange);
        if (left > TimeSpan.Zero)
            await Task.Delay(left, _time, cancellationToken);
    }

    private BenchFaultException NotAnError(string query, string reply) => new(
        BenchFault.NoAnswer,
        $"the instrument at {Resource} answers {query} with \"{reply}\"",
        "a number and a text, such as 0,\"No error\"",
        "Check that no other program talks to the instrument, and that the driver is this meter's.");
}
