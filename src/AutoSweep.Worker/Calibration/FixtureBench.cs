using AutoSweep.Core;
using AutoSweep.Core.Calibration;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Terminal;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Worker.Calibration;

/// <summary>The fixture and, where it is on the wire, the capacitance meter. Disposing it opens every relay and closes the links.</summary>
public sealed class FixtureBench : IAsyncDisposable
{
    // What a handheld meter's leads leave after its zero key (bench practice, no source).
    private const double TypedOffsetPicofarads = 1;

    // Handheld LCR meters: 0.2 to 0.5 % (data sheets, from memory).
    private const double TypedAccuracyPercent = 0.5;

    private const string GoesOn = "The set of relays that was being read is closed and read anew; the sets before it stay.";

    private readonly ReturningInstrument<IRelayBox> _box;
    private readonly ReturningInstrument<ICapacitanceMeter>? _meter;
    private readonly double? _accuracyPercent;

    private FixtureBench(ReturningInstrument<IRelayBox> box, ReturningInstrument<ICapacitanceMeter>? meter, double? accuracyPercent) =>
        (_box, _meter, _accuracyPercent) = (box, meter, accuracyPercent);

    /// <summary>The relays, as they are open now.</summary>
    public IRelayBox Box => _box.Present;

    /// <summary>Whether values are typed.</summary>
    public bool IsTyped => _meter is null;

    /// <summary>What reads a set of relays, and waits for an instrument that is unplugged meanwhile.</summary>
    public IRelaySetReader Reader => new PausingSets(
        _box, _meter, (box, meter) => meter is null ? new TypedSets(box, ConsoleLines.AskAsync) : new MeteredSets(box, meter));

    /// <summary>The meter's accuracy.</summary>
    public MeterAccuracy Accuracy
    {
        get
        {
            var family = _meter?.Present.Accuracy ?? new(TypedAccuracyPercent / 100, TypedOffsetPicofarads);
            return _accuracyPercent is { } percent ? family with { ShareOfReading = percent / 100 } : family;
        }
    }

    /// <summary>The meter in words, for the calibration file.</summary>
    public string MeterName => _meter?.Present is { } meter
        ? FormattableString.Invariant($"{meter.Identity}, {meter.TestHertz} Hz, {100 * Accuracy.ShareOfReading} %")
        : FormattableString.Invariant($"typed by hand, {100 * Accuracy.ShareOfReading} %");

    /// <summary>Opens what the plan names.</summary>
    /// <exception cref="BenchFaultException">Something is missing, silent or another than it should be.</exception>
    public static async Task<FixtureBench> OpenAsync(FixtureBenchPlan plan, CancellationToken cancellationToken)
    {
        var wiring = plan.Wiring;
        var clock = RatedInstruments.Clock(plan.ClockRate);
        var options = RatedInstruments.Options(plan.ClockRate, clock, NullLoggerFactory.Instance, wiring.Drivers) with
        {
            CapacitanceMeterLeads = Capacitance.FromPicofarads(wiring.CapacitanceMeterLeadsPicofarads),
        };
        var box = await OpenAsync(InstrumentPlaces.RelayBox(wiring.Fixture ?? throw NoFixture(), options, GoesOn), clock, cancellationToken);
        try
        {
            var meter = wiring.CapacitanceMeter is { } resource
                ? await OpenAsync(InstrumentPlaces.CapacitanceMeter(resource, wiring.CapacitanceMeterDriver, options, GoesOn), clock, cancellationToken)
                : null;
            return new(box, meter, plan.AccuracyPercent);
        }
        catch
        {
            await box.DisposeAsync();
            throw;
        }
    }

    /// <summary>The temperature in the fixture, in degrees Celsius; null where it has no thermometer.</summary>
    public Task<double?> ReadTemperatureAsync(CancellationToken cancellationToken) =>
        _box.UseAsync(box => box.ReadTemperatureAsync(cancellationToken), cancellationToken);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _box.DisposeAsync();
        if (_meter is not null)
            await _meter.DisposeAsync();
    }

    private static async Task<ReturningInstrument<TInstrument>> OpenAsync<TInstrument>(
        InstrumentPlace<TInstrument> place, TimeProvider clock, CancellationToken cancellationToken)
        where TInstrument : class, IAsyncDisposable => new(await place.Open(cancellationToken), place, GapScreen.Lines, clock);

    private static BenchFaultException NoFixture() => new(
        BenchFault.NotReachable, "no fixture in the bench's wiring", "a fixture",
        "write it into the bench's wiring") { AtTerminal = "--fixture, or --bench with a bench.json that has it" };
}
