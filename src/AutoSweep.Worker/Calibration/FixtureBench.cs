using AutoSweep.Core;
using AutoSweep.Core.Calibration;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Commands;
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

    private readonly ICapacitanceMeter? _meter;
    private readonly double? _accuracyPercent;

    private FixtureBench(IRelayBox box, ICapacitanceMeter? meter, double? accuracyPercent) =>
        (Box, _meter, _accuracyPercent) = (box, meter, accuracyPercent);

    /// <summary>The relays.</summary>
    public IRelayBox Box { get; }

    /// <summary>Whether values are typed.</summary>
    public bool IsTyped => _meter is null;

    /// <summary>What reads a set of relays.</summary>
    public IRelaySetReader Reader => _meter is { } meter ? new MeteredSets(Box, meter) : new TypedSets(Box, ConsoleLines.AskAsync);

    /// <summary>The meter's accuracy.</summary>
    public MeterAccuracy Accuracy
    {
        get
        {
            var family = _meter?.Accuracy ?? new(TypedAccuracyPercent / 100, TypedOffsetPicofarads);
            return _accuracyPercent is { } percent ? family with { ShareOfReading = percent / 100 } : family;
        }
    }

    /// <summary>The meter in words, for the calibration file.</summary>
    public string MeterName => _meter is { } meter
        ? FormattableString.Invariant($"{meter.Identity}, {meter.TestHertz} Hz, {100 * Accuracy.ShareOfReading} %")
        : FormattableString.Invariant($"typed by hand, {100 * Accuracy.ShareOfReading} %");

    /// <summary>Opens what the plan names.</summary>
    /// <exception cref="BenchFaultException">Something is missing, silent or another than it should be.</exception>
    public static async Task<FixtureBench> OpenAsync(FixtureBenchPlan plan, CancellationToken cancellationToken)
    {
        var wiring = plan.Wiring;
        var options = RatedInstruments.Options(plan.ClockRate, RatedInstruments.Clock(plan.ClockRate), NullLoggerFactory.Instance, wiring.Drivers) with
        {
            CapacitanceMeterLeads = Capacitance.FromPicofarads(wiring.CapacitanceMeterLeadsPicofarads),
        };
        var box = await InstrumentBench.OpenRelayBoxAsync(wiring.Fixture ?? throw NoFixture(), options, cancellationToken);
        try
        {
            var meter = wiring.CapacitanceMeter is { } resource
                ? await InstrumentBench.OpenCapacitanceMeterAsync(resource, wiring.CapacitanceMeterDriver, options, cancellationToken)
                : null;
            return new(box, meter, plan.AccuracyPercent);
        }
        catch
        {
            await box.DisposeAsync();
            throw;
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await Box.DisposeAsync();
        if (_meter is not null)
            await _meter.DisposeAsync();
    }

    private static BenchFaultException NoFixture() => new(
        BenchFault.NotReachable, "no fixture in the bench's wiring", "a fixture",
        "give --fixture, or name a bench.json with --bench that has it");
}
