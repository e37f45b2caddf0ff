using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>Does what the calls of a session say, with a driver on whatever link it is given: a replay's, or a real meter's.</summary>
/// <param name="driver">The driver.</param>
/// <param name="connect">Opens a session; true asks for a serial line.</param>
/// <param name="time">The clock behind every wait.</param>
public sealed class SessionPlayer(MeterDriver driver, Func<bool, ScpiSession> connect, TimeProvider time) : IAsyncDisposable
{
    private ScpiLevelMeter? _meter;
    private ScpiCapacitanceMeter? _capacitanceMeter;

    /// <summary>Makes one call.</summary>
    /// <param name="call">Such as <c>open</c>, <c>open capacitance</c>, either with <c>serial</c> behind it, <c>prepare VOLTS HERTZ</c>,
    /// <c>read</c>, <c>series</c>, <c>count</c>, <c>measure</c>, <c>show TEXT</c>, <c>beep</c>, <c>close</c>.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>What came of it as a session file writes it; null where nothing does.</returns>
    /// <exception cref="BenchFaultException">No such call, or the meter is in trouble.</exception>
    public async Task<string?> PlayAsync(string call, CancellationToken cancellationToken)
    {
        switch (call.Split(' '))
        {
            case ["open", .. var how] when how is [] or ["serial"]:
                _meter = await ScpiLevelMeter.OpenAsync(connect(how.Length > 0), driver, time, NullLogger.Instance, cancellationToken);
                return null;
            case ["open", "capacitance", .. var how] when how is [] or ["serial"]:
                _capacitanceMeter = await ScpiCapacitanceMeter.OpenAsync(
                    connect(how.Length > 0), driver, Capacitance.Zero, time, NullLogger.Instance, cancellationToken);
                return null;
            case ["prepare", var volts, var hertz]:
                await Meter(call).PrepareLevelAsync(Number(call, volts), Number(call, hertz), cancellationToken);
                return null;
            case ["read"]:
                return SessionOutcome.Of(await Meter(call).ReadLevelAsync(cancellationToken));
            case ["series"]:
                return SessionOutcome.Of(await Meter(call).ReadBurstAsync(cancellationToken));
            case ["count"]:
                return SessionOutcome.Of(await Meter(call).CountFrequencyAsync(cancellationToken));
            case ["measure"]:
                return SessionOutcome.Of(await (_capacitanceMeter ?? throw NotOpen(call)).ReadAsync(cancellationToken));
            case ["show", .. var words]:
                await ShowAsync(call, string.Join(' ', words), cancellationToken);
                return null;
            case ["beep"]:
                await (_capacitanceMeter?.BeepAsync(cancellationToken) ?? Meter(call).BeepAsync(cancellationToken));
                return null;
            case ["close"]:
                await DisposeAsync();
                return null;
            default:
                throw NoSuchCall(call);
        }
    }

    /// <summary>Closes the meter, if it is open: sends what its driver sends at the end.</summary>
    public async ValueTask DisposeAsync()
    {
        var (meter, capacitanceMeter) = (_meter, _capacitanceMeter);
        (_meter, _capacitanceMeter) = (null, null);
        if (meter is not null)
            await meter.DisposeAsync();
        if (capacitanceMeter is not null)
            await capacitanceMeter.DisposeAsync();
    }

    private Task ShowAsync(string call, string text, CancellationToken cancellationToken) =>
        _capacitanceMeter?.ShowAsync(text, cancellationToken) ?? Meter(call).ShowAsync(text, cancellationToken);

    private ScpiLevelMeter Meter(string call) => _meter ?? throw NotOpen(call);

    private static double Number(string call, string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : throw NoSuchCall(call);

    private static BenchFaultException NotOpen(string call) => new(
        BenchFault.BadFile, $"the call \"{call}\" while no meter is open that could do it", "\"! open\" or \"! open capacitance\" before it",
        "Begin the session with the call that opens the meter.");

    private static BenchFaultException NoSuchCall(string call) => new(
        BenchFault.BadFile, $"the call \"{call}\"",
        "open, open capacitance (either with serial behind it), prepare VOLTS HERTZ, read, series, count, measure, show TEXT, beep or close",
        "Correct the call.");
}
