using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Meters;

/// <summary>A SCPI multimeter as its driver file describes it.</summary>
/// <remarks>
/// Sends the whole set-up of a function again whenever it changes, because choosing a function puts bandwidth, trigger and range back
/// to their defaults (makers' manuals). A reading waits for what is left of the meter's own settling since such a change; settling
/// after a change at the input is the caller's, see <see cref="Settling"/>.
/// </remarks>
public sealed class ScpiLevelMeter : ILevelMeter
{
    private readonly ScpiSession _session;
    private readonly MeterDriver _driver;
    private readonly DriverCommandSender _sender;
    private readonly TimeProvider _time;
    private readonly ILogger _log;
    private MeterSetting _setting;

    // A counter needs a tenth of its range (makers' specifications): it counts in the lowest one until that overloads.
    private MeterSetting _counting;
    private MeterFunction _function;
    private long _setUpAt;

    private ScpiLevelMeter(ScpiSession session, MeterDriver driver, InstrumentIdentity identity, TimeProvider time, ILogger log)
    {
        (_session, _driver, _time, _log, Identity) = (session, driver, time, log, identity);
        _sender = new(session, driver, log);
        _setting = _counting = MeterSetting.For(driver, 0, 0);
    }

    /// <inheritdoc/>
    public InstrumentIdentity Identity { get; }

    /// <inheritdoc/>
    public double RangeVolts => _setting.RangeVolts;

    /// <inheritdoc/>
    public TimeSpan Settling => TimeSpan.FromSeconds(_sender.LacksAll(_driver.Level.SetUp, "{bandwidth}")
        ? _driver.Level.SettleWithoutBandwidthSeconds
        : _setting.Bandwidth.SettleSeconds);

    /// <summary>Identifies a meter and sets it up.</summary>
    /// <param name="session">A session, which the meter owns from now on.</param>
    /// <param name="driver">The driver of its family.</param>
    /// <param name="time">The clock behind every wait.</param>
    /// <param name="log">Takes refused commands and odd answers.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <exception cref="BenchFaultException">No answer, another identity, or a required command is refused.</exception>
    public static async Task<ScpiLevelMeter> OpenAsync(
        ScpiSession session, MeterDriver driver, TimeProvider time, ILogger log, CancellationToken cancellationToken)
    {
        await Task.Delay(TimeSpan.FromSeconds(driver.Link.OpenSettleSeconds), time, cancellationToken);
        var identity = await session.IdentifyAsync(cancellationToken);
        if (!driver.Drives(identity))
            throw WrongIdentity(session, driver, identity);
        var meter = new ScpiLevelMeter(session, driver, identity, time, log);
        await meter.SetUpAsync(cancellationToken);
        return meter;
    }

    /// <inheritdoc/>
    public async Task PrepareLevelAsync(double largestVolts, double lowestHertz, CancellationToken cancellationToken)
    {
        var setting = MeterSetting.For(_driver, largestVolts, lowestHertz);
        if (setting != _setting)
            (_setting, _function) = (setting, MeterFunction.Unknown);
        await ChooseAsync(MeterFunction.Level, _driver.Level.SetUp, cancellationToken);
    }

    /// <inheritdoc/>
    public async Task<MeterReading> ReadLevelAsync(CancellationToken cancellationToken)
    {
        await ChooseAsync(MeterFunction.Level, _driver.Level.SetUp, cancellationToken);
        var reading = await ReadAsync(_driver.Level.Read, Settling, TimeSpan.Zero, cancellationToken);
        return reading is { Kind: MeterReadingKind.Value, Value: < 0 } ? new(MeterReadingKind.Invalid, double.NaN, reading.Raw) : reading;
    }

    /// <inheritdoc/>
    public async Task<MeterReading> CountFrequencyAsync(CancellationToken cancellationToken)
    {
        var reading = await CountOnceAsync(cancellationToken);
        while (reading.Kind == MeterReadingKind.Overload && Wider() is { } wider)
        {
            (_counting, _function) = (wider, MeterFunction.Unknown);
            reading = await CountOnceAsync(cancellationToken);
        }

        return reading;
    }

