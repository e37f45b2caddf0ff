using AutoSweep.Core;
using Microsoft.Extensions.Logging;
using Polly;
using Polly.Retry;
using Polly.Timeout;

namespace AutoSweep.Instruments.Scpi;

/// <summary>The one place where exchanges with instruments time out and are tried again.</summary>
/// <remarks>
/// Only queries come through here twice: asking again changes nothing at the instrument. A command that might have been carried out
/// is never repeated; its caller reads back what the instrument made of it.
/// </remarks>
internal sealed class ExchangePolicy
{
    private static readonly ResiliencePropertyKey<TimeSpan> Timeout = new("timeout");
    private static readonly ResiliencePropertyKey<string> Message = new("message");

    private readonly ExchangeOptions _options;
    private readonly string _resource;
    private readonly ILogger _log;
    private readonly ResiliencePipeline _timed;
    private readonly ResiliencePipeline _repeated;

    public ExchangePolicy(ExchangeOptions options, string resource, TimeProvider time, ILogger log)
    {
        (_options, _resource, _log) = (options, resource, log);
        _timed = new ResiliencePipelineBuilder { TimeProvider = time }
            .AddTimeout(new TimeoutStrategyOptions
            {
                TimeoutGenerator = arguments => new(arguments.Context.Properties.GetValue(Timeout, options.QueryTimeout)),
            })
            .Build();
        _repeated = options.Retries == 0
            ? ResiliencePipeline.Empty
            : new ResiliencePipelineBuilder { TimeProvider = time }.AddRetry(Retry()).Build();
    }

    /// <summary>Asks, and asks again after silence or an unreadable answer.</summary>
    public Task<string> QueryAsync(ScpiWire wire, string message, TimeSpan? timeout, CancellationToken cancellationToken) =>
        ReportedAsync(_repeated, message, timeout ?? _options.QueryTimeout, async (time, cancel) =>
        {
            await BackInStepAsync(wire, message, cancel);
            return await TimedAsync(message, time, token => wire.AskAsync(message, time, token), cancel);
        }, cancellationToken);

    /// <summary>Sends, once.</summary>
    public Task SendAsync(ScpiWire wire, string message, CancellationToken cancellationToken) =>
        ReportedAsync(ResiliencePipeline.Empty, message, _options.QueryTimeout, async (time, cancel) =>
        {
            await BackInStepAsync(wire, message, cancel);
            return await TimedAsync(message, time, Wordless(token => wire.SendAsync(message, token)), cancel);
        }, cancellationToken);

    // The waits for quiet end by themselves; the answer between them has the time of a query.
    private async ValueTask BackInStepAsync(ScpiWire wire, string message, CancellationToken cancellationToken)
    {
        if (!wire.IsOutOfStep)
            return;
        await wire.BecomeQuietAsync(cancellationToken);
        await TimedAsync(message, _options.QueryTimeout, Wordless(wire.FindIdentityAsync), cancellationToken);
        await wire.BecomeSureAsync(cancellationToken);
    }

    private static Func<CancellationToken, ValueTask<string>> Wordless(Func<CancellationToken, ValueTask> act) => async cancel =>
    {
        await act(cancel);
        return "";
    };

    private async ValueTask<string> TimedAsync(
        string message, TimeSpan timeout, Func<CancellationToken, ValueTask<string>> act, CancellationToken cancellationToken)
    {
        var context = ContextOf(message, cancellationToken);
        context.Properties.Set(Timeout, timeout);
        try
        {
            return await _timed.ExecuteAsync(static (context, act) => act(context.CancellationToken), context, act);
        }
        finally
        {
            ResilienceContextPool.Shared.Return(context);
        }
    }

    private static ResilienceContext ContextOf(string message, CancellationToken cancellationToken)
    {
        var context = ResilienceContextPool.Shared.Get(cancellationToken);
        context.Properties.Set(Message, message);
        return context;
    }

    // No pause between tries: the resynchronisation that a retry begins with waits for the wire to be quiet.
    private RetryStrategyOptions Retry() => new()
    {
        ShouldHandle = new PredicateBuilder().Handle<TimeoutRejectedException>().Handle<InvalidDataException>(),
        MaxRetryAttempts = _options.Retries,
        Delay = TimeSpan.Zero,
        OnRetry = arguments =>
        {
            _log.LogWarning(
                "{Resource}: asking {Message} again (try {Try} of {Tries}): {Reason}",
                _resource,
                arguments.Context.Properties.GetValue(Message, ""),
                arguments.AttemptNumber + 2,
                _options.Retries + 1,
                ReasonOf(arguments.Outcome.Exception!));
            return default;
        },
    };

    private async Task<string> ReportedAsync(
        ResiliencePipeline pipeline,
        string message,
        TimeSpan timeout,
        Func<TimeSpan, CancellationToken, ValueTask<string>> exchange,
        CancellationToken cancellationToken)
    {
        var context = ContextOf(message, cancellationToken);
        try
        {
            return await pipeline.ExecuteAsync(context => exchange(timeout, context.CancellationToken), context);
        }
        catch (Exception exception) when (exception is TimeoutRejectedException or InvalidDataException)
        {
            throw NoAnswer(message, timeout, exception);
        }
        catch (IOException exception)
        {
            throw Lost(message, exception);
        }
        finally
        {
            ResilienceContextPool.Shared.Return(context);
        }
    }

    private static string ReasonOf(Exception exception) => exception is TimeoutRejectedException timeout
        ? FormattableString.Invariant($"no answer within {timeout.Timeout.TotalSeconds:0.###} s")
        : exception.Message;

    private BenchFaultException NoAnswer(string message, TimeSpan timeout, Exception cause) => new(
        BenchFault.NoAnswer,
        FormattableString.Invariant($"the instrument at {_resource} gave no answer to {message} that can be used: {ReasonOf(cause)}"),
        FormattableString.Invariant($"a line of text within {timeout.TotalSeconds:0.###} s"),
        "Check that the instrument is on, the cable, the baud rate and parity of a serial line, and that it is set to SCPI and to remote "
        + "control over this port.",
        cause) { LostResource = _resource };

    private BenchFaultException Lost(string message, IOException cause) => new(
        BenchFault.NotReachable,
        $"the link to {_resource} broke at {message}: {cause.Message}",
        "a link that stays up",
        "Check the cable and that the instrument is on, then start again: the job goes on where it stopped.",
        cause) { LostResource = _resource };
}
