using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Meters;

/// <summary>What all meters that a driver file describes have in common: who they are, set-up, time-outs, the way out.</summary>
internal sealed class DrivenMeter : IAsyncDisposable
{
    private readonly ScpiSession _session;
    private readonly TimeProvider _time;
    private readonly ILogger _log;

    private DrivenMeter(ScpiSession session, MeterDriver driver, InstrumentIdentity identity, TimeProvider time, ILogger log)
    {
        (_session, Driver, _time, _log, Identity) = (session, driver, time, log, identity);
        Sender = new(session, driver, log);
    }

    /// <summary>The driver.</summary>
    public MeterDriver Driver { get; }

    /// <summary>What the meter says it is.</summary>
    public InstrumentIdentity Identity { get; }

    /// <summary>Sends the driver's commands.</summary>
    public DriverCommandSender Sender { get; }

    /// <summary>Where the meter is, for messages.</summary>
    public ResourceName Resource => _session.Resource;

    /// <summary>Identifies a meter and sends what its driver sends once.</summary>
    /// <param name="session">A session, which the meter owns from now on.</param>
    /// <param name="driver">The driver of its family.</param>
    /// <param name="fill">Fills a command's placeholders.</param>
    /// <param name="time">The clock behind every wait.</param>
    /// <param name="log">Takes refused commands.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <exception cref="BenchFaultException">No answer, another identity, or a required command is refused.</exception>
    public static async Task<DrivenMeter> OpenAsync(
        ScpiSession session, MeterDriver driver, Func<string, string> fill, TimeProvider time, ILogger log,
        CancellationToken cancellationToken)
    {
        await Task.Delay(TimeSpan.FromSeconds(driver.Link.OpenSettleSeconds), time, cancellationToken);
        var identity = await session.IdentifyAsync(cancellationToken);
        if (!driver.Drives(identity))
            throw WrongIdentity(session, driver, identity);
        var meter = new DrivenMeter(session, driver, identity, time, log);
        await meter.SetUpAsync(fill, cancellationToken);
        return meter;
    }

    /// <summary>Starts a reading that the next query asks for.</summary>
    public Task TriggerAsync(string message, CancellationToken cancellationToken) => _session.SendAsync(message, cancellationToken);

    /// <summary>Sends the query for a reading. Where it stays unanswered the fault has the meter's own words.</summary>
    /// <param name="query">The query.</param>
    /// <param name="duration">How long the meter needs. It gets half as long again and the time of a query, because one that refuses
    /// the trigger-delay command settles by itself before every reading (bench practice, no source).</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    public async Task<string> ReadAsync(string query, TimeSpan duration, CancellationToken cancellationToken)
    {
        try
        {
            return await _session.QueryAsync(query, cancellationToken, (duration * 1.5) + _session.QueryTimeout);
        }
        catch (BenchFaultException fault) when (fault.Kind == BenchFault.NoAnswer)
        {
            if (await MetersOwnWordsAsync(cancellationToken) is { Length: > 0 } words)
                throw new BenchFaultException(
                    fault.Kind, $"{fault.Found}. The meter reports {words}", fault.Expected, fault.WhatToDo, fault);
            throw;
        }
    }

    /// <summary>Waits for what is left of a settling time.</summary>
    /// <param name="settling">The whole time.</param>
    /// <param name="since">When it began, as a timestamp.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    public async Task SettleAsync(TimeSpan settling, long since, CancellationToken cancellationToken)
    {
        var left = settling - _time.GetElapsedTime(since);
        if (left > TimeSpan.Zero)
            await Task.Delay(left, _time, cancellationToken);
    }

    /// <summary>Lets the meter beep, if it can.</summary>
    public async Task BeepAsync(CancellationToken cancellationToken)
    {
        if (Driver.Beep is { } beep)
            await Sender.SendAsync([beep], static command => command, cancellationToken);
    }

    /// <summary>Shows a text on the meter's display, if it can.</summary>
    /// <param name="text">The text; what does not fit is cut off.</param>
    /// <param name="longest">How many characters fit.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    public async Task ShowAsync(string text, int longest, CancellationToken cancellationToken)
    {
        if (Driver.Display is not { } display)
            return;
        // A quote or a control character would end the command's string (IEEE 488.2, 7.7.5).
        var plain = new string([.. text.Take(longest).Select(Plain)]);
        await Sender.SendAsync([display], command => command.Replace("{text}", plain, StringComparison.Ordinal), cancellationToken);
    }

    private static char Plain(char letter) => letter is >= ' ' and <= '~' and not ('"' or '\'') ? letter : ' ';

    /// <summary>Notes a reply that is no reading.</summary>
    public void NoReading(string reply) => _log.LogWarning("{Resource}: \"{Reply}\" is no reading", _session.Resource, reply);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        try
        {
            foreach (var command in Driver.TearDown)
                await _session.SendAsync(command, CancellationToken.None);
        }
        catch (BenchFaultException fault)
        {
            _log.LogInformation("{Resource}: the meter could not be given back: {Found}", _session.Resource, fault.Found);
        }

        await _session.DisposeAsync();
    }

    private async Task SetUpAsync(Func<string, string> fill, CancellationToken cancellationToken)
    {
        foreach (var error in await _session.DrainErrorsAsync(cancellationToken))
            _log.LogInformation("{Resource}: the meter's error queue held {Error} from before", _session.Resource, error);
        if (_session.Resource is SerialResource)
            await Sender.SendAsync(Driver.Link.SerialSetUp, fill, cancellationToken);
        await Sender.SendAsync(Driver.SetUp, fill, cancellationToken);
        _log.LogInformation("{Resource}: {Identity}, driven by {Driver}", _session.Resource, Identity, Driver.Name);
    }

    // A query that the meter does not know is answered by silence, and by an entry in the error queue.
    private async Task<string> MetersOwnWordsAsync(CancellationToken cancellationToken)
    {
        try
        {
            return string.Join("; ", await _session.DrainErrorsAsync(cancellationToken));
        }
        catch (BenchFaultException)
        {
            return "";
        }
    }

    private static BenchFaultException WrongIdentity(ScpiSession session, MeterDriver driver, InstrumentIdentity identity) => new(
        BenchFault.WrongIdentity,
        $"the instrument at {session.Resource} says it is {identity}",
        $"a meter that the driver {driver.Name} drives: {string.Join(", ", driver.Identity)}",
        "Check the resource name, or choose the driver of this meter's family.");
}
