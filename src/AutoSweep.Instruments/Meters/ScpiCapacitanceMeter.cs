using AutoSweep.Core;
using AutoSweep.Core.Calibration;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Meters;

/// <summary>A SCPI meter that measures capacitance as its driver file describes it.</summary>
public sealed class ScpiCapacitanceMeter : ICapacitanceMeter
{
    // The comment line of E4980A-type meters takes 30 characters (from memory).
    private const int LongestText = 30;

    private readonly DrivenMeter _meter;
    private readonly DriverCapacitance _driver;
    private readonly double _leadPicofarads;
    private readonly TimeProvider _time;
    private bool _isSetUp;
    private long _setUpAt;

    private ScpiCapacitanceMeter(DrivenMeter meter, DriverCapacitance driver, Capacitance lead, TimeProvider time) =>
        (_meter, _driver, _leadPicofarads, _time) = (meter, driver, lead.Picofarads, time);

    /// <inheritdoc/>
    public InstrumentIdentity Identity => _meter.Identity;

    /// <inheritdoc/>
    public double TestHertz => _driver.TestHertz;

    /// <inheritdoc/>
    public MeterAccuracy Accuracy => new(_driver.Accuracy.ShareOfReading, _driver.Accuracy.OffsetPicofarads);

    /// <inheritdoc/>
    public TimeSpan ReadTime => TimeSpan.FromSeconds(_driver.ReadSeconds);

    /// <summary>The optional commands that this meter has refused so far.</summary>
    internal IReadOnlyCollection<string> Refused => _meter.Sender.LeftOut;

    /// <summary>Identifies a meter and sets it up.</summary>
    /// <param name="session">A session, which the meter owns from now on.</param>
    /// <param name="driver">The driver of its family.</param>
    /// <param name="lead">The leads' capacitance where the meter does not correct it; taken off every reading.</param>
    /// <param name="time">The clock behind every wait.</param>
    /// <param name="log">Takes refused commands and odd answers.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <exception cref="BenchFaultException">The family measures no capacitance, no answer, another identity, or a required command is
    /// refused.</exception>
    public static async Task<ScpiCapacitanceMeter> OpenAsync(
        ScpiSession session, MeterDriver driver, Capacitance lead, TimeProvider time, ILogger log, CancellationToken cancellationToken)
    {
        var capacitance = driver.Capacitance ?? throw driver.Lacks("capacitance", "measures no capacitance");
        var meter = new ScpiCapacitanceMeter(
            await DrivenMeter.OpenAsync(session, driver, Filling(capacitance), time, log, cancellationToken), capacitance, lead, time);
        await meter.SetUpAsync(cancellationToken);
        return meter;
    }

    /// <inheritdoc/>
    public async Task<CapacitanceReading> ReadAsync(CancellationToken cancellationToken)
    {
        if (!_isSetUp)
            await SetUpAsync(cancellationToken);
        await _meter.SettleAsync(TimeSpan.FromSeconds(_driver.SettleSeconds), _setUpAt, cancellationToken);
        _isSetUp = false; // until it has answered: it may have been switched off in between
        if (_driver.Trigger is { } trigger)
            await _meter.TriggerAsync(trigger, cancellationToken);
        var reading = Interpret(await _meter.ReadAsync(_driver.Read, ReadTime, cancellationToken));
        _isSetUp = true;
        return reading;
    }

    /// <inheritdoc/>
    public Task ShowAsync(string text, CancellationToken cancellationToken) => _meter.ShowAsync(text, LongestText, cancellationToken);

    /// <inheritdoc/>
    public Task BeepAsync(CancellationToken cancellationToken) => _meter.BeepAsync(cancellationToken);

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _meter.DisposeAsync();

    private static Func<string, string> Filling(DriverCapacitance driver) =>
        command => command.Replace("{frequency}", ScpiNumber.Format(driver.TestHertz), StringComparison.Ordinal);

    private async Task SetUpAsync(CancellationToken cancellationToken)
    {
        await _meter.Sender.SendAsync(_driver.SetUp, Filling(_driver), cancellationToken);
        (_isSetUp, _setUpAt) = (true, _time.GetTimestamp());
    }

    private CapacitanceReading Interpret(string reply)
    {
        var fields = reply.Split(',', StringSplitOptions.TrimEntries);
        var kind = KindOf(fields, out var capacitance);
        if (kind == CapacitanceReadingKind.Invalid)
            _meter.NoReading(reply);
        return kind == CapacitanceReadingKind.Value
            ? Corrected(capacitance.Value * 1e12, DissipationOf(fields), reply)
            : new(kind, double.NaN, null, reply);
    }

    // The status first: a meter that is overloaded may write any number beside it.
    private CapacitanceReadingKind KindOf(string[] fields, out MeterReading capacitance)
    {
        capacitance = _driver.Reply.CapacitanceIn(fields) is { } field
            ? _meter.Driver.Reply.Read(field)
            : new(MeterReadingKind.Invalid, double.NaN, "");
        if (StatusOf(fields) is not CapacitanceReadingKind.Value and var told)
            return told;
        return capacitance.Kind switch
        {
            MeterReadingKind.Value => CapacitanceReadingKind.Value,
            MeterReadingKind.Overload => CapacitanceReadingKind.Overload,
            MeterReadingKind.NoData => CapacitanceReadingKind.NoContact,
            _ => CapacitanceReadingKind.Invalid,
        };
    }

    private CapacitanceReadingKind StatusOf(string[] fields)
    {
        if (_driver.Reply.StatusField is not { } field)
            return CapacitanceReadingKind.Value;
        if (field > fields.Length || ScpiNumber.Parse(fields[field - 1]) is not { } number)
            return CapacitanceReadingKind.Invalid;
        var status = (int)number;
        return _driver.Reply.Good.Contains(status) ? CapacitanceReadingKind.Value
            : _driver.Reply.Overload.Contains(status) ? CapacitanceReadingKind.Overload
            : _driver.Reply.NoContact.Contains(status) ? CapacitanceReadingKind.NoContact
            : CapacitanceReadingKind.Invalid;
    }

    private double? DissipationOf(string[] fields) =>
        _driver.Reply.DissipationIn(fields) is { } field
        && _meter.Driver.Reply.Read(field) is { Kind: MeterReadingKind.Value } reading ? reading.Value : null;

    // The leads are a capacitance in parallel, without loss: the loss D·C stays, the capacitance falls.
    private CapacitanceReading Corrected(double picofarads, double? dissipation, string reply)
    {
        var left = picofarads - _leadPicofarads;
        return new(
            CapacitanceReadingKind.Value, left, _leadPicofarads == 0 || left == 0 ? dissipation : dissipation * picofarads / left, reply);
    }
}