    /// <inheritdoc/>
    public async Task BeepAsync(CancellationToken cancellationToken)
    {
        if (_driver.Beep is { } beep)
            await _sender.SendAsync([beep], _setting, cancellationToken);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        try
        {
            foreach (var command in _driver.TearDown)
                await _session.SendAsync(command, CancellationToken.None);
        }
        catch (BenchFaultException fault)
        {
            _log.LogInformation("{Resource}: the meter could not be given back: {Found}", _session.Resource, fault.Found);
        }

        await _session.DisposeAsync();
    }

    private async Task<MeterReading> CountOnceAsync(CancellationToken cancellationToken)
    {
        await ChooseAsync(MeterFunction.Frequency, _driver.Frequency.SetUp, cancellationToken);
        var (frequency, settling) = (_driver.Frequency, TimeSpan.FromSeconds(_driver.Frequency.SettleSeconds));
        var gate = TimeSpan.FromSeconds(frequency.ApertureSeconds + frequency.NoSignalSeconds);
        return await ReadAsync(frequency.Read, settling, gate, cancellationToken);
    }

    private MeterSetting? Wider()
    {
        var wider = MeterSetting.For(_driver, 2 * _counting.RangeVolts, 0);
        return wider.RangeVolts > _counting.RangeVolts ? wider : null;
    }

    private async Task SetUpAsync(CancellationToken cancellationToken)
    {
        foreach (var error in await _session.DrainErrorsAsync(cancellationToken))
            _log.LogInformation("{Resource}: the meter's error queue held {Error} from before", _session.Resource, error);
        if (_session.Resource is SerialResource)
            await _sender.SendAsync(_driver.Link.SerialSetUp, _setting, cancellationToken);
        await _sender.SendAsync(_driver.SetUp, _setting, cancellationToken);
        _log.LogInformation("{Resource}: {Identity}, driven by {Driver}", _session.Resource, Identity, _driver.Name);
    }

    private async Task ChooseAsync(MeterFunction function, IReadOnlyList<DriverCommand> setUp, CancellationToken cancellationToken)
    {
        if (_function == function)
            return;
        _function = MeterFunction.Unknown; // until the last command is in
        await _sender.SendAsync(setUp, function == MeterFunction.Frequency ? _counting : _setting, cancellationToken);
        (_function, _setUpAt) = (function, _time.GetTimestamp());
    }

    // Half as long again as the meter needs, and the time of a query: a meter that refuses the trigger-delay command settles by itself
    // before every reading (bench practice, no source).
    private async Task<MeterReading> ReadAsync(string query, TimeSpan settling, TimeSpan gate, CancellationToken cancellationToken)
    {
        var left = settling - _time.GetElapsedTime(_setUpAt);
        if (left > TimeSpan.Zero)
            await Task.Delay(left, _time, cancellationToken);
        var timeout = ((settling + gate) * 1.5) + _session.QueryTimeout;
        try
        {
            return Interpret(await _session.QueryAsync(query, cancellationToken, timeout));
        }
        catch (BenchFaultException fault)
        {
            _function = MeterFunction.Unknown; // it may have been switched off in between
            if (fault.Kind == BenchFault.NoAnswer && await MetersOwnWordsAsync(cancellationToken) is { Length: > 0 } words)
                throw new BenchFaultException(
                    fault.Kind, $"{fault.Found}. The meter reports {words}", fault.Expected, fault.WhatToDo, fault);
            throw;
        }
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

    private MeterReading Interpret(string reply)
    {
        var fields = reply.Split(',');
        var reading = _driver.Reply.Field <= fields.Length
            ? ScpiNumber.Read(fields[_driver.Reply.Field - 1], _driver.Reply.Overloads)
            : new MeterReading(MeterReadingKind.Invalid, double.NaN, reply);
        if (reading.Kind == MeterReadingKind.Invalid)
            _log.LogWarning("{Resource}: \"{Reply}\" is no reading", _session.Resource, reply);
        return reading with { Raw = reply };
    }

    private static BenchFaultException WrongIdentity(ScpiSession session, MeterDriver driver, InstrumentIdentity identity) => new(
        BenchFault.WrongIdentity,
        $"the instrument at {session.Resource} says it is {identity}",
        $"a meter that the driver {driver.Name} drives: {string.Join(", ", driver.Identity)}",
        "Check the resource name, or choose the driver of this meter's family.");
}
