using AutoSweep.Core;
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
    // The display of the 34401A takes 12 characters (user's guide, from memory).
    private const int LongestText = 12;

    private readonly DrivenMeter _meter;
    private readonly DriverLevel _level;
    private readonly TimeProvider _time;
    private MeterSetting _setting;
    private double _lowestHertz;

    // A counter needs a tenth of its range (makers' specifications): it counts in the lowest one until that overloads.
    private MeterSetting _counting;
    private MeterFunction _function;
    private long _setUpAt;

    private ScpiLevelMeter(DrivenMeter meter, DriverLevel level, MeterSetting setting, TimeProvider time) =>
        (_meter, _level, _setting, _counting, _time) = (meter, level, setting, setting, time);

    /// <inheritdoc/>
    public InstrumentIdentity Identity => _meter.Identity;

    /// <inheritdoc/>
    public double RangeVolts => _setting.RangeVolts;

    /// <inheritdoc/>
    public TimeSpan Settling => TimeSpan.FromSeconds(_meter.Sender.LacksAll(_level.SetUp, "{bandwidth}")
        ? _level.SettleWithoutBandwidthSeconds
        : _setting.Bandwidth.SettleSeconds);

    /// <inheritdoc/>
    public double? UncertaintyVolts(double volts) =>
        _level.Accuracy is { } accuracy && _lowestHertz >= accuracy.FromToneHertz ? accuracy.StandardUncertaintyVolts(volts, RangeVolts) : null;

    /// <summary>The optional commands that this meter has refused so far.</summary>
    internal IReadOnlyCollection<string> Refused => _meter.Sender.LeftOut;

    /// <summary>Identifies a meter and sets it up.</summary>
    /// <param name="session">A session, which the meter owns from now on.</param>
    /// <param name="driver">The driver of its family.</param>
    /// <param name="time">The clock behind every wait.</param>
    /// <param name="log">Takes refused commands and odd answers.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <exception cref="BenchFaultException">The family reads no level, no answer, another identity, or a required command is
    /// refused.</exception>
    public static async Task<ScpiLevelMeter> OpenAsync(
        ScpiSession session, MeterDriver driver, TimeProvider time, ILogger log, CancellationToken cancellationToken)
    {
        var setting = MeterSetting.For(driver, 0, 0);
        var meter = await DrivenMeter.OpenAsync(session, driver, setting.Fill, time, log, cancellationToken);
        return new(meter, driver.Level!, setting, time);
    }

    /// <inheritdoc/>
    public async Task PrepareLevelAsync(double largestVolts, double lowestHertz, CancellationToken cancellationToken)
    {
        var setting = MeterSetting.For(_meter.Driver, largestVolts, lowestHertz);
        if (setting != _setting)
            (_setting, _function) = (setting, MeterFunction.Unknown);
        _lowestHertz = lowestHertz;
        await ChooseAsync(MeterFunction.Level, _level.SetUp, cancellationToken);
    }

    /// <inheritdoc/>
    public async Task<MeterReading> ReadLevelAsync(CancellationToken cancellationToken)
    {
        await ChooseAsync(MeterFunction.Level, _level.SetUp, cancellationToken);
        var reading = await ReadAsync(_level.Read, Settling, TimeSpan.Zero, cancellationToken);
        return reading is { Kind: MeterReadingKind.Value, Value: < 0 } ? new(MeterReadingKind.Invalid, double.NaN, reading.Raw) : reading;
    }

    /// <summary>One sample without waiting for what is left of the settling, to measure how long it takes.</summary>
    internal Task<MeterReading> ReadUnsettledAsync(CancellationToken cancellationToken) =>
        ReadAsync(_level.Read, TimeSpan.Zero, Settling, cancellationToken);

    /// <inheritdoc/>
    /// <remarks>Detector and number of samples stay as the series has them, so the next reading sends its whole set-up again.</remarks>
    public async Task<LevelBurst?> ReadBurstAsync(CancellationToken cancellationToken)
    {
        if (_level.Burst is not { } burst || burst.SetUp.Any(_meter.Sender.IsLeftOut))
            return null;
        await ChooseAsync(MeterFunction.Level, _level.SetUp, cancellationToken);
        _function = MeterFunction.Unknown;
        await _meter.Sender.SendAsync(burst.SetUp, _setting.Fill, cancellationToken);
        if (burst.SetUp.Any(_meter.Sender.IsLeftOut))
            return null;
        await _meter.SettleAsync(TimeSpan.FromSeconds(burst.SettleSeconds), _time.GetTimestamp(), cancellationToken);
        var reply = await _meter.ReadAsync(burst.Read, TimeSpan.FromSeconds(burst.Samples * burst.IntervalSeconds), cancellationToken);
        return Series(reply, burst);
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
    public Task ShowAsync(string text, CancellationToken cancellationToken) => _meter.ShowAsync(text, LongestText, cancellationToken);

    /// <inheritdoc/>
    public Task BeepAsync(CancellationToken cancellationToken) => _meter.BeepAsync(cancellationToken);

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _meter.DisposeAsync();

    private async Task<MeterReading> CountOnceAsync(CancellationToken cancellationToken)
    {
        var frequency = _meter.Driver.Frequency ?? throw _meter.Driver.Lacks("frequency", "counts no frequency");
        await ChooseAsync(MeterFunction.Frequency, frequency.SetUp, cancellationToken);
        var settling = TimeSpan.FromSeconds(frequency.SettleSeconds);
        var gate = TimeSpan.FromSeconds(frequency.ApertureSeconds + frequency.NoSignalSeconds);
        return await ReadAsync(frequency.Read, settling, gate, cancellationToken);
    }

    private MeterSetting? Wider()
    {
        var wider = MeterSetting.For(_meter.Driver, 2 * _counting.RangeVolts, 0);
        return wider.RangeVolts > _counting.RangeVolts ? wider : null;
    }

    private async Task ChooseAsync(MeterFunction function, IReadOnlyList<DriverCommand> setUp, CancellationToken cancellationToken)
    {
        if (_function == function)
            return;
        _function = MeterFunction.Unknown; // until the last command is in
        await _meter.Sender.SendAsync(setUp, (function == MeterFunction.Frequency ? _counting : _setting).Fill, cancellationToken);
        (_function, _setUpAt) = (function, _time.GetTimestamp());
    }

    private async Task<MeterReading> ReadAsync(string query, TimeSpan settling, TimeSpan gate, CancellationToken cancellationToken)
    {
        await _meter.SettleAsync(settling, _setUpAt, cancellationToken);
        try
        {
            return Interpret(await _meter.ReadAsync(query, settling + gate, cancellationToken));
        }
        catch (BenchFaultException)
        {
            _function = MeterFunction.Unknown; // it may have been switched off in between
            throw;
        }
    }

    private LevelBurst? Series(string reply, DriverBurst burst)
    {
        var samples = reply.Split(',').Select(_meter.Driver.Reply.Read).ToList();
        if (samples.Count == burst.Samples && samples.All(sample => sample.Kind == MeterReadingKind.Value))
            return new([.. samples.Select(sample => sample.Value)], TimeSpan.FromSeconds(burst.IntervalSeconds),
                TimeSpan.FromSeconds(burst.ApertureSeconds), TimeSpan.FromSeconds(burst.TimeConstantSeconds));
        _meter.NoReading(reply);
        return null;
    }

    private MeterReading Interpret(string reply)
    {
        var fields = reply.Split(',');
        var reading = _meter.Driver.Reply.Field <= fields.Length
            ? _meter.Driver.Reply.Read(fields[_meter.Driver.Reply.Field - 1])
            : new MeterReading(MeterReadingKind.Invalid, double.NaN, reply);
        if (reading.Kind == MeterReadingKind.Invalid)
            _meter.NoReading(reply);
        return reading with { Raw = reply };
    }
}
