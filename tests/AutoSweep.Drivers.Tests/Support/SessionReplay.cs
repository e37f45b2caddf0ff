using System.Globalization;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Drivers.Tests.Support;

/// <summary>Plays a session file against a driver: the driver must send exactly its lines and make of the replies what the file
/// says.</summary>
public sealed class SessionReplay(MeterDriver driver) : IAsyncDisposable
{
    private readonly ReplayLink _link = new("TCPIP::meter.test::5025::SOCKET");
    private readonly InstantTime _time = new();
    private ScpiLevelMeter? _meter;
    private ScpiCapacitanceMeter? _capacitanceMeter;

    public async Task PlayAsync(IEnumerable<SessionStep> steps)
    {
        foreach (var step in steps)
        {
            _link.Expect(step.Wire);
            var outcome = await PlayAsync(step);
            Assert.True(step.Outcome == outcome, $"line {step.LineNumber}: the session says \"{step.Outcome}\", the driver \"{outcome}\"");
            Assert.True(_link.Left.Count == 0, $"line {step.LineNumber}: the driver did not send \"{_link.Left.FirstOrDefault()}\"");
        }
    }

    public ValueTask DisposeAsync() => _link.DisposeAsync();

    private async Task<string?> PlayAsync(SessionStep step)
    {
        switch (step.Call)
        {
            case ["open"]:
                _meter = await ScpiLevelMeter.OpenAsync(NewSession(), driver, _time, NullLogger.Instance, default);
                return null;
            case ["open", "capacitance"]:
                _capacitanceMeter = await ScpiCapacitanceMeter.OpenAsync(
                    NewSession(), driver, Capacitance.Zero, _time, NullLogger.Instance, default);
                return null;
            case ["measure"]:
                return Outcome(await _capacitanceMeter!.ReadAsync(default));
            case ["show", .. var words]:
                await (_capacitanceMeter is not null
                    ? _capacitanceMeter.ShowAsync(string.Join(' ', words), default) : _meter!.ShowAsync(string.Join(' ', words), default));
                return null;
            case ["beep"] when _capacitanceMeter is not null:
                await _capacitanceMeter.BeepAsync(default);
                return null;
            case ["close"] when _capacitanceMeter is not null:
                await _capacitanceMeter.DisposeAsync();
                return null;
            case ["prepare", var volts, var hertz]:
                await _meter!.PrepareLevelAsync(Number(volts), Number(hertz), default);
                return null;
            case ["read"]:
                return Outcome(await _meter!.ReadLevelAsync(default));
            case ["count"]:
                return Outcome(await _meter!.CountFrequencyAsync(default));
            case ["beep"]:
                await _meter!.BeepAsync(default);
                return null;
            case ["close"]:
                await _meter!.DisposeAsync();
                return null;
            default:
                throw new InvalidDataException($"line {step.LineNumber}: there is no call \"{string.Join(' ', step.Call)}\"");
        }
    }

    // Hours, so that InstantTime never lets them strike.
    private ScpiSession NewSession() =>
        new(_link, MeterSessionOptions.Of(driver, new() { QueryTimeout = TimeSpan.FromHours(2) }), _time, NullLogger.Instance);

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    // To a ten-thousandth of a picofarad: farads times 1e12 is not exact in binary.
    private static string Outcome(CapacitanceReading reading) => reading.Kind switch
    {
        CapacitanceReadingKind.Value when reading.Dissipation is { } dissipation =>
            string.Create(CultureInfo.InvariantCulture, $"capacitance {reading.Picofarads:0.####} pF, D {dissipation}"),
        CapacitanceReadingKind.Value => string.Create(CultureInfo.InvariantCulture, $"capacitance {reading.Picofarads:0.####} pF"),
        CapacitanceReadingKind.Overload => "overload",
        CapacitanceReadingKind.NoContact => "no contact",
        _ => "invalid",
    };

    private static string Outcome(MeterReading reading) => reading.Kind switch
    {
        MeterReadingKind.Value => string.Create(CultureInfo.InvariantCulture, $"value {reading.Value}"),
        MeterReadingKind.Overload => "overload",
        MeterReadingKind.NoData => "no data",
        _ => "invalid",
    };
}
